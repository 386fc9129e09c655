package hemline.shared.file;

import hemline.shared.geometry.Vertex;
import java.util.ArrayList;
import java.util.List;

/**
 * A run of edges in a drawing.
 *
 * @param vertices m; the last one's bulge counts only if the run is closed
 * @param closed true if an edge leads from the last vertex back to the first
 * @param origin where it stands in the drawing, for messages
 */
record Contour(List<Vertex> vertices, boolean closed, String origin) {
  Contour {
    vertices = List.copyOf(vertices);
  }

  Vertex first() {
    return vertices.get(0);
  }

  Vertex last() {
    return vertices.get(vertices.size() - 1);
  }

  /** An open run the other way. */
  Contour reversed() {
    List<Vertex> out = new ArrayList<>();
    for (int i = vertices.size() - 1; i >= 0; i--) {
      Vertex v = vertices.get(i);
      double bulge = i == 0 ? 0 : vertices.get(i - 1).bulge();
      out.add(new Vertex(v.x(), v.y(), bulge == 0 ? 0 : -bulge));
    }
    return new Contour(out, closed, origin);
  }
}
