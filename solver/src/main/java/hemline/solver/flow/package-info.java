/** Couples momentum, pressure and closure into one steady solve. */
@NullMarked
package hemline.solver.flow;

import org.jspecify.annotations.NullMarked;
