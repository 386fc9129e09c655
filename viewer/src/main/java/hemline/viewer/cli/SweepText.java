package hemline.viewer.cli;

import hemline.shared.problem.Notice;
import hemline.shared.result.Estimate;
import hemline.shared.result.Figure;
import hemline.shared.result.SectionResult;
import hemline.solver.study.SweepResult;
import hemline.solver.study.Swept;
import hemline.viewer.format.Digits;
import hemline.viewer.format.TextTable;
import hemline.viewer.format.TextTable.Lean;
import hemline.viewer.format.Wording;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** A sweep for people: one line a point. */
final class SweepText {
  private SweepText() {}

  /**
   * Lines of text.
   *
   * @param relative leak over that of a flat lip by point; empty where not asked for
   */
  static List<String> lines(
      SweepResult sweep, List<@Nullable Estimate> relative, Swept swept, double seconds) {
    List<String> lines = new ArrayList<>();
    SectionResult first = sweep.points().get(0);
    lines.add(first.name());
    lines.add(Wording.besides(swept, first));
    lines.add("");
    boolean more = !relative.isEmpty();
    TextTable table =
        new TextTable(Lean.RIGHT, Lean.LEFT, Lean.LEFT, Lean.LEFT, Lean.LEFT, Lean.LEFT);
    table.row(Wording.name(swept), "leak, L/s per m", "C_d", "flow", more ? "over flat" : "", "");
    for (int k = 0; k < sweep.points().size(); k++) {
      SectionResult point = sweep.points().get(k);
      Estimate ratio = more ? relative.get(k) : null;
      table.row(
          Wording.value(swept, swept.of(point)),
          figure(point, Figure.LEAK_FLOW, 1000),
          figure(point, Figure.DISCHARGE_COEFFICIENT, 1),
          point.regime().key() + ", " + point.closure(),
          ratio != null ? Digits.withBand(ratio, 1) : more ? "-" : Wording.ended(point.status()),
          more ? Wording.ended(point.status()) : "");
    }
    lines.addAll(table.lines("  "));
    Estimate exponent = sweep.gapExponent();
    if (exponent != null) {
      lines.add("");
      lines.add(
          "gap exponent n = d ln q / d ln h: "
              + Digits.withBand(exponent, 1)
              + " (1: leak grows as the gap)");
    }
    lines.addAll(ResultText.notices(gathered(sweep, swept)));
    lines.add("");
    lines.add(Digits.plain(seconds, 2) + " s.");
    return lines;
  }

  private static String figure(SectionResult point, Figure figure, double factor) {
    Estimate estimate = point.figures().get(figure);
    return estimate == null ? "-" : Digits.withBand(estimate, factor);
  }

  /** Each warning once, with the points it belongs to. */
  private static List<Notice> gathered(SweepResult sweep, Swept swept) {
    Map<String, List<String>> places = new LinkedHashMap<>();
    for (SectionResult point : sweep.points()) {
      String place = Wording.value(swept, swept.of(point));
      for (Notice notice : point.notices()) {
        places.computeIfAbsent(notice.text(), text -> new ArrayList<>()).add(place);
      }
    }
    List<Notice> gathered = new ArrayList<>();
    places.forEach(
        (text, at) ->
            gathered.add(
                new Notice(
                    "sweep",
                    at.size() == sweep.points().size()
                        ? text
                        : "at " + String.join(", ", at) + ": " + text)));
    return gathered;
  }
}
