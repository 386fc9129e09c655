/** Runs reference cases and judges the computed figures. */
@NullMarked
package hemline.validation.run;

import org.jspecify.annotations.NullMarked;
