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
import java.util.Arrays;
import java.util.List;

/**
 * A rectangle with two scales, linear or logarithmic.
 *
 * @param box on the sheet
 * @param across scale along x
 * @param up scale along y
 */
record ChartPanel(Rectangle2D box, PlotScale across, PlotScale up) {
  private static final double SIZE = 11;

  /** Half the width of the place where a point tells its value. */
  private static final double WIDE = 8;

  /** Least reach of a scale, in parts of its largest value. */
  private static final double LEAST_REACH = 0.02;

  /**
   * A value with its band at a place on the x scale.
   *
   * @param x place
   * @param y value with band, in the shown unit
   * @param settled false for a mean of an unsteady flow, drawn hollow
   */
  record Point(double x, Estimate y, boolean settled) {}

  /** Range of values with their bands. */
  record Reach(double low, double high) {
    /** Scale that shows it. */
    PlotScale scale() {
      return PlotScale.linear(low, high);
    }

    boolean holds(Estimate estimate) {
      return estimate.low() >= low && estimate.high() <= high;
    }
  }

  /** Range for ratios, which holds 1; see {@link #reach(List, double)}. */
  static Reach reach(List<Estimate> ratios) {
    return reach(ratios, 1);
  }

  /**
   * Range that holds all values, and their bands unless a few are so wide that they would squeeze
   * all else: bands may lead outwards by a quarter of the range of the values or three usual
   * half-widths.
   *
   * @param estimates at least one, if nothing is held
   * @param held value that the range holds too; not a number for none
   */
  static Reach reach(List<Estimate> estimates, double held) {
    double first = Double.isNaN(held) ? estimates.get(0).value() : held;
    double low = first;
    double high = first;
    double bandLow = first;
    double bandHigh = first;
    for (Estimate e : estimates) {
      low = Math.min(low, e.value());
      high = Math.max(high, e.value());
      bandLow = Math.min(bandLow, e.low());
      bandHigh = Math.max(bandHigh, e.high());
    }
    double[] halves = estimates.stream().mapToDouble(e -> 0.5 * (e.high() - e.low())).toArray();
    Arrays.sort(halves);
    double usual = halves.length == 0 ? 0 : halves[halves.length / 2];
    double least = LEAST_REACH * Math.max(Math.abs(low), Math.abs(high));
    double outwards = Math.max(least, Math.max(0.25 * (high - low), 3 * usual));
    double top = Math.min(bandHigh, high + outwards);
    double bottom = Math.max(bandLow, low - outwards);
    return new Reach(bottom, Math.max(top, bottom + least));
  }

  double x(double value) {
    return box.getMinX() + across.share(value) * box.getWidth();
  }

  double y(double value) {
    return box.getMaxY() - up.share(value) * box.getHeight();
  }

  /** Scales with their numbers, what they mean, and a heading. */
  void paintFrame(
      Sheet sheet, String heading, String meansAcross, String meansUp, int columns, int rows) {
    paintScales(sheet, columns, rows, true, true);
    Lettering quiet = Lettering.of(SIZE, Ink.QUIET);
    sheet.text(box.getMinX(), box.getMinY() - 26, heading, Lettering.of(13, Ink.TEXT).heavy());
    sheet.text(box.getMinX(), box.getMinY() - 9, meansUp, quiet);
    sheet.text(box.getMaxX(), box.getMaxY() + 33, meansAcross, quiet.at(Anchor.END));
  }

  /** A line through points; it breaks off where it leaves the panel. */
  void paintLine(Sheet sheet, List<double[]> points, Pen pen) {
    Path2D path = new Path2D.Double();
    boolean drawing = false;
    for (double[] p : points) {
      boolean inside = across.holds(p[0]) && up.holds(p[1]);
      if (inside && drawing) {
        path.lineTo(x(p[0]), y(p[1]));
      } else if (inside) {
        path.moveTo(x(p[0]), y(p[1]));
      }
      drawing = inside;
    }
    sheet.stroke(path, pen);
  }

