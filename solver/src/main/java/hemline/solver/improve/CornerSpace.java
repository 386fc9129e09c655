package hemline.solver.improve;

import hemline.shared.geometry.DrawnOutline;
import hemline.shared.geometry.Vertex;
import hemline.shared.profile.LipDrawing;
import java.util.ArrayList;
import java.util.List;

/** A lip whose corners move, each to either side along x and y. */
public final class CornerSpace implements LipSpace {
  private final LipDrawing start;
  private final List<Integer> corners;
  private final List<NamedLength> lengths = new ArrayList<>();

  /**
   * Corners of a lip.
   *
   * @param corners numbers of vertices of the outline, at least one
   * @param reach how far a corner moves to either side at most, m, positive
   */
  public CornerSpace(LipDrawing start, List<Integer> corners, double reach) {
    this.start = start;
    this.corners = List.copyOf(corners);
    for (int corner : corners) {
      Vertex v = start.body().at(corner);
      lengths.add(new NamedLength("x" + corner, v.x() - reach, v.x() + reach));
      lengths.add(new NamedLength("y" + corner, v.y() - reach, v.y() + reach));
    }
  }

  /** Corners that may move where none are named: all but the ends of the mount edge. */
  public static List<Integer> free(LipDrawing lip) {
    int n = lip.body().vertices().size();
    List<Integer> free = new ArrayList<>();
    for (int k = 0; k < n; k++) {
      if (k != lip.mountEdge() && k != (lip.mountEdge() + 1) % n) {
        free.add(k);
      }
    }
    return free;
  }

  @Override
  public List<NamedLength> lengths() {
    return lengths;
  }

  @Override
  public LipDrawing drawing(double[] values) {
    List<Vertex> v = new ArrayList<>(start.body().vertices());
    for (int i = 0; i < corners.size(); i++) {
      int k = corners.get(i);
      v.set(k, new Vertex(values[2 * i], values[2 * i + 1], v.get(k).bulge()));
    }
    return with(start, v);
  }

  /** A lip with its corners elsewhere. */
  static LipDrawing with(LipDrawing start, List<Vertex> v) {
    return new LipDrawing(
        start.name(),
        start.family(),
        "",
        start.invented(),
        "",
        new DrawnOutline(v, start.body().roundings()),
        start.mountEdge(),
        start.detached());
  }
}
