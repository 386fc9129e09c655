package hemline.viewer.picture;

import hemline.shared.result.Estimate;
import hemline.shared.result.SolveStatus;
import hemline.solver.study.Ranking;
import hemline.viewer.format.LengthUnit;
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
    super(
        LEFT + COLUMNS * (PANEL_WIDTH + ACROSS) - ACROSS + MARGIN,
        TOP + panelRows(ranking.rows().size()) * (PANEL_HEIGHT + DOWN) + 30);
    this.ranking = ranking;
    for (Ranking.Row row : ranking.rows()) {
      List<ChartPanel.Point> points = new ArrayList<>();
      for (int g = 0; g < row.perGap().size(); g++) {
        Ranking.GapRatio ratio = row.perGap().get(g);
        boolean settled =
            row.results().stream()
                .filter(result -> result.conditions().gap() == ratio.gap())
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

  private static int panelRows(int panels) {
    return (panels + COLUMNS - 1) / COLUMNS;
  }

  @Override
  public void paint(Sheet sheet) {
    String title = "Leak against " + ranking.baseline() + ", gap by gap";
    heading(sheet, title, Wording.gapByGap(ranking));
    double unit = LengthUnit.factor();
    double last = unit * ranking.gaps().get(ranking.gaps().size() - 1);
    PlotScale gaps = PlotScale.linear(unit * ranking.gaps().get(0), last);
    for (int k = 0; k < series.size(); k++) {
      int column = k % columns();
      int row = k / columns();
      double x = LEFT + column * (PANEL_WIDTH + ACROSS);
      double y = TOP + row * (PANEL_HEIGHT + DOWN);
      Rectangle2D box = new Rectangle2D.Double(x, y, PANEL_WIDTH, PANEL_HEIGHT);
      paintPanel(sheet, new ChartPanel(box, gaps, reach().scale()), k);
    }
    double y = TOP + panelRows(series.size()) * (PANEL_HEIGHT + DOWN) - 10;
    sheet.text(
        width() - MARGIN,
        y,
        "gap, " + LengthUnit.unit(),
        Lettering.of(12, Ink.TEXT).at(Anchor.END));
    signs(
        sheet,
        MARGIN,
        y + 20,
        "relative leak over the gap; bars and shading: band of the ratio; hollow points: mean of an"
            + " unsteady flow; grey: the other lips"
            + (cutOff() ? "; arrows: the band goes on" : ""));
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
    panel.paintSeries(
        sheet, series.get(k), row.profile() + "\ngap, " + LengthUnit.unit(), "relative leak");
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
}
