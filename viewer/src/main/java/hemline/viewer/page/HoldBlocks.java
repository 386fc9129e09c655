package hemline.viewer.page;

import hemline.shared.problem.NoticeKind;
import hemline.shared.result.Estimate;
import hemline.shared.vehicle.GroundStep;
import hemline.shared.vehicle.Machine;
import hemline.solver.plenum.Hold;
import hemline.solver.plenum.HoldPoint;
import hemline.solver.plenum.HoldVerdict;
import hemline.solver.plenum.MachineBalance;
import hemline.solver.plenum.StepCrossing;
import hemline.viewer.format.Cautions;
import hemline.viewer.format.Digits;
import hemline.viewer.format.NoticeWords;
import hemline.viewer.format.Wording;
import hemline.viewer.page.Page.Tone;
import hemline.viewer.picture.HoldChart;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** Whether a machine holds still, also on dips and ledges. */
final class HoldBlocks {
  /** Beside a ledge that the lip does not pass. */
  private static final String LEDGE_CAUTION =
      "A ledge that strikes the lip lifts the seal off the ground or stops the machine with a jolt:"
          + " go round it, or raise the static gap.";

  private final MachineBalance balance;
  private final Machine machine;
  private final Page page;

  HoldBlocks(MachineBalance balance, Page page) {
    this.balance = balance;
    machine = balance.machine();
    this.page = page;
  }

  void holds() {
    boolean tolerances = !machine.duty().terms().tolerances().none();
    List<String> head = new ArrayList<>(List.of("", "holds", "limited by", "slip", "sliding"));
    head.addAll(List.of("tip", "axle lift", "peel-off"));
    if (tolerances) {
      head.add("least, inputs' tolerances too");
    }
    PageTable table = PageTable.of(head);
    for (Hold h : balance.holding().holds()) {
      List<String> row =
          new ArrayList<>(
              List.of(place(h), h.judgement().verdict().key(), h.judgement().limitedBy()));
      row.add(margin(h.margins().slip(), h, h.headings().slip()));
      row.add(margin(h.margins().sliding(), h, h.headings().slip()));
      row.add(margin(h.margins().tip(), h, h.headings().tip()));
      row.add(margin(h.margins().axleLift(), h, h.headings().axleLift()));
      row.add(margin(h.margins().peelOff(), h, h.headings().peelOff()));
      if (tolerances) {
        row.add(BalancePage.margin(h.margins().total()));
      }
      table.row(row, !h.holds());
    }
    page.heading(
        "Holding still with the fan on: least margins over all headings (below 1 it lets go)");
    page.table(table);
    sentences();
    page.text(Cautions.HOLD, Tone.CAUTION);
    page.plot(() -> HoldChart.of(balance), "least margin over the tilt of the ground");
    PageTable tilts = PageTable.of("tilt, \u00b0", "least margin", "limited by", "heading");
    for (HoldPoint p : balance.holding().overTilt()) {
      String tilt = Digits.plain(Math.toDegrees(p.tilt()), 3);
      tilts.row(tilt, BalancePage.margin(p.margin()), p.limitedBy(), p.heading());
    }
    page.details().table(tilts).everywhere();
  }

  private static String margin(@Nullable Estimate e, Hold h, String heading) {
    return e == null || heading.equals(h.place().heading())
        ? BalancePage.margin(e)
        : BalancePage.margin(e) + ", " + heading;
  }

  /** Place, tilt and heading of a hold. */
  private static String place(Hold h) {
    String tilt = Digits.plain(Math.toDegrees(h.place().angle()), 3) + "\u00b0";
    return switch (h.place().name()) {
      case "slope" -> "slope " + tilt + ", " + h.place().heading();
      case "wall" -> "wall, " + h.place().heading();
      case "worst" -> "worst of all, " + tilt + ", " + h.place().heading();
      default -> h.place().name();
    };
  }

