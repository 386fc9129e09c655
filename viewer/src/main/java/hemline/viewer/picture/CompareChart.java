package hemline.viewer.picture;

import hemline.shared.result.Estimate;
import hemline.solver.rig.ComparedPoint;
import hemline.solver.rig.Comparison;
import hemline.viewer.format.CompareWords;
import hemline.viewer.format.Digits;
import hemline.viewer.format.LengthUnit;
import hemline.viewer.picture.Sheet.Anchor;
import hemline.viewer.picture.Sheet.Lettering;
import hemline.viewer.picture.Sheet.Pen;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * Measured and predicted discharge coefficients of a rig point by point, both with their error
 * bars; below, the comparison error with its uncertainty over the band of the flow model.
 */
public final class CompareChart extends Picture {
  private static final double WIDTH = 860;
  private static final double PANEL = 240;
  private static final double LEFT = 84;
  private static final double RIGHT = 30;
  private static final double TOP = 118;
  private static final double BETWEEN = 46;
  private static final double FOOT = 74;

  /** Half the distance between the bars of a point, in slots. */
  private static final double APART = 0.13;

  private final String title;
  private final Comparison comparison;
  private final List<ComparedPoint> points;

  private CompareChart(String title, Comparison comparison) {
    super(WIDTH, TOP + 2 * PANEL + BETWEEN + FOOT);
    this.title = title;
    this.comparison = comparison;
    this.points = new ArrayList<>(comparison.points());
    points.sort(
        Comparator.comparingDouble(ComparedPoint::gap).thenComparingDouble(ComparedPoint::suction));
  }

  /** Chart of a comparison with at least one point. */
  public static CompareChart of(String title, Comparison comparison) {
    return new CompareChart(title, comparison);
  }

  @Override
  public void paint(Sheet sheet) {
    double room = WIDTH - 60;
    sheet.text(26, 38, TextWidth.fitted(title, 20, room), Lettering.of(20, Ink.TEXT).heavy());
    String told = CompareWords.brief(comparison);
    sheet.text(26, 60, TextWidth.fitted(told, 13, room), Lettering.of(13, Ink.TEXT));
    coefficients(sheet);
    errors(sheet);
    labels(sheet);
    double foot = TOP + 2 * PANEL + BETWEEN + 56;
    sheet.text(
        LEFT,
        foot,
        "points in the order of gap and suction; bars: 95 %, predicted: band of the estimate;"
            + " shading: band of the flow model",
        Lettering.of(11.5, Ink.QUIET));
  }

  private static double top(int panel) {
    return TOP + panel * (PANEL + BETWEEN);
  }

  private ChartPanel panel(int place, double low, double high) {
    Rectangle2D box = new Rectangle2D.Double(LEFT, top(place), WIDTH - LEFT - RIGHT, PANEL);
    return new ChartPanel(
        box, new PlotScale(-0.5, points.size() - 0.5, false), PlotScale.linear(low, high));
  }

  private void coefficients(Sheet sheet) {
    double low = Double.POSITIVE_INFINITY;
    double high = Double.NEGATIVE_INFINITY;
    for (ComparedPoint p : points) {
      low = Math.min(low, p.measured().value() - p.measured().halfWidth());
      high = Math.max(high, p.measured().value() + p.measured().halfWidth());
      Estimate s = p.predicted();
      low = s == null ? low : Math.min(low, s.low());
      high = s == null ? high : Math.max(high, s.high());
    }
    ChartPanel panel = panel(0, low, high);
    scales(sheet, panel);
    Lettering heading = Lettering.of(13, Ink.TEXT).heavy().symbols();
    sheet.text(LEFT, top(0) - 12, "discharge coefficient C_d", heading);
    key(sheet, 560, Ink.VORTEX, "measured");
    key(sheet, 690, Ink.SERIES, "predicted");
    for (int k = 0; k < points.size(); k++) {
      ComparedPoint p = points.get(k);
      double wide = p.measured().halfWidth();
      bar(sheet, panel, k - APART, p.measured().value(), wide, wide, Ink.VORTEX);
      Estimate s = p.predicted();
      if (s != null) {
        bar(
            sheet,
            panel,
            k + APART,
            s.value(),
            s.value() - s.low(),
            s.high() - s.value(),
            Ink.SERIES);
      }
    }
  }

