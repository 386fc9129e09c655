package hemline.viewer.format;

import hemline.shared.vehicle.Axle;
import hemline.shared.vehicle.Machine;
import hemline.solver.plenum.HoldEnd;
import hemline.solver.plenum.MachineBalance;
import hemline.solver.plenum.Manoeuvres;
import hemline.solver.plenum.SurfaceGrip;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** What ends a hold, and how the machine moves. */
final class HoldEndPage {
  /** Beside the time that is left once the fan stops. */
  private static final String STOP_CAUTION =
      "These times are far shorter than anyone needs to step aside or catch the machine. Do not rely"
          + " on them; rely on the tether.";

  private HoldEndPage() {}

  static BalancePage.Block ends(MachineBalance b) {
    Machine m = b.machine();
    List<List<String>> table = new ArrayList<>();
    if (!b.holdEnds().isEmpty()) {
      table.add(
          List.of(
              "",
              "least fan speed, rpm",
              "least battery, V",
              "gaps wider by, mm",
              "least friction",
              "dry",
              "dusty",
              "wet",
              "payload, kg",
              "seconds, fan stops dead",
              "seconds, rotor runs down"));
    }
    double speed = m.fan().speed();
    for (HoldEnd e : b.holdEnds()) {
      table.add(
          List.of(
              e.place().equals("slope")
                  ? "slope " + Digits.plain(Math.toDegrees(e.tilt()), 3) + "\u00b0"
                  : e.place().equals("worst") ? "worst of all" : e.place(),
              has(60 * e.fanSpeed(), 4, speed / e.fanSpeed()),
              e.voltage() == null
                  ? "-"
                  : has(e.voltage(), 3, m.power().batteryVoltage() / e.voltage()),
              e.wider() == null ? "more than 5" : number(e.wider(), 1000),
              e.friction() == null
                  ? "-"
                  : has(e.friction(), 3, m.running().peakFriction() / e.friction()),
              surface(e, "dry"),
              surface(e, "dusty"),
              surface(e, "wet"),
              has(e.payload(), 3, 1 + e.payload() / m.load().mass()),
              Digits.plain(e.plenumTime(), 2),
              number(e.rotorTime(), 1)));
    }
    double off = Math.toDegrees(b.steepestWithoutFan());
    boolean parked = m.terms().parked() && m.running().axles().stream().anyMatch(Axle::braked);
    List<String> sentences = new ArrayList<>();
    if (table.isEmpty()) {
      sentences.add("None of the tilted cases holds as estimated.");
    } else {
      sentences.add(
          "One thing changed at a time until the least margin falls to "
              + Digits.plain(m.terms().safetyFactor(), 3)
              + ", leaks as estimated; in brackets how many times that it has. The fan's speed goes"
              + " with the voltage (common practice, no source).");
      sentences.add(surfaces(b));
    }
    sentences.add(
        parked
            ? "With the fan off the parked brakes hold it on slopes of up to "
                + Digits.plain(off, 3)
                + "\u00b0."
            : "With fan and power off nothing holds its wheels: no axle has a parked brake in the file.");
    return new BalancePage.Block(
        BalancePage.Topic.ENDS,
        "What ends the hold",
        table,
        sentences,
        table.isEmpty() ? List.of() : List.of(STOP_CAUTION));
  }

  private static String surfaces(MachineBalance b) {
    List<String> ranges = new ArrayList<>();
    List<String> falls = new ArrayList<>();
    for (SurfaceGrip g : SurfaceGrip.over(1)) {
      ranges.add(g.surface() + " " + Digits.plain(g.low(), 2) + " to " + Digits.plain(g.high(), 2));
      boolean lets =
          b.holdEnds().stream()
              .flatMap(e -> e.surfaces().stream())
              .anyMatch(o -> o.surface().equals(g.surface()) && o.least() < 1);
      if (lets) {
        falls.add(g.surface());
      }
    }
    return "Friction of rubber on concrete: "
        + String.join(", ", ranges)
        + " (common practice, no source); the columns tell how many times the least friction that"
        + " is"
        + (falls.isEmpty()
            ? "."
            : ". Below 1 it lets go: where the ground may be "
                + String.join(" or ", falls)
                + " it does not hold everywhere.")
        + " Measure it on the ground itself.";
  }

  /** A least value, and how many times that the machine has. */
  private static String has(double value, int digits, double times) {
    return Digits.plain(value, digits) + " (" + Digits.plain(times, 3) + ")";
  }

  private static String surface(HoldEnd e, String name) {
    return e.surfaces().stream()
        .filter(g -> g.surface().equals(name))
        .map(g -> Digits.plain(g.least(), 3) + " to " + Digits.plain(g.most(), 3))
        .findFirst()
        .orElse("-");
  }

  private static String number(@Nullable Double value, double factor) {
    return value == null ? "-" : Digits.plain(value * factor, 3);
  }

  static BalancePage.@Nullable Block manoeuvres(MachineBalance b) {
    Manoeuvres v = b.manoeuvres();
    if (v == null) {
      return null;
    }
    List<List<String>> table = new ArrayList<>();
    table.add(List.of("", "", ""));
    String slope =
        "slope " + Digits.plain(Math.toDegrees(b.machine().slope()), 3) + "\u00b0, nose up";
    table.add(List.of(slope + ": grip over pull", BalancePage.margin(v.slopeGrip()), ""));
    table.add(List.of("\u00b7 speed the power allows", Digits.plain(v.slopeSpeed(), 3), "m/s"));
    table.add(List.of("wall, nose up: grip over pull", BalancePage.margin(v.wallGrip()), ""));
    table.add(List.of("\u00b7 speed the power allows", Digits.plain(v.wallSpeed(), 3), "m/s"));
    table.add(List.of("braking on level ground", BalancePage.margin(v.braking()), "m/s\u00b2"));
    table.add(
        List.of(
            "\u00b7 distance from "
                + BalanceWords.speed(b.machine().running().topSpeed())
                + ", without reaction",
            BalancePage.margin(v.brakingDistance()),
            "m"));
    table.add(List.of("braking down the slope", BalancePage.margin(v.slopeBraking()), "m/s\u00b2"));
    table.add(
        List.of(
            "turning on level ground, until " + v.turningEndsIn(),
            BalancePage.margin(v.turning()),
            "m/s\u00b2"));
    return new BalancePage.Block(
        BalancePage.Topic.MANOEUVRES,
        "Climbing, braking, turning, fan on",
        table,
        List.of(
            "Grip below 1: the driven wheels spin. Friction that brakes is not there to climb or to"
                + " turn: each figure takes all of it."),
        List.of());
  }
}
