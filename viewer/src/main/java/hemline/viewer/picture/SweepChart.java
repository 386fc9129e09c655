package hemline.viewer.picture;

import hemline.shared.result.Estimate;
import hemline.shared.result.Figure;
import hemline.shared.result.SectionResult;
import hemline.shared.result.SolveStatus;
import hemline.solver.study.SweepResult;
import hemline.viewer.format.Digits;
import hemline.viewer.format.Wording;
import hemline.viewer.picture.Sheet.Anchor;
import hemline.viewer.picture.Sheet.Lettering;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;

/** Leak flow and discharge coefficient over the gap or the suction, with bands. */
public final class SweepChart extends Picture {
  private static final double WIDTH = 860;
  private static final double PANEL = 220;
  private static final double LEFT = 84;
  private static final double RIGHT = 30;
  private static final double TOP = 112;
  private static final double BETWEEN = 44;

  private final SweepResult sweep;
  private final boolean overGap;

  private SweepChart(SweepResult sweep, boolean overGap) {
    this.sweep = sweep;
    this.overGap = overGap;
  }

  /**
   * Chart of a sweep; points without a usable leak are left out.
   *
   * @param overGap true when the gap was swept, false for the suction
   * @throws IllegalArgumentException if the sweep has no points
   */
  public static SweepChart of(SweepResult sweep, boolean overGap) {
    if (sweep.points().isEmpty()) {
      throw new IllegalArgumentException("a sweep without points has no chart");
    }
    return new SweepChart(sweep, overGap);
  }

  @Override
  double width() {
    return WIDTH;
  }

  @Override
  double height() {
    return TOP + 2 * PANEL + BETWEEN + 66;
  }

  @Override
  void paint(Sheet sheet) {
    SectionResult first = sweep.points().get(0);
    double room = WIDTH - 60;
    sheet.text(
        26, 40, TextWidth.fitted(first.name(), 22, room), Lettering.of(22, Ink.TEXT).heavy());
    String fixed =
        overGap
            ? "suction " + Wording.pressure(first.suction())
            : "gap " + Wording.millimetres(first.gap());
    sheet.text(
        26,
        61,
        fixed + " \u00b7 " + Wording.ground(first.groundSpeed(), first.spanwiseSpeed()),
        Lettering.of(13, Ink.TEXT));
    Estimate exponent = sweep.gapExponent();
    if (exponent != null) {
      sheet.text(
          WIDTH - RIGHT,
          61,
          "gap exponent n  " + Digits.withBand(exponent, 1),
          Lettering.of(13, Ink.TEXT).at(Anchor.END));
    }
    panel(sheet, TOP, Figure.LEAK_FLOW, 1000, "leak flow, L/s per m", false);
    double second = TOP + PANEL + BETWEEN;
    panel(sheet, second, Figure.DISCHARGE_COEFFICIENT, 1, "discharge coefficient C_d", true);
    sheet.text(
        WIDTH - RIGHT,
        second + PANEL + 36,
        overGap ? "gap, mm" : "suction, Pa",
        Lettering.of(12, Ink.TEXT).at(Anchor.END));
    sheet.text(
        LEFT,
        second + PANEL + 36,
        "bars and shading: band of the estimate; hollow points: mean of an unsteady flow",
        Lettering.of(11.5, Ink.QUIET));
  }

  private void panel(
      Sheet sheet, double top, Figure figure, double factor, String title, boolean last) {
    List<ChartPanel.Point> points = new ArrayList<>();
    double xLow = Double.POSITIVE_INFINITY;
    double xHigh = Double.NEGATIVE_INFINITY;
    double low = Double.POSITIVE_INFINITY;
    double high = Double.NEGATIVE_INFINITY;
    for (SectionResult result : sweep.points()) {
      double x = overGap ? 1000 * result.gap() : result.suction();
      xLow = Math.min(xLow, x);
      xHigh = Math.max(xHigh, x);
      Estimate estimate = result.figures().get(figure);
      if (estimate != null && result.status() != SolveStatus.FAILED) {
        Estimate shown = estimate.times(factor);
        points.add(new ChartPanel.Point(x, shown, result.status() == SolveStatus.CONVERGED));
        low = Math.min(low, shown.low());
        high = Math.max(high, shown.high());
      }
    }
    Rectangle2D box = new Rectangle2D.Double(LEFT, top, WIDTH - LEFT - RIGHT, PANEL);
    sheet.text(LEFT, top - 10, title, Lettering.of(13, Ink.TEXT).heavy().symbols());
    if (points.isEmpty()) {
      sheet.text(LEFT + 12, top + 30, "no usable flow", Lettering.of(12, Ink.VORTEX));
      return;
    }
    double[] xs = ChartPanel.roomy(xLow, xHigh);
    double[] ys = ChartPanel.roomy(figure == Figure.LEAK_FLOW ? Math.min(0, low) : low, high);
    ChartPanel panel = new ChartPanel(box, xs[0], xs[1], ys[0], ys[1]);
    panel.paintScales(sheet, 8, 5, last, true);
    panel.paintSeries(sheet, points);
  }
}
