package hemline.shared.profile;

import hemline.shared.geometry.Vertex;
import java.util.List;
import java.util.OptionalInt;

/**
 * The edge of a lip that is fixed to the skirt.
 *
 * @param x0 end on the ambient side, m
 * @param x1 end on the plenum side, m, above x0
 * @param y height over the lowest point of the lip, m
 */
public record MountEdge(double x0, double x1, double y) {

  /** Mount edge of a lip, in the lip's frame. */
  public static MountEdge of(LipProfile profile) {
    List<Vertex> v = profile.outline().vertices();
    Vertex a = v.get(profile.mountEdge());
    Vertex b = v.get((profile.mountEdge() + 1) % v.size());
    return new MountEdge(Math.min(a.x(), b.x()), Math.max(a.x(), b.x()), Math.max(a.y(), b.y()));
  }

  /** Middle of the edge, m. */
  public double middle() {
    return 0.5 * (x0 + x1);
  }

  /** Width, m. */
  public double width() {
    return x1 - x0;
  }

  /** The longest straight edge among those that lie level at the top of an outline, if any. */
  public static OptionalInt findAtTop(List<Vertex> vertices) {
    int n = vertices.size();
    double top = vertices.stream().mapToDouble(Vertex::y).max().orElse(0);
    double size = vertices.stream().mapToDouble(v -> top - v.y()).max().orElse(0);
    int best = -1;
    double longest = 0;
    for (int i = 0; i < n; i++) {
      Vertex a = vertices.get(i);
      Vertex b = vertices.get((i + 1) % n);
      double length = Math.abs(b.x() - a.x());
      double below = top - Math.min(a.y(), b.y());
      if (a.bulge() == 0 && below <= 1e-9 * (size + length) && length > longest) {
        longest = length;
        best = i;
      }
    }
    return best < 0 ? OptionalInt.empty() : OptionalInt.of(best);
  }
}
