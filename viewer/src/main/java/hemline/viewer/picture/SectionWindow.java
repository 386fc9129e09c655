package hemline.viewer.picture;

import hemline.shared.geometry.Box;
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
    Box box = Box.of(solids);
    double lip = box.width();
    double left = box.left() - Math.max(UPSTREAM * gap, 0.4 * lip);
    double right = box.right() + Math.max(DOWNSTREAM * gap, 0.8 * lip);
    double tallest = Math.max(TALLEST * (right - left), 3 * gap);
    return new SectionWindow(left, right, 0, Math.min(box.top() + ROOM_ABOVE, tallest))
        .within(field);
  }

  /** Window around the obstacles of a duct; the whole duct when there are none. */
  public static SectionWindow aroundObstacles(
      List<Ring> solids, DuctSection duct, GridField field) {
    if (solids.isEmpty() || duct.walls().cavity() != null) {
      return new SectionWindow(
              duct.channel().from(), duct.channel().to(), 0, duct.channel().height())
          .within(field);
    }
    Box box = Box.of(solids);
    double step = duct.gap();
    return new SectionWindow(
            box.left() - UPSTREAM * step,
            box.right() + DOWNSTREAM * step,
            0,
            duct.channel().height())
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
}
