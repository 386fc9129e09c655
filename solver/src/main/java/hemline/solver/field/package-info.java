/** Unknowns of a flow as cell and face arrays. */
@NullMarked
package hemline.solver.field;

import org.jspecify.annotations.NullMarked;
