package hemline.viewer.picture;

import hemline.shared.result.Estimate;
import hemline.shared.result.Figure;
import hemline.shared.result.SectionResult;
import hemline.shared.result.SolveStatus;
import hemline.solver.study.RelativeSweep;
import hemline.solver.study.SweepResult;
import hemline.solver.study.Swept;
import hemline.viewer.format.Digits;
import hemline.viewer.format.LengthUnit;
import hemline.viewer.format.Wording;
import hemline.viewer.picture.Sheet.Anchor;
import hemline.viewer.picture.Sheet.Lettering;
import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Leak flow, discharge coefficient and, where there is a baseline, relative leak over the gap, the
 * suction or the ground speed, with bands.
 */
public final class SweepChart extends Picture {
  private static final double WIDTH = 860;
  private static final double PANEL = 220;
  private static final double LEFT = 84;
  private static final double RIGHT = 30;
  private static final double TOP = 112;
  private static final double BETWEEN = 44;

  private final SweepResult sweep;
  private final Swept swept;
  private final @Nullable RelativeSweep relative;

  private SweepChart(SweepResult sweep, Swept swept, @Nullable RelativeSweep relative) {
    super(WIDTH, top(relative == null ? 2 : 3) - BETWEEN + 66);
    if (sweep.points().isEmpty()) {
      throw new IllegalArgumentException("a sweep without points has no chart");
    }
    this.sweep = sweep;
    this.swept = swept;
    this.relative = relative;
  }

  /**
   * Chart of a sweep; points without a usable leak are left out.
   *
   * @param swept what was swept
   * @throws IllegalArgumentException if the sweep has no points
   */
  public static SweepChart of(SweepResult sweep, Swept swept) {
    return new SweepChart(sweep, swept, null);
  }

  /** The same with a panel for the leak over that of the baseline. */
  public static SweepChart of(RelativeSweep sweep, Swept swept) {
    return new SweepChart(sweep.lip(), swept, sweep);
  }

  private int panels() {
    return relative == null ? 2 : 3;
  }

  @Override
  public void paint(Sheet sheet) {
    SectionResult first = sweep.points().get(0);
    heading(sheet, first.name(), Wording.besides(swept, first));
    Estimate exponent = sweep.gapExponent();
    if (exponent != null) {
      sheet.text(
          WIDTH - RIGHT,
          60,
          "gap exponent n  " + Digits.withBand(exponent, 1),
          Lettering.of(13, Ink.TEXT).at(Anchor.END));
    }
    List<@Nullable Estimate> leak = figure(Figure.LEAK_FLOW, 1000);
    boolean whole = panel(sheet, 0, leak, "leak flow, L/s per m", 0);
    List<@Nullable Estimate> coefficient = figure(Figure.DISCHARGE_COEFFICIENT, 1);
    whole &= panel(sheet, 1, coefficient, "discharge coefficient C_d", Double.NaN);
    if (relative != null) {
      String flat = relative.baseline().points().get(0).name();
      whole &= panel(sheet, 2, relative.relativeLeak(), "leak over that of the " + flat, 1);
    }
    double bottom = top(panels() - 1) + PANEL;
    sheet.text(
        WIDTH - RIGHT, bottom + 36, Wording.axis(swept), Lettering.of(12, Ink.TEXT).at(Anchor.END));
    signs(
        sheet,
        LEFT,
        bottom + 36,
        "bars and shading: band of the estimate; hollow points: mean of an unsteady flow");
    if (!whole) {
      signs(
          sheet,
          LEFT,
          bottom + 52,
          "arrowheads: the band goes on beyond the scale, numbers are in the table");
    }
  }

  private static double top(int panel) {
    return TOP + panel * (PANEL + BETWEEN);
  }

  /** A figure by point; null where it is unknown. */
  private List<@Nullable Estimate> figure(Figure figure, double factor) {
    List<@Nullable Estimate> values = new ArrayList<>();
    for (SectionResult result : sweep.points()) {
      Estimate estimate = result.figures().get(figure);
      values.add(
          estimate == null || result.status() == SolveStatus.FAILED
              ? null
              : estimate.times(factor));
    }
    return values;
  }

  /**
   * One figure over the sweep.
   *
   * @param held value that the scale holds; not a number for none
   * @return true when the scale holds all bands
   */
  private boolean panel(
      Sheet sheet, int place, List<@Nullable Estimate> values, String title, double held) {
    double top = top(place);
    List<ChartPanel.Point> points = new ArrayList<>();
    double xLow = Double.POSITIVE_INFINITY;
    double xHigh = Double.NEGATIVE_INFINITY;
    double perUnit = swept == Swept.GAP ? LengthUnit.factor() : 1;
    for (int k = 0; k < values.size(); k++) {
      SectionResult result = sweep.points().get(k);
      double x = perUnit * swept.of(result);
      xLow = Math.min(xLow, x);
      xHigh = Math.max(xHigh, x);
      Estimate shown = values.get(k);
      if (shown != null) {
        points.add(new ChartPanel.Point(x, shown, result.status() == SolveStatus.CONVERGED));
      }
    }
    points.sort(Comparator.comparingDouble(ChartPanel.Point::x));
    Rectangle2D box = new Rectangle2D.Double(LEFT, top, WIDTH - LEFT - RIGHT, PANEL);
    Lettering heading = Lettering.of(13, Ink.TEXT).heavy();
    sheet.text(LEFT, top - 10, title, place == 1 ? heading.symbols() : heading);
    if (points.isEmpty()) {
      sheet.text(LEFT + 12, top + 30, "no usable flow", Lettering.of(12, Ink.VORTEX));
      return true;
    }
    List<Estimate> known = points.stream().map(ChartPanel.Point::y).toList();
    PlotScale up = ChartPanel.reach(known, held).scale();
    ChartPanel panel = new ChartPanel(box, PlotScale.linear(xLow, xHigh), up);
    panel.paintScales(sheet, 8, 5, place == panels() - 1, true);
    if (held == 1) {
      sheet.stroke(
          new Line2D.Double(box.getMinX(), panel.y(1), box.getMaxX(), panel.y(1)),
          new Sheet.Pen(Ink.TEXT, 1, 1.1));
    }
    panel.paintSeries(sheet, points, Wording.axis(swept), title);
    return known.stream().allMatch(e -> e.low() >= up.low() && e.high() <= up.high());
  }
}
