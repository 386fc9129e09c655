/** Figures as people read them: trade units, digits that fit the band, aligned tables. */
@NullMarked
package hemline.viewer.format;

import org.jspecify.annotations.NullMarked;
