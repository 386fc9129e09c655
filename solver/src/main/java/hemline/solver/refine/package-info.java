/** Solves on a family of grids and turns the scatter into uncertainty. */
@NullMarked
package hemline.solver.refine;

import org.jspecify.annotations.NullMarked;
