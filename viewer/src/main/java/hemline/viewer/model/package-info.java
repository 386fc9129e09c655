/** What the screens show and what works in the background; no display is needed here. */
@NullMarked
package hemline.viewer.model;

import org.jspecify.annotations.NullMarked;
