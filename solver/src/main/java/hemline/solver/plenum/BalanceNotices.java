package hemline.solver.plenum;

import hemline.shared.fluid.Expansibility;
import hemline.shared.problem.Notice;
import hemline.shared.problem.NoticeKind;
import hemline.shared.result.LeakPoint;
import hemline.shared.result.Regime;
import hemline.shared.result.SolveStatus;
import hemline.shared.vehicle.Machine;
import java.util.ArrayList;
import java.util.List;
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
    HoldLimits.overstepped(balance, rest.value()).forEach(limit -> n.notices.add(limit.notice()));
    return n.notices;
  }

  private void sections(List<LeakPoint> points) {
    long failed = points.stream().filter(p -> !p.usable()).distinct().count();
    long unsteady =
        points.stream().filter(p -> p.status() == SolveStatus.UNSTEADY).distinct().count();
    long all = points.stream().distinct().count();
    if (failed > 0) {
      add(NoticeKind.LEAK_FAILED, (double) failed, (double) all);
    }
    if (unsteady > 0) {
      add(NoticeKind.LEAK_UNSTEADY, (double) unsteady, (double) all);
    }
  }

  private void unsettled(List<OperatingPoint> operating) {
    boolean touches = operating.stream().anyMatch(OperatingPoint::touching);
    if (touches) {
      add(NoticeKind.MACHINE_DOWN);
    } else {
      add(operating.isEmpty() ? NoticeKind.MACHINE_LEAKS : NoticeKind.MACHINE_UNSTABLE);
    }
  }

  private void sides(Bands<PlenumState> rest) {
    if (rest.low() == null || rest.high() == null) {
      add(rest.low() == null ? NoticeKind.MACHINE_EDGE_LOW : NoticeKind.MACHINE_EDGE_HIGH);
    }
  }

  private void wheels(PlenumState s) {
    Machine machine = balance.machine();
    double[] loads = Settling.axleLoads(balance, s.load());
    for (int i = 0; i < loads.length; i++) {
      if (loads[i] < 0) {
        notices.add(NoticeKind.MACHINE_LIFTS.of(machine.running().axles().get(i).name()));
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
      add(NoticeKind.LEAK_TRANSITION, least, most, Regime.TRANSITION_FROM, Regime.TRANSITION_TO);
    }
    double pressure = balance.machine().duty().air().pressure();
    double mach = Expansibility.jetMach(s.suction(), pressure);
    if (mach > HoldLimits.MACH) {
      add(NoticeKind.LEAK_MACH, mach, 1 - Expansibility.factor(s.suction(), pressure));
    }
    if (TradeStudy.beyond(balance, s)) {
      add(NoticeKind.LEAK_BEYOND);
    }
    double ceiling = balance.machine().floor().ceilingHeight();
    double speed = s.flows().fan() / (balance.machine().floor().perimeter() * ceiling);
    double head = 0.5 * balance.air().density() * speed * speed / s.suction();
    if (head > PLENUM_HEAD) {
      add(NoticeKind.PLENUM_LOW, head);
    }
    if (travels && balance.machine().duty().travelSpeed() > jet) {
      add(NoticeKind.LEAK_FAST);
    }
  }

  private void fan(PlenumState s, List<OperatingPoint> operating) {
    double ratio = s.flows().fan() / Math.max(1e-12, balance.fan().peakFlow());
    if (balance.fan().peakFlow() > 0 && ratio < NEAR_STALL) {
      if (s.stalled()) {
        add(NoticeKind.FAN_STALLED);
      } else {
        add(NoticeKind.FAN_NEAR_STALL, ratio - 1);
      }
    }
    long stable = operating.stream().filter(p -> p.stable() && !p.touching()).count();
    if (stable > 1) {
      add(NoticeKind.FAN_SEVERAL, stable);
    }
    double most = balance.machine().fan().maximumSpeed();
    double share = balance.machine().fan().speed() / most;
    if (share > 0.9) {
      add(NoticeKind.FAN_SPEED, share);
    }
  }

  private void add(NoticeKind kind, double... numbers) {
    notices.add(kind.of(numbers));
  }
}
