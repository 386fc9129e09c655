/** Screens, one class each with {@code createContent()}; state lives in {@code viewer.model}. */
@NullMarked
package hemline.viewer.screen;

import org.jspecify.annotations.NullMarked;
