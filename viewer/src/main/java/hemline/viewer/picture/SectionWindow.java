package hemline.viewer.picture;

import hemline.shared.geometry.Ring;
import hemline.shared.section.DuctSection;
import java.util.List;

/**
 * The part of a section that is shown, metres.
 *
 * @param left x of the left side
 * @param right x of the right side
 * @param bottom y of the lower side
 * @param top y of the upper side
 */
public record SectionWindow(double left, double right, double bottom, double top) {
  private static final double UPSTREAM = 5;
  private static final double DOWNSTREAM = 10;
  private static final double ROOM_ABOVE = 3e-3;
  private static final double TALLEST = 0.62;

  public SectionWindow {
    if (!(right > left) || !(top > bottom)) {
      throw new IllegalArgumentException("a window needs a width and a height");
    }
  }

  public double width() {
    return right - left;
  }

  public double height() {
    return top - bottom;
  }

  /**
   * Window around a lip: five gaps upstream, ten downstream, and up to a little above the lip
   * unless that would make it taller than wide.
   *
   * @param solids the lip's parts in section coordinates
   * @param field gives the ends of the domain
   */
  public static SectionWindow aroundLip(List<Ring> solids, double gap, GridField field) {
    double[] box = box(solids);
    double lip = box[1] - box[0];
    double left = box[0] - Math.max(UPSTREAM * gap, 0.4 * lip);
    double right = box[1] + Math.max(DOWNSTREAM * gap, 0.8 * lip);
    double tallest = Math.max(TALLEST * (right - left), 3 * gap);
    return new SectionWindow(left, right, 0, Math.min(box[3] + ROOM_ABOVE, tallest)).within(field);
  }

  /** Window around the obstacles of a duct; the whole duct when there are none. */
  public static SectionWindow aroundObstacles(
      List<Ring> solids, DuctSection duct, GridField field) {
    if (solids.isEmpty() || duct.cavity() != null) {
      return new SectionWindow(duct.from(), duct.to(), 0, duct.height()).within(field);
    }
    double[] box = box(solids);
    double step = duct.gap();
    return new SectionWindow(box[0] - UPSTREAM * step, box[1] + DOWNSTREAM * step, 0, duct.height())
        .within(field);
  }

  private SectionWindow within(GridField field) {
    double[] x = field.sx();
    double[] y = field.sy();
    return new SectionWindow(
        Math.max(left, x[0]),
        Math.min(right, x[x.length - 1]),
        Math.max(bottom, y[0]),
        Math.min(top, y[y.length - 1]));
  }

  private static double[] box(List<Ring> solids) {
    double[] box = {
      Double.POSITIVE_INFINITY,
      Double.NEGATIVE_INFINITY,
      Double.POSITIVE_INFINITY,
      Double.NEGATIVE_INFINITY
    };
    for (Ring ring : solids) {
      for (int k = 0; k < ring.size(); k++) {
        box[0] = Math.min(box[0], ring.x()[k]);
        box[1] = Math.max(box[1], ring.x()[k]);
        box[2] = Math.min(box[2], ring.y()[k]);
        box[3] = Math.max(box[3], ring.y()[k]);
      }
    }
    return box;
  }
}
