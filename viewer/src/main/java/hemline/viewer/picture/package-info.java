/**
 * Section pictures and charts, painted once and written as PNG or SVG.
 *
 * <p>A {@link hemline.viewer.picture.Picture} paints on a {@link hemline.viewer.picture.Sheet};
 * sheets exist for pixels and for SVG text, so both files show the same.
 */
@NullMarked
package hemline.viewer.picture;

import org.jspecify.annotations.NullMarked;
