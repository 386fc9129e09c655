/** Drawing of a lip: changes that answer a new drawing, snapping, starter shapes, undo. */
@NullMarked
package hemline.viewer.edit;

import org.jspecify.annotations.NullMarked;
