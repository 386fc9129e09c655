/** Painting on screen: the same sheets, colours and lines as in saved pictures. */
@NullMarked
package hemline.viewer.draw;

import org.jspecify.annotations.NullMarked;
