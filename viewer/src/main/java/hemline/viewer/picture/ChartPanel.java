package hemline.viewer.picture;

import hemline.shared.result.Estimate;
import hemline.viewer.format.Digits;
import hemline.viewer.picture.Sheet.Anchor;
import hemline.viewer.picture.Sheet.Lettering;
import hemline.viewer.picture.Sheet.Pen;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.util.List;

/**
 * A rectangle with two number scales.
 *
 * @param box on the sheet
 * @param xLow value at the left side
 * @param xHigh value at the right side
 * @param yLow value at the lower side
 * @param yHigh value at the upper side
 */
record ChartPanel(Rectangle2D box, double xLow, double xHigh, double yLow, double yHigh) {
  private static final double SIZE = 11;

  /**
   * A value with its band at a place on the x scale.
   *
   * @param x place
   * @param y value with band, in the shown unit
   * @param settled false for a mean of an unsteady flow, drawn hollow
   */
  record Point(double x, Estimate y, boolean settled) {}

  double x(double value) {
    return box.getMinX() + (value - xLow) / (xHigh - xLow) * box.getWidth();
  }

  double y(double value) {
    return box.getMaxY() - (value - yLow) / (yHigh - yLow) * box.getHeight();
  }

  /** Grid lines with numbers on the left; numbers below where asked. */
  void paintScales(Sheet sheet, int columns, int rows, boolean numbersBelow, boolean numbersLeft) {
    Lettering digits = Lettering.of(SIZE, Ink.QUIET);
    Path2D grid = new Path2D.Double();
    Ticks along = Ticks.within(xLow, xHigh, columns);
    for (double t : along.values()) {
      grid.append(new Line2D.Double(x(t), box.getMinY(), x(t), box.getMaxY()), false);
      if (numbersBelow) {
        String text = Digits.fixed(t, along.decimals());
        sheet.text(x(t), box.getMaxY() + 16, text, digits.at(Anchor.MIDDLE));
      }
    }
    Ticks up = Ticks.within(yLow, yHigh, rows);
    for (double t : up.values()) {
      grid.append(new Line2D.Double(box.getMinX(), y(t), box.getMaxX(), y(t)), false);
      if (numbersLeft) {
        String text = Digits.fixed(t, up.decimals());
        sheet.text(box.getMinX() - 7, y(t) + 4, text, digits.at(Anchor.END));
      }
    }
    sheet.stroke(grid, Ink.HAIR);
  }

  /** Band, line, whiskers and points of one series. */
  void paintSeries(Sheet sheet, List<Point> points) {
    if (points.size() > 1) {
      Path2D band = new Path2D.Double();
      for (int k = 0; k < points.size(); k++) {
        moveOrLine(band, k, points.get(k).x(), points.get(k).y().high());
      }
      for (int k = points.size() - 1; k >= 0; k--) {
        band.lineTo(x(points.get(k).x()), y(points.get(k).y().low()));
      }
      band.closePath();
      sheet.fill(band, Ink.SERIES_BAND, 0.75);
      sheet.stroke(line(points), new Pen(Ink.SERIES, 1, 1.8));
    }
    for (Point point : points) {
      double cx = x(point.x());
      double low = y(point.y().low());
      double high = y(point.y().high());
      Path2D whisker = new Path2D.Double();
      whisker.append(new Line2D.Double(cx, low, cx, high), false);
      whisker.append(new Line2D.Double(cx - 3, low, cx + 3, low), false);
      whisker.append(new Line2D.Double(cx - 3, high, cx + 3, high), false);
      sheet.stroke(whisker, new Pen(Ink.SERIES, 1, 1.1));
      dot(sheet, cx, y(point.y().value()), Ink.SERIES, point.settled());
    }
  }

  /** A thin line without band, for what stands in the background. */
  void paintFaint(Sheet sheet, List<Point> points) {
    sheet.stroke(line(points), new Pen(Ink.FAINT, 1, 1.2));
  }

  static void dot(Sheet sheet, double x, double y, int rgb, boolean full) {
    Ellipse2D disc = new Ellipse2D.Double(x - 3.2, y - 3.2, 6.4, 6.4);
    sheet.fill(disc, full ? rgb : Ink.PAPER, 1);
    sheet.stroke(disc, new Pen(rgb, 1, 1.4));
  }

  private Path2D line(List<Point> points) {
    Path2D path = new Path2D.Double();
    for (int k = 0; k < points.size(); k++) {
      moveOrLine(path, k, points.get(k).x(), points.get(k).y().value());
    }
    return path;
  }

  private void moveOrLine(Path2D path, int k, double vx, double vy) {
    if (k == 0) {
      path.moveTo(x(vx), y(vy));
    } else {
      path.lineTo(x(vx), y(vy));
    }
  }

  /** Range with some air around it, never empty. */
  static double[] roomy(double low, double high) {
    double air = Math.max(0.06 * (high - low), 1e-6 * (Math.abs(low) + Math.abs(high)) + 1e-12);
    return new double[] {low - air, high + air};
  }
}
