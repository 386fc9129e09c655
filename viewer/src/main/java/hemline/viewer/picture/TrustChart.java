package hemline.viewer.picture;

import hemline.validation.run.CaseResult;
import hemline.validation.run.CheckRow;
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
  private static final double MOST_GROUND = 5;
  private static final double TRANSITION_FROM = 500;
  private static final double TRANSITION_TO = 3000;

  private final List<CaseResult> results;

  private TrustChart(List<CaseResult> results) {
    super(WIDTH, HEIGHT);
    this.results = List.copyOf(results);
  }

  /** Chart of the cases of a check. */
  public static TrustChart of(List<CaseResult> results) {
    return new TrustChart(results);
  }

  @Override
  public void paint(Sheet sheet) {
    new BandStrips(new Rectangle2D.Double(LEFT, TOP, SECOND - LEFT - 70, PANEL), results)
        .paint(sheet);
    conditions(sheet);
  }

  private void conditions(Sheet sheet) {
    double low = 1e-2;
    double high = 1e3;
    for (CaseResult result : results) {
      double re = result.gapReynolds().orElse(low);
      low = Math.min(low, re > 0 ? re : low);
      high = Math.max(high, re);
    }
    ChartPanel frame =
        new ChartPanel(
            new Rectangle2D.Double(SECOND, TOP, WIDTH - SECOND - 24, PANEL),
            PlotScale.decades(low, 1.01 * high),
            new PlotScale(-MOST_GROUND - 0.5, MOST_GROUND + 0.5, false));
    if (frame.across().high() > TRANSITION_TO) {
      double from = frame.x(TRANSITION_FROM);
      sheet.fill(
          new Rectangle2D.Double(from, TOP, frame.x(TRANSITION_TO) - from, PANEL), Ink.FAINT, 0.6);
    }
    frame.paintFrame(
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
