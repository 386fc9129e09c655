package hemline.solver.study;

import hemline.shared.geometry.Box;
import hemline.shared.geometry.Outline;
import hemline.shared.geometry.Vertex;
import hemline.shared.profile.LipProfile;
import hemline.shared.units.NumberText;
import java.util.List;

/** The plain flat lip that others are measured against. */
public final class PlainFlat {
  private PlainFlat() {}

  /**
   * A rectangle as wide as the lip with all its parts, down to the same lowest point and up to the
   * lip's mount, by which it is fixed over its whole width.
   */
  public static LipProfile asWideAs(LipProfile lip) {
    Box box = Box.around(lip.bodies());
    double top = lip.outline().vertices().get(lip.mountEdge()).y();
    Outline rectangle =
        new Outline(
            List.of(
                new Vertex(box.left(), 0),
                new Vertex(box.right(), 0),
                new Vertex(box.right(), top),
                new Vertex(box.left(), top)));
    String name = "plain flat " + NumberText.millimetres(box.width());
    return new LipProfile(
        name, "flat", "Plain flat lip as wide as " + lip.name() + ".", rectangle, 2, List.of());
  }
}
