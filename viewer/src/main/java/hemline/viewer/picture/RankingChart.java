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
    super(WIDTH, TOP + ROW * (groups(ranking) + ranking.rows().size()) + 84);
    this.ranking = ranking;
    for (Group group : Group.values()) {
      List<Ranking.Row> rows = ranking.rows(group);
      if (!rows.isEmpty()) {
        lines.add(new Line(Wording.group(group, ranking.baseline()), null));
        rows.forEach(row -> lines.add(new Line("", row)));
      }
    }
  }

  private static long groups(Ranking ranking) {
    return ranking.rows().stream().map(row -> row.placement().group()).distinct().count();
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
  public void paint(Sheet sheet) {
    heading(sheet, "Leak against " + ranking.baseline(), Wording.conditions(ranking));
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
    signs(
        sheet,
        MARGIN,
        y + 22,
        "bars: band of the leak ratio; a lip leaks less or more only where its bar stays off the"
            + " line"
            + (cutOff() ? "; arrow: the band goes on" : ""));
  }

  private ChartPanel.Reach reach() {
    return ChartPanel.reach(ranking.rows().stream().map(Ranking.Row::relativeLeak).toList());
  }

  private boolean cutOff() {
    ChartPanel.Reach reach = reach();
    return ranking.rows().stream().anyMatch(row -> !reach.holds(row.relativeLeak()));
  }

  private ChartPanel panel() {
    return new ChartPanel(
        new Rectangle2D.Double(NAMES, TOP, WIDTH - NAMES - NUMBERS - MARGIN, ROW * lines.size()),
        reach().scale(),
        PlotScale.upTo(1));
  }

  private void row(Sheet sheet, ChartPanel panel, Ranking.Row row, double y) {
    Estimate leak = row.relativeLeak();
    int rgb = leak.high() < 1 ? Ink.SERIES : leak.low() > 1 ? Ink.VORTEX : Ink.QUIET;
    String cure = Wording.decider(row.placement().decider());
    double room = NAMES - MARGIN - 26;
    sheet.text(
        MARGIN + 14,
        cure.isEmpty() ? y + 5 : y + 1,
        TextWidth.fitted(row.profile(), 13, room),
        Lettering.of(13, Ink.TEXT));
    sheet.text(MARGIN + 14, y + 13, TextWidth.fitted(cure, 10, room), Lettering.of(10, Ink.QUIET));
    String value =
        Digits.exact(leak, 1)
            ? Digits.value(leak, 1)
            : Digits.value(leak, 1) + "  (" + Digits.range(leak, 1) + ")";
    panel.paintBar(
        sheet,
        leak,
        y,
        rgb,
        row.profile() + "\nrelative leak: " + value + (cure.isEmpty() ? "" : "\n" + cure));
    sheet.text(WIDTH - MARGIN, y + 5, value, Lettering.of(13, Ink.TEXT).at(Anchor.END));
  }
}
