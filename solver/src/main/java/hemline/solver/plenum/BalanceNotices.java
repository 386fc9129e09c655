package hemline.solver.plenum;

import hemline.shared.fluid.Expansibility;
import hemline.shared.problem.Notice;
import hemline.shared.result.LeakPoint;
import hemline.shared.result.Regime;
import hemline.shared.result.SolveStatus;
import hemline.shared.vehicle.Machine;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/** What the reader of a machine's balance must know. */
final class BalanceNotices {
  /** Flow over that at the fan's peak below which it is near stall. Common practice, no source. */
  private static final double NEAR_STALL = 1.15;

  /** Share of the suction that moving air under the floor may take unnoticed. Judged, no source. */
  private static final double PLENUM_HEAD = 0.02;

  private final PlenumBalance balance;
  private final List<Notice> notices = new ArrayList<>();

  private BalanceNotices(PlenumBalance balance) {
    this.balance = balance;
  }

  static List<Notice> of(
      PlenumBalance balance,
      @Nullable Bands<PlenumState> rest,
      List<LeakPoint> points,
      List<OperatingPoint> operating,
      boolean travels) {
    BalanceNotices n = new BalanceNotices(balance);
    n.sections(points);
    if (rest == null) {
      n.unsettled(operating);
      return n.notices;
    }
    n.sides(rest);
    n.wheels(rest.value());
    n.leaks(rest.value(), travels);
    n.fan(rest.value(), operating);
    n.limits(rest.value());
    return n.notices;
  }

  private void sections(List<LeakPoint> points) {
    long failed = points.stream().filter(p -> !p.usable()).distinct().count();
    long unsteady =
        points.stream().filter(p -> p.status() == SolveStatus.UNSTEADY).distinct().count();
    if (failed > 0) {
      add(
          "leak.failed",
          "%d of %d solved sections gave no usable flow: their neighbours stand in for them with a"
              + " band of a third.",
          failed,
          points.stream().distinct().count());
    }
    if (unsteady > 0) {
      add(
          "leak.unsteady",
          "%d of %d solved sections found no steady flow: their means and bands are used.",
          unsteady,
          points.stream().distinct().count());
    }
  }

  private void unsettled(List<OperatingPoint> operating) {
    boolean touches = operating.stream().anyMatch(OperatingPoint::touching);
    if (touches) {
      add(
          "machine.down",
          "The machine is drawn down to the ground: its springs are too soft for this fan and"
              + " floor. See the required stiffness and the valve setting.");
    } else if (operating.isEmpty()) {
      add(
          "machine.leaks",
          "The leaks take more than the measured curve of the fan reaches: close the gaps, take a"
              + " larger fan or measure the curve up to free delivery.");
    } else {
      add("machine.unstable", "No operating point is stable: the plenum will surge.");
    }
  }

  private void sides(Bands<PlenumState> rest) {
    if (rest.low() == null || rest.high() == null) {
      add(
          "machine.edge",
          "With the leaks at the %s end of their band the machine does not settle clear of the"
              + " ground: the bands then reach to 0.",
          rest.low() == null ? "low" : "high");
    }
  }

  private void wheels(PlenumState s) {
    Machine machine = balance.machine();
    double[] loads = Settling.axleLoads(balance, s.load());
    for (int i = 0; i < loads.length; i++) {
      if (loads[i] < 0) {
        add(
            "machine.lifts",
            "The suction lifts the axle \"%s\": the centre of pressure lies beyond the wheels. The"
                + " figures take every wheel to stand, so they hold only once floor or axles are moved.",
            machine.running().axles().get(i).name());
      }
    }
  }

