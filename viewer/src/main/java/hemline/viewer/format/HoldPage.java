package hemline.viewer.format;

import hemline.shared.result.Estimate;
import hemline.shared.vehicle.Machine;
import hemline.solver.plenum.Hold;
import hemline.solver.plenum.HoldVerdict;
import hemline.solver.plenum.MachineBalance;
import hemline.solver.plenum.StepCrossing;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** Tables and sentences on whether a machine holds still. */
final class HoldPage {
  /** Beside a ledge that the lip does not pass. */
  private static final String LEDGE_CAUTION =
      "A ledge that strikes the lip lifts the seal off the ground or stops the machine with a jolt:"
          + " go round it, or raise the static gap.";

  private final MachineBalance balance;
  private final Machine machine;

  HoldPage(MachineBalance balance) {
    this.balance = balance;
    machine = balance.machine();
  }

  BalancePage.Block holds() {
    boolean tolerances = !machine.terms().tolerances().none();
    List<List<String>> table = new ArrayList<>();
    List<String> head =
        new ArrayList<>(List.of("", "holds", "limited by", "slip", "sliding", "tip", "axle lift"));
    head.add("peel-off");
    if (tolerances) {
      head.add("least, inputs' tolerances too");
    }
    table.add(head);
    for (Hold h : balance.holds()) {
      List<String> row =
          new ArrayList<>(
              List.of(
                  place(h),
                  h.verdict().key(),
                  h.limitedBy(),
                  margin(h.slip(), h, h.headings().slip()),
                  margin(h.sliding(), h, h.headings().slip()),
                  margin(h.tip(), h, h.headings().tip()),
                  margin(h.axleLift(), h, h.headings().axleLift()),
                  margin(h.peelOff(), h, h.headings().peelOff())));
      if (tolerances) {
        row.add(BalancePage.margin(h.total()));
      }
      table.add(row);
    }
    return new BalancePage.Block(
        BalancePage.Topic.HOLDS,
        "Holding still with the fan on: least margins over all headings (below 1 it lets go)",
        table,
        sentences(),
        List.of(BalanceWords.HOLD_CAUTION));
  }

  private static String margin(@Nullable Estimate e, Hold h, String heading) {
    return e == null || heading.equals(h.heading())
        ? BalancePage.margin(e)
        : BalancePage.margin(e) + ", " + heading;
  }

  /** Place, tilt and heading of a hold. */
  static String place(Hold h) {
    String tilt = Digits.plain(Math.toDegrees(h.angle()), 3) + "\u00b0";
    return switch (h.place()) {
      case "slope" -> "slope " + tilt + ", " + h.heading();
      case "wall" -> "wall, " + h.heading();
      case "worst" -> "worst of all, " + tilt + ", " + h.heading();
      default -> h.place();
    };
  }

  private List<String> sentences() {
    List<String> s = new ArrayList<>();
    double factor = machine.terms().safetyFactor();
    s.add(
        factor > 1
            ? "It holds where the low end of the least margin reaches the safety factor of "
                + Digits.plain(factor, 3)
                + " in the file."
            : "No safety factor is asked in the file: it holds where the low end of the least margin"
                + " reaches 1.");
    Map<String, String> reasons = new LinkedHashMap<>(); // the last row is the worst of all
    for (Hold h : balance.holds()) {
      if (h.verdict() == HoldVerdict.NOT_SHOWN) {
        h.reasons().forEach(r -> reasons.put(r.replaceAll("[0-9.]+", ""), r));
      }
    }
    if (!reasons.isEmpty()) {
      s.add("Not shown: " + String.join("; ", reasons.values()) + ".");
    }
    for (Hold h : balance.holds()) {
      if (!h.freeWheels().isEmpty()) {
        s.add(
            "In the case \u201c"
                + place(h)
                + "\u201d a wheel carries nothing and the others do: "
                + String.join(", ", h.freeWheels())
                + ".");
      }
    }
    return s;
  }

  BalancePage.@Nullable Block steps() {
    if (balance.steps().isEmpty()) {
      return null;
    }
    List<List<String>> table = new ArrayList<>();
    table.add(
        List.of(
            "",
            "edges",
            "suction, Pa",
            "downforce, N",
            "kept, %",
            "holds on the slope",
            "on a wall",
            "on a ceiling"));
    Map<List<String>, List<String>> alike = new LinkedHashMap<>();
    for (StepCrossing s : balance.steps()) {
      Estimate kept = s.kept();
      List<String> cells =
          List.of(
              s.kind().key(),
              suction(s),
              BalancePage.margin(s.downforce()),
              kept == null ? "-" : BalanceWords.figure(kept, 100),
              cell(s, "slope"),
              cell(s, "wall"),
              cell(s, "ceiling"));
      alike
          .computeIfAbsent(cells, k -> new ArrayList<>())
          .add(String.join(" + ", s.edges().stream().map(String::valueOf).toList()));
    }
    alike.forEach(
        (cells, edges) -> {
          List<String> row = new ArrayList<>(cells);
          row.add(1, String.join(", ", edges));
          table.add(row);
        });
    return new BalancePage.Block(
        BalancePage.Topic.STEP,
        BalanceWords.stepTitle(machine),
        table,
        List.of(
            "Edges that fare alike share a row. Suction and downforce: on level ground at the ride height"
                + " before. Holds: in the attitude itself and its worst heading, at the ride height before and at the one that"
                + " follows, whichever holds less."),
        strikes() ? List.of(LEDGE_CAUTION) : List.of());
  }

  private boolean strikes() {
    return balance.steps().stream()
        .anyMatch(
            s ->
                s.strikes() != StepCrossing.Strike.NOTHING
                    || s.holds().stream().anyMatch(h -> h.limitedBy().equals("ledge")));
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
    if (h.verdict() == HoldVerdict.NO) {
      return switch (h.limitedBy()) {
        case "no balance" -> "no, the suction is lost";
        case "ledge" -> "no, the ledge strikes the lip";
        default -> "no, " + h.limitedBy() + margin(h);
      };
    }
    return h.verdict().key() + margin(h);
  }

  private static String margin(Hold h) {
    Estimate e = h.margin();
    return e == null ? "" : ", " + Digits.plain(e.value(), 3);
  }
}
