package hemline.solver.study;

import hemline.shared.geometry.Outline;
import hemline.shared.geometry.Ring;
import hemline.shared.geometry.Vertex;
import hemline.shared.profile.LipProfile;
import hemline.shared.units.NumberText;
import java.util.List;
import java.util.stream.Stream;

/** The plain flat lip that others are measured against. */
public final class PlainFlat {
  private PlainFlat() {}

  /**
   * A rectangle as wide as the lip with all its parts, down to the same lowest point and up to the
   * lip's mount, by which it is fixed over its whole width.
   */
  public static LipProfile asWideAs(LipProfile lip) {
    double left = Double.POSITIVE_INFINITY;
    double right = Double.NEGATIVE_INFINITY;
    List<Ring> rings =
        Stream.concat(Stream.of(lip.outline()), lip.detached().stream())
            .map(Outline::flatten)
            .toList();
    for (Ring ring : rings) {
      for (double x : ring.x()) {
        left = Math.min(left, x);
        right = Math.max(right, x);
      }
    }
    double top = lip.outline().vertices().get(lip.mountEdge()).y();
    Outline rectangle =
        new Outline(
            List.of(
                new Vertex(left, 0),
                new Vertex(right, 0),
                new Vertex(right, top),
                new Vertex(left, top)));
    String name = "plain flat " + NumberText.millimetres(right - left);
    return new LipProfile(
        name, "flat", "Plain flat lip as wide as " + lip.name() + ".", rectangle, 2, List.of());
  }
}
