/** Properties of the fluid at a state. */
@NullMarked
package hemline.shared.fluid;

import org.jspecify.annotations.NullMarked;