  private void errors(Sheet sheet) {
    double low = 0;
    double high = 0;
    for (ComparedPoint p : points) {
      Estimate s = p.predicted();
      if (s != null) {
        low = Math.min(low, Math.min(-s.modelHigh(), p.error().value() - p.error().halfWidth()));
        high = Math.max(high, Math.max(s.modelLow(), p.error().value() + p.error().halfWidth()));
      }
    }
    ChartPanel panel = panel(1, low, high);
    for (int k = 0; k < points.size(); k++) {
      Estimate s = points.get(k).predicted();
      if (s != null) {
        double from = panel.y(s.modelLow());
        sheet.fill(
            new Rectangle2D.Double(
                panel.x(k - 0.5),
                from,
                panel.x(k + 0.5) - panel.x(k - 0.5),
                panel.y(-s.modelHigh()) - from),
            Ink.SERIES_BAND,
            0.75);
      }
    }
    scales(sheet, panel);
    sheet.stroke(
        new Line2D.Double(LEFT, panel.y(0), WIDTH - RIGHT, panel.y(0)), new Pen(Ink.TEXT, 1, 1.1));
    sheet.text(LEFT, top(1) - 12, "predicted less measured, E", Lettering.of(13, Ink.TEXT).heavy());
    for (int k = 0; k < points.size(); k++) {
      ComparedPoint p = points.get(k);
      if (p.predicted() != null) {
        double wide = p.error().halfWidth();
        bar(sheet, panel, k, p.error().value(), wide, wide, Ink.TEXT);
      }
    }
  }

  private static void scales(Sheet sheet, ChartPanel panel) {
    Ticks up = Ticks.within(panel.up().low(), panel.up().high(), 6);
    Lettering digits = Lettering.of(11, Ink.QUIET).at(Anchor.END);
    for (double t : up.values()) {
      double y = panel.y(t);
      sheet.stroke(new Line2D.Double(LEFT, y, WIDTH - RIGHT, y), Ink.HAIR);
      sheet.text(LEFT - 7, y + 4, Digits.fixed(t, up.decimals()), digits);
    }
    sheet.stroke(
        new Line2D.Double(LEFT, panel.box().getMaxY(), WIDTH - RIGHT, panel.box().getMaxY()),
        Ink.AXIS);
  }

  /** Suction below each point, gap below each run of points of one gap. */
  private void labels(Sheet sheet) {
    ChartPanel panel = panel(1, 0, 1);
    double y = top(1) + PANEL;
    int every = Math.max(1, (int) Math.ceil(points.size() / 16.0));
    Lettering letters = Lettering.of(11, Ink.QUIET).at(Anchor.MIDDLE);
    int from = 0;
    for (int k = 0; k < points.size(); k++) {
      if (k % every == 0) {
        sheet.text(panel.x(k), y + 15, Digits.plain(points.get(k).suction(), 3), letters);
      }
      boolean last = k == points.size() - 1 || points.get(k + 1).gap() != points.get(k).gap();
      if (last) {
        String gap = LengthUnit.text(points.get(k).gap(), 3);
        sheet.text(panel.x(0.5 * (from + k)), y + 32, gap, letters.heavy());
        if (k < points.size() - 1) {
          double x = panel.x(k + 0.5);
          sheet.stroke(new Line2D.Double(x, TOP, x, y + 34), Ink.HAIR);
        }
        from = k + 1;
      }
    }
    sheet.text(LEFT - 7, y + 15, "Pa", Lettering.of(11, Ink.QUIET).at(Anchor.END));
    sheet.text(LEFT - 7, y + 32, "gap", Lettering.of(11, Ink.QUIET).at(Anchor.END));
  }

  private static void key(Sheet sheet, double x, int rgb, String text) {
    ChartPanel.dot(sheet, x, TOP - 16, rgb, true);
    sheet.text(x + 10, TOP - 12, text, Lettering.of(12, Ink.TEXT));
  }

  private static void bar(
      Sheet sheet, ChartPanel panel, double x, double value, double down, double up, int rgb) {
    double cx = panel.x(x);
    Path2D path = new Path2D.Double();
    for (double end : new double[] {value - down, value + up}) {
      path.moveTo(cx - 4, panel.y(end));
      path.lineTo(cx + 4, panel.y(end));
    }
    path.moveTo(cx, panel.y(value - down));
    path.lineTo(cx, panel.y(value + up));
    sheet.stroke(path, new Pen(rgb, 1, 1.5));
    ChartPanel.dot(sheet, cx, panel.y(value), rgb, true);
    double top = panel.y(value + up);
    sheet.mark(
        new Rectangle2D.Double(cx - 8, top, 16, panel.y(value - down) - top),
        Digits.withBand(new Estimate(value, 0, 0, down, up, Estimate.Trend.UNKNOWN), 1));
  }
}
