/** Sparse linear systems and their iterations; knows no grid. */
@NullMarked
package hemline.solver.linear;

import org.jspecify.annotations.NullMarked;
