/** Eddy-viscosity closures and wall treatment. */
@NullMarked
package hemline.solver.turbulence;

import org.jspecify.annotations.NullMarked;
