package hemline.viewer.cli;

import hemline.shared.problem.Notice;
import hemline.shared.result.Estimate;
import hemline.shared.result.Figure;
import hemline.shared.result.GridRun;
import hemline.shared.result.SectionResult;
import hemline.viewer.format.Digits;
import hemline.viewer.format.FigureName;
import hemline.viewer.format.TextTable;
import hemline.viewer.format.TextTable.Lean;
import hemline.viewer.format.TradeUnit;
import hemline.viewer.format.Wording;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** One section for people: every figure with its band and unit, then what to know about it. */
final class ResultText {
  private static final String INDENT = "  ";

  /** Most characters of a line. */
  static final int WIDTH = 100;

  private ResultText() {}

  /** Lines of text. */
  static List<String> lines(
      SectionResult result, @Nullable Estimate relativeLeak, boolean duct, double seconds) {
    List<String> lines = new ArrayList<>();
    lines.add(result.name());
    lines.add(
        duct
            ? Wording.ground(result.groundSpeed(), result.spanwiseSpeed())
            : Wording.conditions(result));
    lines.add(Wording.verdict(result));
    if (!result.figures().isEmpty()) {
      lines.add("");
      lines.addAll(table(result, relativeLeak, duct).lines(INDENT));
    }
    lines.addAll(notices(result.notices()));
    lines.add("");
    lines.add(effort(result, seconds));
    return lines;
  }

  private static TextTable table(
      SectionResult result, @Nullable Estimate relativeLeak, boolean duct) {
    TextTable table =
        new TextTable(Lean.LEFT, Lean.LEFT, Lean.RIGHT, Lean.LEFT, Lean.LEFT, Lean.LEFT);
    if (relativeLeak != null) {
      row(table, "leak over that of a flat lip", "", relativeLeak, new TradeUnit(1, ""));
    }
    for (Figure figure : Figure.values()) {
      Estimate estimate = result.figures().get(figure);
      if (estimate != null && !(estimate.value() == 0 && onlyForMovingGround(figure))) {
        TradeUnit unit = duct ? TradeUnit.plain(figure) : TradeUnit.of(figure);
        row(table, FigureName.of(figure), figure.symbol(), estimate, unit);
      }
    }
    TradeUnit percent = new TradeUnit(100, "%");
    for (int k = 0; k < result.stageShares().size(); k++) {
      String name = "pressure share of stage " + (k + 1);
      row(table, name, "s_" + (k + 1), result.stageShares().get(k), percent);
    }
    for (int k = 0; k < result.carryOver().size(); k++) {
      String name = "carry-over to stage " + (k + 2);
      row(table, name, "", result.carryOver().get(k), percent);
    }
    double factor = duct ? 1 : 1000;
    String unit = duct ? "m" : "mm";
    for (SectionResult.TrappedVortex vortex : result.trappedVortices()) {
      String place =
          (result.figures().containsKey(Figure.LEAK_FLOW) ? "q" : "m\u00b2/s")
              + " at x "
              + Digits.plain(vortex.x() * factor, 3)
              + ", y "
              + Digits.plain(vortex.y() * factor, 3)
              + " "
              + unit;
      row(table, "trapped vortex", "\u0393", vortex.strength(), new TradeUnit(1, place));
    }
    return table;
  }

  /** Figures that are nothing but zero over ground at rest. */
  private static boolean onlyForMovingGround(Figure figure) {
    return figure == Figure.GROUND_DRAG_SPANWISE || figure == Figure.GROUND_POWER;
  }

  private static void row(
      TextTable table, String name, String symbol, Estimate estimate, TradeUnit unit) {
    table.row(
        name,
        symbol,
        Digits.value(estimate, unit.factor()),
        Digits.band(estimate, unit.factor()),
        unit.unit(),
        Digits.parts(estimate, unit.factor()));
  }

  /** Warnings under a heading; nothing when there are none. */
  static List<String> notices(List<Notice> notices) {
    List<String> lines = new ArrayList<>();
    if (!notices.isEmpty()) {
      lines.add("");
      lines.add("To know");
      for (Notice notice : notices) {
        lines.addAll(TextTable.wrapped(notice.text(), INDENT + "- ", INDENT + "  ", WIDTH));
      }
    }
    return lines;
  }

  private static String effort(SectionResult result, double seconds) {
    String time = Digits.plain(seconds, 2) + " s";
    List<GridRun> grids = result.grids();
    if (grids.isEmpty()) {
      return time + ".";
    }
    int cells = grids.get(grids.size() - 1).cells();
    return grids.size()
        + (grids.size() == 1 ? " grid, " : " grids, ")
        + cells
        + " cells on the finest, "
        + time
        + ".";
  }
}
