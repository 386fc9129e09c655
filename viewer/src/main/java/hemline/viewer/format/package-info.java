/**
 * Figures as people read them: trade units, digits that fit the band, aligned tables, words of
 * notices.
 */
@NullMarked
package hemline.viewer.format;

import org.jspecify.annotations.NullMarked;
