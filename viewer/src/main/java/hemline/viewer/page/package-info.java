/** Results as pages, and pages as text and as HTML. */
@NullMarked
package hemline.viewer.page;

import org.jspecify.annotations.NullMarked;
