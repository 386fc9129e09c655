package hemline.viewer.picture;

import hemline.viewer.picture.Sheet.Anchor;
import hemline.viewer.picture.Sheet.Lettering;
import hemline.viewer.picture.Sheet.Pen;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.util.List;

/**
 * A rectangle with two scales, linear or logarithmic.
 *
 * @param box on the sheet
 * @param across scale along x
 * @param up scale along y
 */
record PlotFrame(Rectangle2D box, PlotScale across, PlotScale up) {
  private static final double SIZE = 11;

  double x(double value) {
    return box.getMinX() + across.share(value) * box.getWidth();
  }

  double y(double value) {
    return box.getMaxY() - up.share(value) * box.getHeight();
  }

  boolean holds(double vx, double vy) {
    return across.holds(vx) && up.holds(vy);
  }

  /** Grid lines and numbers, what the scales mean, and a heading. */
  void paint(
      Sheet sheet, String heading, String meansAcross, String meansUp, int columns, int rows) {
    Lettering digits = Lettering.of(SIZE, Ink.QUIET);
    Path2D grid = new Path2D.Double();
    for (PlotScale.Tick t : across.ticks(columns)) {
      double at = x(t.value());
      grid.append(new Line2D.Double(at, box.getMinY(), at, box.getMaxY()), false);
      sheet.text(at, box.getMaxY() + 16, t.text(), digits.at(Anchor.MIDDLE));
    }
    for (PlotScale.Tick t : up.ticks(rows)) {
      double at = y(t.value());
      grid.append(new Line2D.Double(box.getMinX(), at, box.getMaxX(), at), false);
      sheet.text(box.getMinX() - 7, at + 4, t.text(), digits.at(Anchor.END));
    }
    sheet.stroke(grid, Ink.HAIR);
    sheet.text(box.getMinX(), box.getMinY() - 26, heading, Lettering.of(13, Ink.TEXT).heavy());
    sheet.text(box.getMinX(), box.getMinY() - 9, meansUp, Lettering.of(SIZE, Ink.QUIET));
    sheet.text(
        box.getMaxX(),
        box.getMaxY() + 33,
        meansAcross,
        Lettering.of(SIZE, Ink.QUIET).at(Anchor.END));
  }

  /** A line through points; it breaks off where it leaves the frame. */
  void line(Sheet sheet, List<double[]> points, Pen pen) {
    Path2D path = new Path2D.Double();
    boolean drawing = false;
    for (double[] p : points) {
      boolean inside = holds(p[0], p[1]);
      if (inside && drawing) {
        path.lineTo(x(p[0]), y(p[1]));
      } else if (inside) {
        path.moveTo(x(p[0]), y(p[1]));
      }
      drawing = inside;
    }
    sheet.stroke(path, pen);
  }
}
