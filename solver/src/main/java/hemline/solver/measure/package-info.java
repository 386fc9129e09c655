/** Figures of a finished flow field. */
@NullMarked
package hemline.solver.measure;

import org.jspecify.annotations.NullMarked;
