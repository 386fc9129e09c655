/**
 * Discrete gradient, convection and diffusion on a mesh, and what happens at its boundary.
 *
 * <p>Diffusion: two-point flux along the face normal, plus the tangential gradient where the line
 * between centroids is not along it. Convection: third-order upwind-biased, bounded (see the
 * limiter), as a correction to upwind. Gradients: least squares, exact for linear fields on cut
 * cells.
 */
@NullMarked
package hemline.solver.scheme;

import org.jspecify.annotations.NullMarked;
