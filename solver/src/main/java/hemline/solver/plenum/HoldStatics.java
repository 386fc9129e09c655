package hemline.solver.plenum;

import hemline.shared.vehicle.Axle;
import hemline.shared.vehicle.Load;
import hemline.shared.vehicle.Machine;
import hemline.shared.vehicle.Running;
import hemline.shared.vehicle.SupportPolygon;
import hemline.shared.vehicle.WheelLoads;
import java.util.Arrays;
import org.jspecify.annotations.Nullable;

/**
 * Statics of a machine that stands still on tilted ground, with the suction as it is there.
 *
 * <p>On ground tilted by α the weight m g cos α presses and m g sin α pulls down the ground at the
 * height H of the centre of gravity; the fan's jet pushes along the machine at the height of its
 * outlet. Both turn the machine over its lower wheels. Margins:
 *
 * <pre>
 *   slip       friction the wheels have over what pull, jet and their yaw need ({@link FrictionLimit})
 *   tip        over the edges of the polygon of the wheels: restoring over tipping moment
 *   axle lift  load of an axle or side without the pull over what the pull takes from it; where the
 *              weight pulls away it belongs to the pull
 *   peel-off   F / (−m g cos α) where the weight pulls away</pre>
 */
final class HoldStatics {
  /** A part below this share of the weight is none. */
  private static final double NO_PULL = 1e-9;

  /** A margin is raised when it grows by more, relatively. */
  private static final double BETTER = 1e-6;

  private static final double NONE = Double.POSITIVE_INFINITY;

  private final PlenumBalance balance;
  private final Machine machine;
  private final Wheels wheels;
  private final FrictionLimit friction;
  private final boolean powered;
  private final @Nullable FrictionLimit unyielding;

  /**
   * Loads towards the ground, N.
   *
   * @param axles of axles, as if they stuck to it
   * @param wheels of wheels, 0 where one hangs free
   */
  record Loads(double[] axles, double[] wheels) {}

  /**
   * Margins on one side of the leaks; infinite where a way to fail does not apply.
   *
   * @param slip before slip
   * @param sliding once slipping
   * @param tip about an edge of the wheels' polygon
   * @param lift of an axle or a side
   * @param peel away from the ground
   * @param loads of axles and wheels
   * @param brakes true when stronger brakes would raise the margin against slip
   * @param settles false when there is no balance clear of the ground: all margins are 0
   */
  record Margins(
      double slip,
      double sliding,
      double tip,
      double lift,
      double peel,
      Loads loads,
      boolean brakes,
      boolean settles) {
    double least() {
      return Math.min(Math.min(slip, tip), Math.min(lift, peel));
    }
  }

  /**
   * Statics of a machine.
   *
   * @param powered true while drive and powered brakes hold; false when only parked brakes do
   */
  HoldStatics(PlenumBalance balance, boolean powered) {
    this.balance = balance;
    this.powered = powered;
    machine = balance.machine();
    wheels = balance.wheels();
    int n = wheels.all().size();
    double[] x = new double[n];
    double[] y = new double[n];
    double[] holding = new double[n];
    boolean limited = false;
    for (int i = 0; i < n; i++) {
      WheelLoads.Wheel w = wheels.all().get(i);
      x[i] = w.x();
      y[i] = w.y();
      Axle axle = machine.running().axles().get(w.axle());
      double most = axle.holding(powered, machine.duty().terms().parked());
      holding[i] = axle.track() > 0 ? 0.5 * most : most;
      limited |= most > 0 && Double.isFinite(most);
    }
    friction = new FrictionLimit(x, y, holding);
    double none = Double.POSITIVE_INFINITY;
    unyielding =
        limited
            ? new FrictionLimit(x, y, Arrays.stream(holding).map(b -> b > 0 ? none : 0).toArray())
            : null;
  }

  PlenumBalance balance() {
    return balance;
  }

  /** True when the file limits the torque of a brake that holds. */
  boolean brakesLimited() {
    return unyielding != null;
  }

  boolean powered() {
    return powered;
  }

  /** Load of the weight on tilted ground beyond that on level ground: {N, Σ N x, Σ N y}. */
  double[] beyondLevel(Attitude a) {
    return weight(a, Math.cos(a.tilt()) - 1);
  }

  private double[] weight(Attitude a, double normalShare) {
    Load load = machine.load();
    double mg = load.mass() * Wheels.GRAVITY;
    double normal = mg * normalShare;
    double moment = mg * Math.sin(a.tilt()) * load.height();
    return new double[] {
      normal, normal * load.x() + moment * a.x(), normal * load.y() + moment * a.y()
    };
  }

