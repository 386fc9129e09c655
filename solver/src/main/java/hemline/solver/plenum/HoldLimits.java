package hemline.solver.plenum;

import hemline.shared.fluid.Expansibility;
import hemline.shared.problem.Notice;
import hemline.shared.problem.NoticeKind;
import hemline.shared.vehicle.Machine;
import hemline.shared.vehicle.PowerSupply;
import hemline.shared.vehicle.ReliefValve;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * Limits within which alone the figures of a machine are known, or its fan goes on running. Where
 * one is overstepped a hold is not shown, whatever its margins say.
 */
final class HoldLimits {
  /** Jet Mach number up to which air is taken as incompressible. Common practice, no source. */
  static final double MACH = 0.3;

  /** A gap this close below the smallest solved one is still within it. Judged, no source. */
  private static final double NEAR = 0.98;

  private HoldLimits() {}

  /**
   * A limit that is overstepped.
   *
   * @param by how far, to compare states
   */
  record Limit(Notice notice, double by) {}

  /**
   * Notices of the limits overstepped in any of some states, each where it is overstepped most.
   *
   * @param states null where there is none
   * @param crossing ground under the seal in all of them; null for even ground
   */
  static List<Notice> overstepped(
      PlenumBalance balance, List<@Nullable PlenumState> states, @Nullable Crossing crossing) {
    Map<NoticeKind, Limit> most = new LinkedHashMap<>();
    for (PlenumState s : states) {
      if (s != null) {
        for (Limit limit : overstepped(balance, s, crossing)) {
          most.merge(limit.notice().kind(), limit, (a, b) -> b.by() > a.by() ? b : a);
        }
      }
    }
    return most.values().stream().map(Limit::notice).toList();
  }

  /** The limits overstepped in a state on even ground, by which no hold is shown. */
  static List<Limit> overstepped(PlenumBalance balance, PlenumState s) {
    return overstepped(balance, s, null);
  }

  private static List<Limit> overstepped(
      PlenumBalance balance, PlenumState s, @Nullable Crossing crossing) {
    List<Limit> out = new ArrayList<>(power(balance, s));
    double mach = Expansibility.jetMach(s.suction(), balance.machine().duty().air().pressure());
    if (mach > MACH) {
      out.add(new Limit(NoticeKind.HOLD_MACH.of(mach), mach));
    }
    double thinnest = Math.min(thinnest(balance, s), overLedge(balance, s, crossing));
    if (Double.isFinite(thinnest)) {
      out.add(new Limit(NoticeKind.HOLD_THIN.of(thinnest), -thinnest));
    }
    ReliefValve valve = balance.machine().openings().valve();
    if (valve != null && valve.lift(s.suction()) >= valve.maximumLift()) {
      out.add(new Limit(NoticeKind.HOLD_VALVE.of(), 0));
    }
    if (balance.machine().fan().jetShort(balance.fan(), s.flows().fan(), s.suction())) {
      out.add(new Limit(NoticeKind.FAN_OUTLET.of(), 0));
    }
    return out;
  }

  /** Motor and battery. */
  static List<Limit> power(PlenumBalance balance, PlenumState s) {
    Machine machine = balance.machine();
    PowerSupply p = machine.power();
    double fan = Settling.shaftPower(balance, s) / p.motorEfficiency();
    double drive = machine.running().drivePower() / p.driveEfficiency();
    List<Limit> out = new ArrayList<>();
    if (fan > p.motorPower()) {
      out.add(new Limit(NoticeKind.POWER_MOTOR.of(fan, p.motorPower()), fan));
    }
    if (fan > p.batteryPower()) {
      out.add(new Limit(NoticeKind.POWER_BATTERY.of(fan, p.batteryPower()), fan));
    } else if (fan + drive > p.batteryPower()) {
      Notice notice = NoticeKind.POWER_TOGETHER.of(fan + drive, p.batteryPower());
      out.add(new Limit(notice, fan + drive));
    }
    return out;
  }

  /** The smallest gap over a ledge where the allowance is not left there; else infinite. */
  private static double overLedge(
      PlenumBalance balance, PlenumState s, @Nullable Crossing crossing) {
    double least = crossing == null ? Double.POSITIVE_INFINITY : crossing.leastGap(balance, s);
    return least < NEAR * balance.machine().duty().terms().contactAllowance()
        ? least
        : Double.POSITIVE_INFINITY;
  }

  /** The smallest gap where it lies below what is solved or allowed; infinite where none does. */
  private static double thinnest(PlenumBalance balance, PlenumState s) {
    SealStrips strips = balance.strips();
    double allowance = balance.machine().duty().terms().contactAllowance();
    double least = s.least().gap() < NEAR * allowance ? s.least().gap() : Double.POSITIVE_INFINITY;
    for (int i = 0; i < strips.count; i++) {
      double h =
          strips.gap[i] - (s.sink()[0] + s.sink()[1] * strips.x[i] + s.sink()[2] * strips.y[i]);
      if (h < NEAR * strips.law[i].leastGap()) {
        least = Math.min(least, h);
      }
    }
    return least;
  }
}
