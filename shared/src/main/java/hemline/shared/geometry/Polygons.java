package hemline.shared.geometry;

import java.util.List;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Polygon;

/** Bridge to the polygon library, and sizes of outlines. */
public final class Polygons {
  private Polygons() {}

  /** Polygon of an outline, arcs as chords, coordinates times a scale. */
  public static Polygon polygon(Outline outline, double scale) {
    Ring ring = outline.flatten();
    int n = ring.size();
    Coordinate[] c = new Coordinate[n + 1];
    for (int i = 0; i <= n; i++) {
      c[i] = new Coordinate(scale * ring.x()[i % n], scale * ring.y()[i % n]);
    }
    return new GeometryFactory().createPolygon(c);
  }

  /** Signed area with the arcs exact, m²; positive counter-clockwise. */
  public static double signedArea(List<Vertex> vertices) {
    double twice = 0;
    double segments = 0;
    int n = vertices.size();
    Vertex origin = vertices.get(0);
    for (int i = 0; i < n; i++) {
      Vertex a = vertices.get(i);
      Vertex b = vertices.get((i + 1) % n);
      twice +=
          (a.x() - origin.x()) * (b.y() - origin.y()) - (b.x() - origin.x()) * (a.y() - origin.y());
      if (a.bulge() != 0) {
        segments += Arc.of(a, b).segmentArea();
      }
    }
    return 0.5 * twice + segments;
  }

  /** The same outline run the other way; edge i becomes edge n - 2 - i (modulo n). */
  public static Outline reversed(Outline outline) {
    List<Vertex> v = outline.vertices();
    int n = v.size();
    Vertex[] out = new Vertex[n];
    for (int j = 0; j < n; j++) {
      Vertex at = v.get(n - 1 - j);
      double bulge = v.get(Math.floorMod(n - 2 - j, n)).bulge();
      out[j] = new Vertex(at.x(), at.y(), bulge == 0 ? 0 : -bulge);
    }
    return new Outline(List.of(out));
  }

  /** The outline moved. */
  public static Outline moved(Outline outline, double dx, double dy) {
    return new Outline(
        outline.vertices().stream()
            .map(v -> new Vertex(v.x() + dx, v.y() + dy, v.bulge()))
            .toList());
  }
}
