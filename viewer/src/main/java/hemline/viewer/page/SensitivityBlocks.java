package hemline.viewer.page;

import hemline.shared.vehicle.Axle;
import hemline.shared.vehicle.HoldTerms;
import hemline.shared.vehicle.Machine;
import hemline.shared.vehicle.Tolerances;
import hemline.solver.plenum.MachineBalance;
import hemline.solver.plenum.Sensitivity;
import hemline.viewer.format.BalanceWords;
import hemline.viewer.format.Digits;
import hemline.viewer.format.LengthUnit;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/** What the figures assume, and how much the verdicts hang on each of it. */
public final class SensitivityBlocks {
  private SensitivityBlocks() {}

  /** What the figures assume, by what it is about. */
  public static Map<String, String> assumptions(Machine m) {
    HoldTerms terms = m.duty().terms();
    Tolerances t = terms.tolerances();
    Map<String, String> a = new LinkedHashMap<>();
    a.put(
        "friction",
        Digits.plain(m.running().peakFriction(), 3)
            + " before slip, "
            + Digits.plain(m.running().slidingFriction(), 3)
            + " after, "
            + share(t.friction())
            + "; the same on all wheels, which reach it together");
    a.put(
        "wheels that hold along",
        names(m, true) + (terms.parked() ? ", brakes parked" : ", only while there is power"));
    a.put("brakes", brakes(m));
    a.put("wheels that roll", names(m, false));
    a.put("fan pressure", "by the curve and the fan laws, " + share(t.fanPressure()));
    a.put(
        "mass",
        Digits.plain(m.load().mass(), 4)
            + " kg "
            + LengthUnit.text(m.load().height(), 3)
            + " above the ground, "
            + share(t.mass()));
    a.put(
        "gap",
        "static gaps of the file, "
            + (t.gap() > 0 ? "\u00b1 " + LengthUnit.text(t.gap(), 2) : "taken as exact")
            + "; leaks solved down to "
            + LengthUnit.text(terms.contactAllowance(), 2));
    a.put("ground", "even, stiff and airtight but for the dips and ledges asked");
    a.put("springs", "linear tyres that press and do not pull, a frame of given stiffness");
    a.put(
        "corners and arcs",
        "one gap more of seal for each right angle of a corner; band from none to two and the outer"
            + " edge of the lip");
    a.put("valve's jet", "half of it strikes the ground; band from none to all");
    a.put("air", "of one density, at rest in the plenum");
    a.put(
        "safety factor",
        terms.safetyFactor() > 1 ? Digits.plain(terms.safetyFactor(), 3) : "none asked");
    return a;
  }

  private static String brakes(Machine m) {
    List<String> limits =
        m.running().axles().stream()
            .filter(x -> x.braked() && Double.isFinite(x.brakeForce()))
            .map(x -> x.name() + " up to " + Digits.plain(x.brakeForce(), 3) + " N along")
            .toList();
    return limits.isEmpty()
        ? "brakes and drive hold whatever friction bears"
        : String.join(", ", limits) + "; a drive without brake holds whatever friction bears";
  }

  private static String share(double tolerance) {
    return tolerance > 0 ? "\u00b1 " + Digits.plain(100 * tolerance, 2) + " %" : "taken as exact";
  }

  private static String names(Machine m, boolean held) {
    String names =
        m.running().axles().stream()
            .filter(a -> a.holdsAlong() == held)
            .map(Axle::name)
            .collect(Collectors.joining(", "));
    return names.isEmpty() ? "none" : names;
  }

  static void assumptions(Machine machine, Page page) {
    PageTable table = PageTable.of("", "taken as");
    assumptions(machine).forEach(table::row);
    page.heading("What the figures assume").table(table);
  }

  /** Each input and guess, and what it does to the least margin of each case. */
  static void sensitivities(MachineBalance b, Page page) {
    if (b.holding().sensitivities().isEmpty()) {
      return;
    }
    List<String> head = new ArrayList<>(List.of("", "changed by"));
    Map<String, String> steps = new LinkedHashMap<>();
    for (Sensitivity s : b.holding().sensitivities()) {
      head.add(place(b, s) + (s.over().isEmpty() ? "" : ", crossing"));
      s.effects().forEach(e -> steps.putIfAbsent(e.input(), step(e)));
    }
    PageTable table = PageTable.of(head);
    steps.forEach(
        (input, step) -> {
          List<String> row = new ArrayList<>(List.of(input, step));
          b.holding().sensitivities().forEach(s -> row.add(change(s, input)));
          table.row(row, false);
        });
    page.heading("What the least margins hang on").table(table);
    page.plain(
        "Change of the least margin by a step up, from steps both ways; one thing at a time,"
            + " springs and suction solved anew.");
    for (Sensitivity s : b.holding().sensitivities()) {
      String column = place(b, s) + (s.over().isEmpty() ? "" : ", " + s.over());
      String assumed = s.mostAssumed().map(a -> "; of what is assumed, on: " + takes(a)).orElse("");
      s.most()
          .ifPresent(
              e ->
                  page.plain(
                      "\u201c%s\u201d hangs most on: %s%s.".formatted(column, takes(e), assumed)));
    }
  }

  private static String takes(Sensitivity.Effect e) {
    return e.input() + ", whose worse step takes " + Digits.plain(e.fall(), 2);
  }

  private static String place(MachineBalance b, Sensitivity s) {
    return BalanceWords.place(s.place(), b.machine().duty().slope());
  }

  private static String step(Sensitivity.Effect e) {
    return switch (e.unit()) {
      case "m" -> LengthUnit.text(e.step(), 2);
      case "rad" -> Digits.plain(Math.toDegrees(e.step()), 2) + "\u00b0";
      default -> Digits.plain(100 * e.step(), 2) + " %";
    };
  }

  /** Derivative times the step, with its sign. */
  private static String change(Sensitivity s, String input) {
    return s.effects().stream()
        .filter(e -> e.input().equals(input))
        .mapToDouble(e -> e.derivative() * e.step())
        .mapToObj(
            v -> Math.abs(v) < 5e-4 ? "0" : (v > 0 ? "+" : "\u2212") + Digits.plain(Math.abs(v), 2))
        .findFirst()
        .orElse("-");
  }
}