  private void sentences() {
    double factor = machine.duty().terms().safetyFactor();
    page.plain(
        factor > 1
            ? "It holds where the low end of the least margin reaches the safety factor of %s in the file."
                .formatted(Digits.plain(factor, 3))
            : "No safety factor is asked in the file: it holds where the low end of the least"
                + " margin reaches 1.");
    Map<NoticeKind, String> reasons = new LinkedHashMap<>(); // the last row is the worst of all
    balance.holding().holds().stream()
        .filter(h -> h.judgement().verdict() == HoldVerdict.NOT_SHOWN)
        .flatMap(h -> h.judgement().reasons().stream())
        .forEach(r -> reasons.put(r.kind(), NoticeWords.reason(r)));
    if (!reasons.isEmpty()) {
      page.plain("Not shown: " + String.join("; ", reasons.values()) + ".");
    }
    for (Hold h : balance.holding().holds()) {
      if (!h.freeWheels().isEmpty()) {
        page.plain(
            "In the case \u201c%s\u201d a wheel carries nothing and the others do: %s."
                .formatted(place(h), String.join(", ", h.freeWheels())));
      }
    }
  }

  void steps() {
    GroundStep step = machine.duty().step();
    if (balance.driving().steps().isEmpty() || step == null) {
      return;
    }
    PageTable table =
        PageTable.of(
            "",
            "edges",
            "suction, Pa",
            "downforce, N",
            "kept, %",
            "holds on the slope",
            "on a wall",
            "on a ceiling");
    Map<List<String>, List<String>> alike = new LinkedHashMap<>();
    for (StepCrossing s : balance.driving().steps()) {
      List<String> cells = new ArrayList<>(List.of(s.kind().key(), suction(s)));
      cells.add(BalancePage.margin(s.downforce()));
      cells.add(BalancePage.or(s.kept(), 100));
      List.of("slope", "wall", "ceiling").forEach(place -> cells.add(cell(s, place)));
      alike
          .computeIfAbsent(cells, k -> new ArrayList<>())
          .add(s.edges().stream().map(String::valueOf).collect(Collectors.joining(" + ")));
    }
    alike.forEach(
        (cells, edges) -> {
          List<String> row = new ArrayList<>(cells);
          row.add(1, String.join(", ", edges));
          table.row(row, false);
        });
    page.heading(
        "A dip or a ledge of %s, %s of it under the seal at once"
            .formatted(Wording.length(step.height()), Wording.length(step.length())));
    page.table(table);
    page.plain(
        "Edges that fare alike share a row. Suction and downforce: on level ground at the ride"
            + " height before. Holds: in the attitude itself and its worst heading, at the ride"
            + " height before and at the one that follows, whichever holds less.");
    page.text(strikes() ? LEDGE_CAUTION : "", Tone.CAUTION);
  }

  private boolean strikes() {
    return balance.driving().steps().stream()
        .anyMatch(
            s ->
                s.strikes() != StepCrossing.Strike.NOTHING
                    || s.holds().stream().anyMatch(h -> h.judgement().limitedBy().equals("ledge")));
  }

  private static String suction(StepCrossing s) {
    return switch (s.strikes()) {
      case NOTHING -> BalancePage.margin(s.suction());
      case LIP -> "strikes the lip";
      case FLOOR -> "strikes lip and floor";
    };
  }

  private static String cell(StepCrossing s, String place) {
    Hold h = s.hold(place);
    if (h == null) {
      return "-";
    }
    Estimate e = h.margins().least();
    String margin = e == null ? "" : ", " + Digits.plain(e.value(), 3);
    if (h.judgement().verdict() != HoldVerdict.NO) {
      return h.judgement().verdict().key() + margin;
    }
    return switch (h.judgement().limitedBy()) {
      case "no balance" -> "no, the suction is lost";
      case "ledge" -> "no, the ledge strikes the lip";
      default -> "no, " + h.judgement().limitedBy() + margin;
    };
  }
}
