package hemline.viewer.picture;

import hemline.shared.result.Estimate;
import hemline.shared.result.SolveStatus;
import hemline.solver.study.Ranking;
import hemline.viewer.format.Wording;
import hemline.viewer.picture.Sheet.Anchor;
import hemline.viewer.picture.Sheet.Lettering;
import hemline.viewer.picture.Sheet.Pen;
import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;

/** Relative leak over the gap: one small panel a lip, all others faint behind it. */
public final class GapChart extends Picture {
  private static final int COLUMNS = 4;
  private static final double PANEL_WIDTH = 210;
  private static final double PANEL_HEIGHT = 130;
  private static final double ACROSS = 22;
  private static final double DOWN = 48;
  private static final double LEFT = 66;
  private static final double TOP = 108;
  private static final double MARGIN = 26;

  private final Ranking ranking;
  private final List<List<ChartPanel.Point>> series = new ArrayList<>();

  private GapChart(Ranking ranking) {
    this.ranking = ranking;
    for (Ranking.Row row : ranking.rows()) {
      List<ChartPanel.Point> points = new ArrayList<>();
      for (int g = 0; g < row.perGap().size(); g++) {
        Ranking.GapRatio ratio = row.perGap().get(g);
        boolean settled =
            row.results().stream()
                .filter(result -> result.gap() == ratio.gap())
                .allMatch(result -> result.status() == SolveStatus.CONVERGED);
        points.add(new ChartPanel.Point(1000 * ratio.gap(), ratio.relativeLeak(), settled));
      }
      series.add(points);
    }
  }

  /**
   * Chart of a ranking over several gaps.
   *
   * @throws IllegalArgumentException if the ranking has no rows or fewer than two gaps
   */
  public static GapChart of(Ranking ranking) {
    if (ranking.rows().isEmpty() || ranking.gaps().size() < 2) {
      throw new IllegalArgumentException("a chart over the gap needs rows and two gaps");
    }
    return new GapChart(ranking);
  }

  private int columns() {
    return Math.min(COLUMNS, series.size());
  }

  private int panelRows() {
    return (series.size() + columns() - 1) / columns();
  }

  @Override
  public double width() {
    return LEFT + COLUMNS * (PANEL_WIDTH + ACROSS) - ACROSS + MARGIN;
  }

  @Override
  public double height() {
    return TOP + panelRows() * (PANEL_HEIGHT + DOWN) + 30;
  }

  @Override
  public void paint(Sheet sheet) {
    sheet.text(
        MARGIN,
        40,
        "Leak against " + ranking.baseline() + ", gap by gap",
        Lettering.of(22, Ink.TEXT).heavy());
    sheet.text(MARGIN, 61, Wording.gapByGap(ranking), Lettering.of(13, Ink.TEXT));
    double[] range = range();
    for (int k = 0; k < series.size(); k++) {
      int column = k % columns();
      int row = k / columns();
      double x = LEFT + column * (PANEL_WIDTH + ACROSS);
      double y = TOP + row * (PANEL_HEIGHT + DOWN);
      Rectangle2D box = new Rectangle2D.Double(x, y, PANEL_WIDTH, PANEL_HEIGHT);
      paintPanel(sheet, new ChartPanel(box, range[0], range[1], range[2], range[3]), k);
    }
    double y = TOP + panelRows() * (PANEL_HEIGHT + DOWN) - 10;
    sheet.text(width() - MARGIN, y, "gap, mm", Lettering.of(12, Ink.TEXT).at(Anchor.END));
    sheet.text(
        MARGIN,
        y + 20,
        "relative leak over the gap; bars and shading: band of the ratio; hollow points: mean of an"
            + " unsteady flow; grey: the other lips"
            + (cutOff() ? "; arrows: the band goes on" : ""),
        Lettering.of(11.5, Ink.QUIET));
  }

  private void paintPanel(Sheet sheet, ChartPanel panel, int k) {
    Ranking.Row row = ranking.rows().get(k);
    Rectangle2D box = panel.box();
    boolean lowest = k + columns() >= series.size();
    panel.paintScales(sheet, 5, 4, lowest, k % columns() == 0);
    for (int other = 0; other < series.size(); other++) {
      if (other != k) {
        panel.paintFaint(sheet, series.get(other));
      }
    }
    sheet.stroke(
        new Line2D.Double(box.getMinX(), panel.y(1), box.getMaxX(), panel.y(1)),
        new Pen(Ink.TEXT, 1, 1.1));
    panel.paintSeries(sheet, series.get(k));
    sheet.text(
        box.getMinX(),
        box.getMinY() - 8,
        TextWidth.fitted(row.profile(), 12, PANEL_WIDTH),
        Lettering.of(12, Ink.TEXT).heavy());
  }

  private ChartPanel.Reach reach() {
    return ChartPanel.reach(ratios());
  }

  private boolean cutOff() {
    ChartPanel.Reach reach = reach();
    return ratios().stream().anyMatch(ratio -> !reach.holds(ratio));
  }

  private List<Estimate> ratios() {
    return series.stream().flatMap(List::stream).map(ChartPanel.Point::y).toList();
  }

  /** Gap range, then leak range, over all lips. */
  private double[] range() {
    ChartPanel.Reach reach = reach();
    double[] y = ChartPanel.roomy(reach.low(), reach.high());
    double last = 1000 * ranking.gaps().get(ranking.gaps().size() - 1);
    double[] x = ChartPanel.roomy(1000 * ranking.gaps().get(0), last);
    return new double[] {x[0], x[1], y[0], y[1]};
  }
}
