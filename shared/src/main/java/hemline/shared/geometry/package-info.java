/** Closed outlines of straight edges and circular arcs, and polygons. */
@NullMarked
package hemline.shared.geometry;

import org.jspecify.annotations.NullMarked;
