/** Exact solutions of the equations of motion, as formulas. */
@NullMarked
package hemline.validation.exact;

import org.jspecify.annotations.NullMarked;
