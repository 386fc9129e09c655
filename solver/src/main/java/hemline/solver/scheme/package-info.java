/** Discrete gradient, convection and diffusion on a mesh. */
@NullMarked
package hemline.solver.scheme;

import org.jspecify.annotations.NullMarked;
