package hemline.shared.geometry;

import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.geom.Coordinate;

/** Chords of a drawn outline in its own order, each with the edge it belongs to. */
final class Chords {
  /** Start points; chord i runs to point i + 1, the last one to the first. */
  final List<Coordinate> points;

  /** Edge of each chord. */
  final int[] edge;

  private Chords(List<Coordinate> points, int[] edge) {
    this.points = points;
    this.edge = edge;
  }

  static Chords of(List<Vertex> vertices) {
    List<double[]> points = new ArrayList<>();
    List<Integer> owners = new ArrayList<>();
    int n = vertices.size();
    for (int i = 0; i < n; i++) {
      Vertex a = vertices.get(i);
      points.add(new double[] {a.x(), a.y()});
      if (a.bulge() != 0) {
        OutlineFlattening.addArc(points, a, vertices.get((i + 1) % n));
      }
      while (owners.size() < points.size()) {
        owners.add(i);
      }
    }
    return new Chords(
        points.stream().map(p -> new Coordinate(p[0], p[1])).toList(),
        owners.stream().mapToInt(Integer::intValue).toArray());
  }

  int size() {
    return edge.length;
  }

  Coordinate from(int i) {
    return points.get(i);
  }

  Coordinate to(int i) {
    return points.get((i + 1) % points.size());
  }
}