  private void leaks(PlenumState s, boolean travels) {
    SealStrips strips = balance.strips();
    double nu = balance.air().kinematicViscosity();
    double jet = Math.sqrt(2 * s.suction() / balance.air().density());
    double least = Double.POSITIVE_INFINITY;
    double most = 0;
    for (int i = 0; i < strips.count; i++) {
      double h =
          strips.gap[i] - (s.sink()[0] + s.sink()[1] * strips.x[i] + s.sink()[2] * strips.y[i]);
      if (h > 0) {
        double re = h * jet * strips.law[i].estimate(h, s.suction()).value() / nu;
        least = Math.min(least, re);
        most = Math.max(most, re);
      }
    }
    if (least < Regime.TRANSITION_TO && most > Regime.TRANSITION_FROM) {
      add(
          "regime.transition",
          "The gap Reynolds number of %s lies in the transition band, %.0f to %.0f: the"
              + " leak may be laminar or turbulent. The bands hold both where a solved section lies in"
              + " that band too.",
          range(least, most),
          Regime.TRANSITION_FROM,
          Regime.TRANSITION_TO);
    }
    double pressure = balance.machine().duty().air().pressure();
    double mach = Expansibility.jetMach(s.suction(), pressure);
    if (mach > HoldLimits.MACH) {
      add(
          "jet.mach",
          "The leak jet reaches Mach %.2f, beyond the incompressible assumption: expansion of the"
              + " air cuts the leak by about %.1f %%, which is not in the figures.",
          mach,
          100 * (1 - Expansibility.factor(s.suction(), pressure)));
    }
    if (TradeStudy.beyond(balance, s)) {
      add(
          "leak.beyond",
          "Where the machine settles, a gap or the suction lies beyond the solved sections: the"
              + " discharge coefficient of the nearest is used, with a wider band.");
    }
    double ceiling = balance.machine().floor().ceilingHeight();
    double speed = s.flows().fan() / (balance.machine().floor().perimeter() * ceiling);
    double head = 0.5 * balance.air().density() * speed * speed / s.suction();
    if (head > PLENUM_HEAD) {
      add(
          "plenum.low",
          "The plenum is low: air on its way to the fan takes about %.0f %% of the suction, which is"
              + " not in the figures; raise the ceiling.",
          100 * head);
    }
    if (travels && balance.machine().duty().travelSpeed() > jet) {
      add("leak.fast", "The machine travels faster than its leak jets: such leaks often pulse.");
    }
  }

  private void fan(PlenumState s, List<OperatingPoint> operating) {
    double ratio = s.flows().fan() / Math.max(1e-12, balance.fan().peakFlow());
    if (balance.fan().peakFlow() > 0 && ratio < NEAR_STALL) {
      add(
          "fan.stall",
          s.stalled()
              ? "The fan works on the stall side of its curve: expect noise, pulsing and heat."
              : "The fan works within %.0f %% of its stall: a smaller gap may push it over.",
          100 * (ratio - 1));
    }
    long stable = operating.stream().filter(p -> p.stable() && !p.touching()).count();
    if (stable > 1) {
      add(
          "fan.several",
          "There are %d stable operating points: which one is reached depends on how the fan runs"
              + " up; figures are for the one with the largest flow.",
          stable);
    }
    double most = balance.machine().fan().maximumSpeed();
    double share = balance.machine().fan().speed() / most;
    if (share > 0.9) {
      add("fan.speed", "The fan runs at %.0f %% of its largest speed.", 100 * share);
    }
  }

  private void limits(PlenumState s) {
    for (HoldLimits.Limit limit : HoldLimits.overstepped(balance, s)) {
      String text = limit.text();
      add(
          limit.code(),
          "%s%s: no hold is shown.",
          text.substring(0, 1).toUpperCase(Locale.ROOT),
          text.substring(1));
    }
  }

  private static String range(double least, double most) {
    String low = String.format(Locale.ROOT, "%.0f", least);
    String high = String.format(Locale.ROOT, "%.0f", most);
    return low.equals(high) ? low : low + " to " + high;
  }

  private void add(String code, String text, Object... values) {
    notices.add(new Notice(code, String.format(Locale.ROOT, text, values)));
  }
}
