package hemline.viewer.page;

import hemline.shared.vehicle.Axle;
import hemline.shared.vehicle.Machine;
import hemline.solver.plenum.HoldEnd;
import hemline.solver.plenum.MachineBalance;
import hemline.solver.plenum.Manoeuvres;
import hemline.solver.plenum.SurfaceGrip;
import hemline.viewer.format.BalanceWords;
import hemline.viewer.format.Digits;
import hemline.viewer.format.LengthUnit;
import hemline.viewer.page.Page.Tone;
import java.util.List;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** What ends a hold, and how the machine moves. */
final class HoldEndBlocks {
  /** Beside the time that is left once the fan stops. */
  private static final String STOP_CAUTION =
      "These times are far shorter than anyone needs to step aside or catch the machine. Do not"
          + " rely on them; rely on the tether.";

  private HoldEndBlocks() {}

  static void ends(MachineBalance b, Page page) {
    Machine m = b.machine();
    page.heading("What ends the hold");
    if (b.holding().ends().isEmpty()) {
      page.plain("None of the tilted cases holds as estimated.");
    } else {
      page.table(table(b, m));
      page.plain(
          """
          One thing changed at a time until the least margin falls to %s, leaks as estimated; in \
          brackets how many times that it has. The fan's speed goes with the voltage (common \
          practice, no source).\
          """
              .formatted(Digits.plain(m.duty().terms().safetyFactor(), 3)));
      page.plain(surfaces(b));
    }
    boolean parked =
        m.duty().terms().parked() && m.running().axles().stream().anyMatch(Axle::braked);
    page.plain(
        parked
            ? "With the fan off the parked brakes hold it on slopes of up to %s\u00b0."
                .formatted(Digits.plain(Math.toDegrees(b.holding().steepestWithoutFan()), 3))
            : "With fan and power off nothing holds its wheels: no axle has a parked brake in the"
                + " file.");
    page.text(b.holding().ends().isEmpty() ? "" : STOP_CAUTION, Tone.CAUTION);
  }

  private static PageTable table(MachineBalance b, Machine m) {
    PageTable table =
        PageTable.of(
            "",
            "least fan speed, rpm",
            "least battery, V",
            "gaps wider by, " + LengthUnit.unit(),
            "least friction",
            "dry",
            "dusty",
            "wet",
            "payload, kg",
            "seconds, fan stops dead",
            "seconds, rotor runs down");
    double speed = m.fan().speed();
    for (HoldEnd e : b.holding().ends()) {
      Double voltage = e.fan().voltage();
      Double friction = e.grip().friction();
      table.row(
          BalanceWords.place(e.place(), e.tilt()),
          has(60 * e.fan().speed(), 4, speed / e.fan().speed()),
          voltage == null ? "-" : has(voltage, 3, m.power().batteryVoltage() / voltage),
          e.wider() == null
              ? "more than " + LengthUnit.bare(5e-3, 2)
              : number(e.wider(), LengthUnit.factor()),
          friction == null ? "-" : has(friction, 3, m.running().peakFriction() / friction),
          surface(e, "dry"),
          surface(e, "dusty"),
          surface(e, "wet"),
          has(e.payload(), 3, 1 + e.payload() / m.load().mass()),
          Digits.plain(e.times().plenum(), 2),
          number(e.times().rotor(), 1));
    }
    return table;
  }

  private static String surfaces(MachineBalance b) {
    List<SurfaceGrip> usual = SurfaceGrip.over(1);
    String ranges =
        usual.stream()
            .map(g -> g.surface() + " " + range(g.low(), g.high(), 2))
            .collect(Collectors.joining(", "));
    List<String> falls =
        usual.stream()
            .map(SurfaceGrip::surface)
            .filter(
                name ->
                    b.holding().ends().stream()
                        .flatMap(e -> e.grip().surfaces().stream())
                        .anyMatch(o -> o.surface().equals(name) && o.least() < 1))
            .toList();
    String lets =
        falls.isEmpty()
            ? ""
            : " Below 1 it lets go: where the ground may be %s it does not hold everywhere."
                .formatted(String.join(" or ", falls));
    return """
    Friction of rubber on concrete: %s (common practice, no source); the columns tell how many \
    times the least friction that is.%s Measure it on the ground itself.\
    """
        .formatted(ranges, lets);
  }

  private static String range(double low, double high, int digits) {
    return Digits.plain(low, digits) + " to " + Digits.plain(high, digits);
  }

  /** A least value, and how many times that the machine has. */
  private static String has(double value, int digits, double times) {
    return Digits.plain(value, digits) + " (" + Digits.plain(times, 3) + ")";
  }

  private static String surface(HoldEnd e, String name) {
    return e.grip().surfaces().stream()
        .filter(g -> g.surface().equals(name))
        .map(g -> range(g.least(), g.most(), 3))
        .findFirst()
        .orElse("-");
  }

  private static String number(@Nullable Double value, double factor) {
    return value == null ? "-" : Digits.plain(value * factor, 3);
  }

  static void manoeuvres(MachineBalance b, Page page) {
    Manoeuvres v = b.driving().manoeuvres();
    if (v == null) {
      return;
    }
    String slope = BalanceWords.place("slope", b.machine().duty().slope());
    String top = BalanceWords.speed(b.machine().running().topSpeed());
    String square = "m/s\u00b2";
    PageTable table =
        PageTable.of("", "", "")
            .row(slope + ", nose up: grip over pull", BalancePage.margin(v.slope().grip()), "")
            .row("\u00b7 speed the power allows", Digits.plain(v.slope().speed(), 3), "m/s")
            .row("wall, nose up: grip over pull", BalancePage.margin(v.wall().grip()), "")
            .row("\u00b7 speed the power allows", Digits.plain(v.wall().speed(), 3), "m/s")
            .row("braking on level ground", BalancePage.margin(v.braking().level()), square)
            .row(
                "\u00b7 distance from " + top + ", without reaction",
                BalancePage.margin(v.braking().distance()),
                "m")
            .row("braking down the slope", BalancePage.margin(v.braking().slope()), square)
            .row(
                "turning on level ground, until " + v.turning().endsIn(),
                BalancePage.margin(v.turning().acceleration()),
                square);
    page.heading("Climbing, braking, turning, fan on").table(table);
    page.plain(
        "Grip below 1: the driven wheels spin. Friction that brakes is not there to climb or to"
            + " turn: each figure takes all of it.");
  }
}
