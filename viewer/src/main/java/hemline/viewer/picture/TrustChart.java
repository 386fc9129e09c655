package hemline.viewer.picture;

import hemline.shared.result.Estimate;
import hemline.validation.run.CaseResult;
import hemline.validation.run.CheckRow;
import hemline.validation.run.CheckSummary;
import hemline.viewer.picture.Sheet.Anchor;
import hemline.viewer.picture.Sheet.Lettering;
import java.awt.geom.Rectangle2D;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * How far to trust the figures: true errors over the stated bands, and the conditions that the
 * cases cover.
 */
public final class TrustChart extends Picture {
  private static final double WIDTH = 860;
  private static final double HEIGHT = 330;
  private static final double TOP = 56;
  private static final double PANEL = 200;
  private static final double LEFT = 56;
  private static final double SECOND = 430;
  private static final double BIN = 0.125;
  private static final int BINS = 12;
  private static final double MOST_GROUND = 5;
  private static final double TRANSITION_FROM = 500;
  private static final double TRANSITION_TO = 3000;

  private final List<CaseResult> results;

  private TrustChart(List<CaseResult> results) {
    this.results = List.copyOf(results);
  }

  /** Chart of the cases of a check. */
  public static TrustChart of(List<CaseResult> results) {
    return new TrustChart(results);
  }

  @Override
  public double width() {
    return WIDTH;
  }

  @Override
  public double height() {
    return HEIGHT;
  }

  @Override
  public void paint(Sheet sheet) {
    bands(sheet);
    conditions(sheet);
  }

  /** Error over the band and the uncertainty of the reference; 1 is the end of the band. */
  private static double used(CheckRow row) {
    Estimate computed = row.computed();
    if (computed == null) {
      return Double.NaN;
    }
    double d = row.expected().reference();
    double side =
        d > computed.value()
            ? computed.high() - computed.value()
            : computed.value() - computed.low();
    double room = side + row.expected().referenceUncertainty() + 1e-9 * row.expected().scale();
    return Math.abs(computed.value() - d) / room;
  }

  private void bands(Sheet sheet) {
    int[] count = new int[BINS];
    for (CaseResult result : results) {
      for (CheckRow row : result.rows()) {
        if (row.calibrates()) {
          count[(int) Math.min(BINS - 1, used(row) / BIN)]++;
        }
      }
    }
    int most = 1;
    for (int c : count) {
      most = Math.max(most, c);
    }
    PlotFrame frame =
        new PlotFrame(
            new Rectangle2D.Double(LEFT, TOP, SECOND - LEFT - 70, PANEL),
            new PlotScale(0, BIN * BINS, false),
            new PlotScale(0, 1.1 * most, false));
    CheckSummary s = CheckSummary.of(results);
    frame.paint(
        sheet,
        "bands that hold the reference: " + s.covered() + " of " + s.bands(),
        "true error over our band",
        "rows",
        6,
        4);
    for (int k = 0; k < BINS; k++) {
      if (count[k] > 0) {
        double x = frame.x(k * BIN) + 1.5;
        double w = frame.x((k + 1) * BIN) - frame.x(k * BIN) - 3;
        double y = frame.y(count[k]);
        sheet.fill(
            new Rectangle2D.Double(x, y, w, frame.y(0) - y),
            (k + 0.5) * BIN > 1 ? Ink.VORTEX : Ink.SERIES,
            1);
        sheet.text(
            x + 0.5 * w,
            y - 4,
            String.valueOf(count[k]),
            Lettering.of(10.5, Ink.TEXT).at(Anchor.MIDDLE));
      }
    }
    sheet.text(
        LEFT,
        TOP + PANEL + 54,
        "beyond 1: band too narrow; last bar: all beyond",
        Lettering.of(11, Ink.QUIET));
  }

  private void conditions(Sheet sheet) {
    double low = 1e-2;
    double high = 1e3;
    for (CaseResult result : results) {
      double re = result.gapReynolds().orElse(low);
      low = Math.min(low, re > 0 ? re : low);
      high = Math.max(high, re);
    }
    PlotFrame frame =
        new PlotFrame(
            new Rectangle2D.Double(SECOND, TOP, WIDTH - SECOND - 24, PANEL),
            PlotScale.decades(low, 1.01 * high),
            new PlotScale(-MOST_GROUND - 0.5, MOST_GROUND + 0.5, false));
    if (frame.across().high() > TRANSITION_TO) {
      double from = frame.x(TRANSITION_FROM);
      sheet.fill(
          new Rectangle2D.Double(from, TOP, frame.x(TRANSITION_TO) - from, PANEL), Ink.FAINT, 0.6);
    }
    frame.paint(
        sheet,
        "conditions of the cases",
        "gap Reynolds number q/\u03bd",
        "ground speed over mean speed in the gap, positive with the leak",
        7,
        5);
    Map<String, Integer> crowd = new HashMap<>();
    for (CaseResult result : results) {
      if (result.gapReynolds().isEmpty() || result.groundRatio().isEmpty()) {
        continue;
      }
      double re = result.gapReynolds().getAsDouble();
      double ground =
          Math.max(-MOST_GROUND, Math.min(MOST_GROUND, result.groundRatio().getAsDouble()));
      double x = frame.x(re);
      double y = frame.y(ground);
      int before = crowd.merge(Math.round(x / 6) + "," + Math.round(y / 6), 1, Integer::sum) - 1;
      boolean met = result.rows().stream().allMatch(row -> row.verdict() == CheckRow.Verdict.PASS);
      ChartPanel.dot(
          sheet,
          x,
          y - 7.5 * ((before + 1) / 2) * (before % 2 == 0 ? 1 : -1),
          met ? Ink.SERIES : Ink.VORTEX,
          met);
    }
    sheet.text(
        SECOND,
        TOP + PANEL + 54,
        "full: all rows met; hollow: a row not met; grey: laminar, turbulent or both",
        Lettering.of(11, Ink.QUIET));
  }
}
