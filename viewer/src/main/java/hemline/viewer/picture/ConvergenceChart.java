package hemline.viewer.picture;

import hemline.shared.result.Estimate;
import hemline.shared.result.Figure;
import hemline.shared.result.GridRun;
import hemline.shared.result.SectionResult;
import hemline.shared.result.SolveStatus;
import hemline.viewer.picture.Sheet.Anchor;
import hemline.viewer.picture.Sheet.Lettering;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;

/** Leak flow on each grid over the size of its cells, with the estimate at the left end. */
public final class ConvergenceChart extends Picture {
  private static final String ALONG = "cell size over that of the finest grid";
  private static final String UP = "value";
  private static final double WIDTH = 560;
  private static final double HEIGHT = 300;
  private static final double LEFT = 84;
  private static final double TOP = 44;

  private final List<ChartPanel.Point> grids = new ArrayList<>();
  private final Estimate estimate;
  private final String title;

  private ConvergenceChart(SectionResult result, Estimate leak, boolean duct) {
    super(WIDTH, HEIGHT);
    double factor = duct ? 1 : 1000;
    title = duct ? "leak flow, m\u00b2/s" : "leak flow, L/s per m";
    estimate = leak.times(factor);
    int finest = result.grids().stream().mapToInt(GridRun::cells).max().orElse(1);
    for (GridRun run : result.grids()) {
      Double q = run.figures().scalars().get(Figure.LEAK_FLOW);
      if (q != null && Double.isFinite(q)) {
        double size = Math.sqrt(finest / (double) run.cells());
        grids.add(
            new ChartPanel.Point(
                size,
                new Estimate(factor * q, factor * run.leakSpread(), 0, 0, 0, leak.trend()),
                run.status() == SolveStatus.CONVERGED));
      }
    }
  }

  /**
   * Chart of a result.
   *
   * @param duct true for a duct, whose flow is shown in SI units
   * @throws IllegalArgumentException if it has no leak flow on any grid
   */
  public static ConvergenceChart of(SectionResult result, boolean duct) {
    Estimate leak = result.figures().get(Figure.LEAK_FLOW);
    if (leak == null) {
      throw new IllegalArgumentException("a result without a leak flow has no convergence chart");
    }
    return new ConvergenceChart(result, leak, duct);
  }

  @Override
  public void paint(Sheet sheet) {
    sheet.text(LEFT, 26, title, Lettering.of(13, Ink.TEXT).heavy());
    double low = estimate.low();
    double high = estimate.high();
    double coarsest = 1;
    for (ChartPanel.Point point : grids) {
      low = Math.min(low, point.y().low());
      high = Math.max(high, point.y().high());
      coarsest = Math.max(coarsest, point.x());
    }
    Rectangle2D box = new Rectangle2D.Double(LEFT, TOP, WIDTH - LEFT - 24, HEIGHT - TOP - 70);
    ChartPanel panel =
        new ChartPanel(
            box, new PlotScale(-0.12, coarsest + 0.1, false), PlotScale.linear(low, high));
    panel.paintScales(sheet, 5, 5, true, true);
    panel.paintFaint(sheet, grids);
    for (ChartPanel.Point point : grids) {
      panel.paintSeries(sheet, List.of(point), ALONG, UP);
    }
    panel.paintSeries(sheet, List.of(new ChartPanel.Point(0, estimate, true)), ALONG, UP);
    sheet.text(WIDTH - 24, HEIGHT - 34, ALONG, Lettering.of(12, Ink.TEXT).at(Anchor.END));
    signs(
        sheet,
        LEFT,
        HEIGHT - 14,
        "at 0: the estimate with its band; hollow points: mean of an unsteady flow");
  }
}