  /** Grid lines with numbers on the left; numbers below where asked. */
  void paintScales(Sheet sheet, int columns, int rows, boolean numbersBelow, boolean numbersLeft) {
    Lettering digits = Lettering.of(SIZE, Ink.QUIET);
    Path2D grid = new Path2D.Double();
    for (PlotScale.Tick t : across.ticks(columns)) {
      double at = x(t.value());
      grid.append(new Line2D.Double(at, box.getMinY(), at, box.getMaxY()), false);
      if (numbersBelow) {
        sheet.text(at, box.getMaxY() + 16, t.text(), digits.at(Anchor.MIDDLE));
      }
    }
    for (PlotScale.Tick t : up.ticks(rows)) {
      double at = y(t.value());
      grid.append(new Line2D.Double(box.getMinX(), at, box.getMaxX(), at), false);
      if (numbersLeft) {
        sheet.text(box.getMinX() - 7, at + 4, t.text(), digits.at(Anchor.END));
      }
    }
    sheet.stroke(grid, Ink.HAIR);
  }

  /**
   * Band, line, whiskers and points of one series; what leaves the box is cut off.
   *
   * @param means names of the scales with their units, across and up
   */
  void paintSeries(Sheet sheet, List<Point> points, String... means) {
    if (points.size() > 1) {
      Path2D band = new Path2D.Double();
      for (int k = 0; k < points.size(); k++) {
        moveOrLine(band, k, points.get(k).x(), Math.min(up.high(), points.get(k).y().high()));
      }
      for (int k = points.size() - 1; k >= 0; k--) {
        band.lineTo(x(points.get(k).x()), y(Math.max(up.low(), points.get(k).y().low())));
      }
      band.closePath();
      sheet.fill(band, Ink.SERIES_BAND, 0.75);
      sheet.stroke(line(points), new Pen(Ink.SERIES, 1, 1.8));
    }
    for (Point point : points) {
      double cx = x(point.x());
      Path2D whisker = new Path2D.Double();
      double low = y(Math.max(up.low(), point.y().low()));
      double high = y(Math.min(up.high(), point.y().high()));
      whisker.append(new Line2D.Double(cx, low, cx, high), false);
      upEnd(whisker, cx, low, point.y().low() < up.low() ? 1 : 0);
      upEnd(whisker, cx, high, point.y().high() > up.high() ? -1 : 0);
      sheet.stroke(whisker, new Pen(Ink.SERIES, 1, 1.1));
      dot(sheet, cx, y(point.y().value()), Ink.SERIES, point.settled());
      sheet.mark(
          new Rectangle2D.Double(cx - WIDE, high, 2 * WIDE, Math.max(0, low - high)),
          means[0]
              + ": "
              + Digits.plain(point.x(), 4)
              + "\n"
              + means[1]
              + ": "
              + Digits.withBand(point.y(), 1));
    }
  }

  /**
   * A level bar over the band of an estimate, and its value as a point.
   *
   * @param words what a reader is told who points at it
   */
  void paintBar(Sheet sheet, Estimate estimate, double y, int rgb, String words) {
    double low = x(Math.max(across.low(), estimate.low()));
    double high = x(Math.min(across.high(), estimate.high()));
    Path2D bar = new Path2D.Double();
    bar.append(new Line2D.Double(low, y, high, y), false);
    levelEnd(bar, low, y, estimate.low() < across.low() ? -1 : 0);
    levelEnd(bar, high, y, estimate.high() > across.high() ? 1 : 0);
    sheet.stroke(bar, new Pen(rgb, 1, 1.8));
    dot(sheet, x(estimate.value()), y, rgb, true);
    sheet.mark(new Rectangle2D.Double(low, y - WIDE, Math.max(0, high - low), 2 * WIDE), words);
  }

  /** End of an upright whisker: a cap, or an arrowhead (1 down, −1 up) where the band goes on. */
  private static void upEnd(Path2D path, double x, double y, int beyond) {
    path.moveTo(x - 3, y - 5 * beyond);
    path.lineTo(x, y);
    path.lineTo(x + 3, y - 5 * beyond);
  }

  /** End of a level bar: a cap, or an arrowhead (1 right, −1 left) where the band goes on. */
  private static void levelEnd(Path2D path, double x, double y, int beyond) {
    path.moveTo(x - 6 * beyond, y - 4);
    path.lineTo(x, y);
    path.lineTo(x - 6 * beyond, y + 4);
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
}
