package hemline.viewer.picture;

import hemline.shared.result.Estimate;
import hemline.solver.study.Placement.Group;
import hemline.solver.study.Ranking;
import hemline.viewer.format.Digits;
import hemline.viewer.format.Wording;
import hemline.viewer.picture.Sheet.Anchor;
import hemline.viewer.picture.Sheet.Lettering;
import hemline.viewer.picture.Sheet.Pen;
import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Lips in order of their leak relative to the baseline, each with its band. */
public final class RankingChart extends Picture {
  private static final double WIDTH = 960;
  private static final double ROW = 30;
  private static final double TOP = 116;
  private static final double NAMES = 300;
  private static final double NUMBERS = 190;
  private static final double MARGIN = 26;

  private final Ranking ranking;
  private final List<Line> lines = new ArrayList<>();

  /** One line down the chart: the heading of a group, or a lip. */
  private record Line(String heading, Ranking.@Nullable Row row) {}

  private RankingChart(Ranking ranking) {
    this.ranking = ranking;
    for (Group group : Group.values()) {
      List<Ranking.Row> rows = ranking.rows(group);
      if (!rows.isEmpty()) {
        lines.add(new Line(Wording.group(group, ranking.baseline()), null));
        rows.forEach(row -> lines.add(new Line("", row)));
      }
    }
  }

  /**
   * Chart of a ranking.
   *
   * @throws IllegalArgumentException if the ranking has no rows
   */
  public static RankingChart of(Ranking ranking) {
    if (ranking.rows().isEmpty()) {
      throw new IllegalArgumentException("a ranking without rows has no chart");
    }
    return new RankingChart(ranking);
  }

  @Override
  public double width() {
    return WIDTH;
  }

  @Override
  public double height() {
    return TOP + ROW * lines.size() + 84;
  }

  @Override
  public void paint(Sheet sheet) {
    sheet.text(
        MARGIN, 40, "Leak against " + ranking.baseline(), Lettering.of(22, Ink.TEXT).heavy());
    sheet.text(MARGIN, 61, Wording.conditions(ranking), Lettering.of(13, Ink.TEXT));
    ChartPanel panel = panel();
    panel.paintScales(sheet, 6, 1, true, false);
    Rectangle2D box = panel.box();
    sheet.stroke(
        new Line2D.Double(panel.x(1), box.getMinY() - 6, panel.x(1), box.getMaxY()),
        new Pen(Ink.TEXT, 1, 1.3));
    sheet.text(
        panel.x(1),
        box.getMinY() - 12,
        "leaks as the baseline",
        Lettering.of(11.5, Ink.TEXT).at(Anchor.MIDDLE));
    for (int k = 0; k < lines.size(); k++) {
      Line line = lines.get(k);
      double y = TOP + ROW * (k + 0.5);
      if (line.row() == null) {
        sheet.text(MARGIN, y + 8, line.heading(), Lettering.of(13, Ink.TEXT).heavy());
      } else {
        row(sheet, panel, line.row(), y);
      }
    }
    double y = box.getMaxY() + 38;
    sheet.text(box.getMaxX(), y, "relative leak", Lettering.of(12, Ink.TEXT).at(Anchor.END));
    sheet.text(
        MARGIN,
        y + 22,
        "bars: band of the leak ratio; a lip leaks less or more only where its bar stays off the"
            + " line"
            + (cutOff() ? "; arrow: the band goes on" : ""),
        Lettering.of(11.5, Ink.QUIET));
  }

  private ChartPanel.Reach reach() {
    return ChartPanel.reach(ranking.rows().stream().map(Ranking.Row::relativeLeak).toList());
  }

  private boolean cutOff() {
    ChartPanel.Reach reach = reach();
    return ranking.rows().stream().anyMatch(row -> !reach.holds(row.relativeLeak()));
  }

  private ChartPanel panel() {
    ChartPanel.Reach reach = reach();
    double[] xs = ChartPanel.roomy(reach.low(), reach.high());
    return new ChartPanel(
        new Rectangle2D.Double(NAMES, TOP, WIDTH - NAMES - NUMBERS - MARGIN, ROW * lines.size()),
        xs[0],
        xs[1],
        0,
        1);
  }

  private void row(Sheet sheet, ChartPanel panel, Ranking.Row row, double y) {
    Estimate leak = row.relativeLeak();
    int rgb = leak.high() < 1 ? Ink.SERIES : leak.low() > 1 ? Ink.VORTEX : Ink.QUIET;
    sheet.text(
        MARGIN + 14,
        y + 5,
        TextWidth.fitted(row.profile(), 13, NAMES - MARGIN - 26),
        Lettering.of(13, Ink.TEXT));
    panel.paintBar(sheet, leak, y, rgb);
    sheet.text(
        WIDTH - MARGIN,
        y + 5,
        Digits.exact(leak, 1)
            ? Digits.value(leak, 1)
            : Digits.value(leak, 1) + "  (" + Digits.range(leak, 1) + ")",
        Lettering.of(13, Ink.TEXT).at(Anchor.END));
  }
}
