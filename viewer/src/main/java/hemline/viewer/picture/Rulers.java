package hemline.viewer.picture;

import hemline.viewer.format.Digits;
import hemline.viewer.format.LengthUnit;
import hemline.viewer.picture.Sheet.Anchor;
import hemline.viewer.picture.Sheet.Lettering;
import hemline.viewer.picture.Sheet.Pen;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;

/** Rulers along the section, in millimetres, or metres when the section is that large. */
final class Rulers {
  private static final double SIZE = 11.5;
  private static final double LARGE = 2;
  private static final double TICK = 5;

  private Rulers() {}

  /**
   * Paints both rulers.
   *
   * @param below height of the ground strip between the picture and the lower ruler
   */
  static void paint(Sheet sheet, Projection view, SectionScene scene, double below) {
    boolean metres = view.window().width() > LARGE;
    double unit = metres ? 1 : LengthUnit.factor();
    String name = metres ? "m" : LengthUnit.unit();
    SectionWindow w = view.window();
    Lettering digits = Lettering.of(SIZE, Ink.QUIET);
    Path2D marks = new Path2D.Double();
    double y = view.base() + below;
    Ticks along =
        Ticks.within(w.left() * unit, w.right() * unit, (int) Math.max(2, view.width() / 75));
    for (double t : along.values()) {
      double x = view.x(t / unit);
      marks.append(new Line2D.Double(x, y, x, y + TICK), false);
      sheet.text(x, y + 18, Digits.fixed(t, along.decimals()), digits.at(Anchor.MIDDLE));
    }
    String origin =
        scene.duct() != null ? name + " along the duct" : name + " from the lip's ambient edge";
    sheet.text(view.left() + view.width(), y + 34, origin, digits.at(Anchor.END));
    Ticks up =
        Ticks.within(w.bottom() * unit, w.top() * unit, (int) Math.max(1, view.height() / 55));
    for (double t : up.values()) {
      double ty = view.y(t / unit);
      marks.append(new Line2D.Double(view.left() - TICK, ty, view.left(), ty), false);
      sheet.text(view.left() - 9, ty + 4, Digits.fixed(t, up.decimals()), digits.at(Anchor.END));
    }
    sheet.stroke(marks, Ink.AXIS);
    if (view.height() > 130) {
      sheet.text(
          view.left() - 42,
          view.base() - 0.5 * view.height(),
          name + " above the ground",
          digits.at(Anchor.MIDDLE).turned(90));
    }
    if (scene.duct() == null) {
      paintGap(sheet, view, scene.result().conditions().gap());
    }
  }

  /** Height of the gap as a bar on the left ruler. */
  private static void paintGap(Sheet sheet, Projection view, double gap) {
    double x = view.left() + 5;
    double top = view.y(gap);
    sheet.stroke(new Line2D.Double(x, view.base() - 2, x, top + 1), new Pen(Ink.TEXT, 1, 3));
    sheet.text(x + 6, 0.5 * (view.base() + top) + 4, "gap", Lettering.of(SIZE, Ink.TEXT).lifted());
  }
}
