/** Tensor-product grids with cut cells, as cells and faces in flat arrays. */
@NullMarked
package hemline.solver.grid;

import org.jspecify.annotations.NullMarked;
