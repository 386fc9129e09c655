/** Start of the program and of its window: menus, pages, wiring. */
@NullMarked
package hemline.viewer.app;

import org.jspecify.annotations.NullMarked;