  /** The stand of a machine on tilted ground. */
  Stand stand(Attitude a, Side side) {
    return Stand.REST.at(side).loaded(beyondLevel(a));
  }

  Margins margins(Attitude a, @Nullable PlenumState state) {
    return pulled(a, machine.load().mass() * Wheels.GRAVITY * Math.sin(a.tilt()), state);
  }

  /**
   * Margins under a pull along the ground at the centre of gravity.
   *
   * @param a tilt that presses, direction that pulls
   * @param pull by weight and inertia, N
   * @param state null when there is none
   */
  Margins pulled(Attitude a, double pull, @Nullable PlenumState state) {
    int axles = machine.running().axles().size();
    if (state == null) {
      return new Margins(
          0,
          0,
          0,
          0,
          0,
          new Loads(new double[axles], new double[wheels.all().size()]),
          false,
          false);
    }
    Load load = machine.load();
    double mg = load.mass() * Wheels.GRAVITY;
    double normal = mg * Math.cos(a.tilt());
    double[] suction = state.load();
    double jet =
        state.flows().fan() > 0 ? balance.forwardThrust(state.flows().fan(), state.suction()) : 0;
    double jetMoment = jet * machine.fan().outlet().height();
    double[] turns = {pull * load.height() * a.x() + jetMoment, pull * load.height() * a.y()};
    double[] still = sum(suction, normal, normal * load.x(), normal * load.y());
    still[1] -= jetMoment;
    double[] all = sum(still, 0, turns[0], turns[1]);
    double[] pressed = wheels.pressed(all);

    double alongX = pull * a.x() + jet;
    double alongY = pull * a.y();
    double yaw =
        load.x() * pull * a.y() - load.y() * pull * a.x() - machine.fan().outlet().y() * jet;
    boolean pushed = Math.hypot(alongX, alongY) > NO_PULL * mg;
    Running running = machine.running();
    double[] limit = times(running.peakFriction(), pressed);
    double slip = pushed ? friction.factor(limit, alongX, alongY, yaw) : NONE;
    double kept = running.slidingFriction() / running.peakFriction();
    double sliding =
        pushed && unyielding != null
            ? friction.factor(times(kept, limit), alongX, alongY, yaw)
            : kept * slip;
    boolean brakes =
        pushed
            && unyielding != null
            && unyielding.factor(limit, alongX, alongY, yaw) > (1 + BETTER) * slip;
    double peel = normal < -NO_PULL * mg ? suction[0] / -normal : NONE;
    return new Margins(
        slip,
        sliding,
        tip(still, turns),
        lift(suction, normal, jetMoment, all),
        peel,
        new Loads(wheels.byAxle(wheels.loads(all)), pressed),
        brakes,
        true);
  }

  private static double[] times(double factor, double[] v) {
    double[] out = v.clone();
    for (int i = 0; i < v.length; i++) {
      out[i] *= factor;
    }
    return out;
  }

  /** Restoring over tipping moment, least over the edges of the polygon. */
  private double tip(double[] still, double[] turns) {
    double least = NONE;
    double size = machine.load().mass() * Wheels.GRAVITY;
    for (SupportPolygon.Edge e : wheels.polygon().edges()) {
      double tips = e.outX() * turns[0] + e.outY() * turns[1];
      double restores = still[0] * e.reach() - e.outX() * still[1] - e.outY() * still[2];
      if (tips > NO_PULL * size) {
        least = Math.min(least, restores / tips);
      } else if (restores - tips < 0) {
        least = 0; // the suction itself tips it over this edge
      }
    }
    return least;
  }

  /** How many times the change by the pull can grow before an axle or side has no load. */
  private double lift(double[] suction, double normal, double jetMoment, double[] all) {
    Load load = machine.load();
    double stays = Math.max(0, normal);
    double[] still = sum(suction, stays, stays * load.x(), stays * load.y());
    still[1] -= jetMoment;
    double[] before = wheels.bonded(still);
    double[] after = wheels.bonded(all);
    return Math.min(
        lift(wheels.byAxle(before), wheels.byAxle(after)),
        lift(wheels.bySide(before), wheels.bySide(after)));
  }

  /** 0 when a load is gone without the change. */
  private static double lift(double[] before, double[] after) {
    double least = NONE;
    for (int i = 0; i < before.length; i++) {
      if (before[i] <= 0) {
        return 0;
      }
      double taken = before[i] - after[i];
      if (taken > NO_PULL * before[i]) {
        least = Math.min(least, before[i] / taken);
      }
    }
    return least;
  }

  private static double[] sum(double[] a, double... b) {
    return new double[] {a[0] + b[0], a[1] + b[1], a[2] + b[2]};
  }
}
