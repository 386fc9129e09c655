package hemline.solver.plenum;

import hemline.shared.fluid.Air;
import hemline.shared.result.Estimate;
import hemline.shared.vehicle.Load;
import hemline.shared.vehicle.Machine;
import hemline.shared.vehicle.WheelLoads;
import java.util.ArrayList;
import java.util.List;
import java.util.function.ToDoubleFunction;
import org.jspecify.annotations.Nullable;

/**
 * Traction and hold on level ground, slope, wall and ceiling.
 *
 * <p>On ground tilted by α the weight m g cos α presses on it and m g sin α pulls along it at the
 * height H of the centre of gravity, which shifts m g sin α H of moment to the downhill wheels. The
 * springs see both, so gaps, suction and downforce are solved anew for each case. Margins:
 *
 * <pre>  slip       μ (F + m g cos α) / (m g sin α)
 *   tip        Σ N s / (m g sin α H), s from each normal force uphill of the lowest wheels
 *   axle lift  load of an axle or side without the pull over what the pull takes from it; where the
 *              weight pulls away it belongs to the pull
 *   peel-off   F / (−m g cos α) where the weight pulls away</pre>
 */
final class HoldStudy {
  static final double GRAVITY = Air.GRAVITY;

  private static final double NO_PULL = 1e-9;

  /** Headings whose margins differ by less, relatively, are alike; the first is told. */
  private static final double SAME = 1e-6;

  private static final List<String> HEADINGS =
      List.of("nose up", "nose down", "left side up", "right side up");
  private static final double[][] DOWNHILL = {{-1, 0}, {1, 0}, {0, -1}, {0, 1}};

  private final PlenumBalance balance;
  private final Machine machine;

  HoldStudy(PlenumBalance balance) {
    this.balance = balance;
    this.machine = balance.machine();
  }

  /**
   * Margins on one side of the leaks; infinite where a way to fail does not apply.
   *
   * @param slip before slip
   * @param sliding once slipping
   * @param tip about the lowest wheels
   * @param lift of an axle or a side
   * @param peel away from the ground
   * @param axles loads, N
   * @param settles false when there is no balance clear of the ground: all margins are 0
   */
  private record Margins(
      double slip,
      double sliding,
      double tip,
      double lift,
      double peel,
      double[] axles,
      boolean settles) {
    double least() {
      return Math.min(Math.min(slip, tip), Math.min(lift, peel));
    }
  }

  /** Cases with the seal whole. */
  List<Hold> all() {
    List<Hold> holds = new ArrayList<>();
    holds.add(worst("level", 0, null));
    holds.add(worst("slope", machine.slope(), null));
    holds.add(worst("wall", 0.5 * Math.PI, null));
    holds.add(worst("ceiling", Math.PI, null));
    return holds;
  }

  /**
   * The worst heading on ground of one tilt.
   *
   * @param fixed state of the plenum to take for all sides; null to solve for each
   */
  Hold worst(String place, double angle, @Nullable Bands<PlenumState> fixed) {
    Hold worst = null;
    int headings = Math.abs(Math.sin(angle)) < NO_PULL ? 1 : HEADINGS.size();
    for (int i = 0; i < headings; i++) {
      Hold hold = hold(place, angle, i, fixed);
      if (worst == null || low(hold) < low(worst) - SAME * Math.abs(low(worst))) {
        worst = hold;
      }
    }
    if (worst == null) {
      throw new IllegalStateException("no heading");
    }
    return worst;
  }

  private static double low(Hold hold) {
    Estimate margin = hold.margin();
    return margin == null ? MOST : margin.low();
  }

  private Hold hold(String place, double angle, int heading, @Nullable Bands<PlenumState> fixed) {
    Margins value = margins(angle, heading, state(angle, heading, Side.VALUE, fixed));
    Margins low = margins(angle, heading, state(angle, heading, Side.LOW, fixed));
    Margins high = margins(angle, heading, state(angle, heading, Side.HIGH, fixed));
    Bands<Margins> b = new Bands<>(value, low, high, 0, 0);
    double least = value.least();
    String limitedBy =
        !value.settles()
            ? "no balance"
            : least == value.slip()
                ? "slip"
                : least == value.tip()
                    ? "tip"
                    : value.peel() > least * (1 + SAME) ? "axle lift" : "peel-off";
    List<Estimate> axles = new ArrayList<>();
    for (int i = 0; i < value.axles().length; i++) {
      int axle = i;
      axles.add(b.of(m -> m.axles()[axle]));
    }
    Estimate margin = Double.isFinite(least) ? b.of(m -> finite(m.least())) : null;
    return new Hold(
        place,
        angle,
        Math.abs(Math.sin(angle)) < NO_PULL ? "any" : HEADINGS.get(heading),
        margin == null || margin.low() >= 1,
        margin == null ? "nothing" : limitedBy,
        margin,
        estimate(b, Margins::slip),
        estimate(b, Margins::sliding),
        estimate(b, Margins::tip),
        estimate(b, Margins::lift),
        estimate(b, Margins::peel),
        axles);
  }

  /** Margins beyond this count as this. */
  private static final double MOST = 1000;

  private static double finite(double margin) {
    return Math.max(-MOST, Math.min(MOST, margin));
  }

  private static @Nullable Estimate estimate(Bands<Margins> b, ToDoubleFunction<Margins> of) {
    return Double.isFinite(of.applyAsDouble(b.value()))
        ? b.of(m -> finite(of.applyAsDouble(m)))
        : null;
  }

  private @Nullable PlenumState state(
      double angle, int heading, Side side, @Nullable Bands<PlenumState> fixed) {
    if (fixed != null) {
      return switch (side) {
        case VALUE -> fixed.value();
        case LOW -> fixed.low();
        case HIGH -> fixed.high();
      };
    }
    return balance.settled(Stand.REST.at(side).loaded(tilted(angle, heading, -1)));
  }

  /**
   * Load of the weight on tilted ground.
   *
   * @param rest what to take off the normal part: −1 for the weight on level ground, 0 for nothing
   */
  private double[] tilted(double angle, int heading, double rest) {
    Load load = machine.load();
    double weight = load.mass() * GRAVITY;
    double normal = weight * (Math.cos(angle) + rest);
    double moment = weight * Math.sin(angle) * load.height();
    double[] d = DOWNHILL[heading];
    return new double[] {
      normal, normal * load.x() + moment * d[0], normal * load.y() + moment * d[1]
    };
  }

  private Margins margins(double angle, int heading, @Nullable PlenumState state) {
    int axles = machine.running().axles().size();
    if (state == null) {
      return new Margins(0, 0, 0, 0, 0, new double[axles], false);
    }
    Load load = machine.load();
    double weight = load.mass() * GRAVITY;
    double pull = weight * Math.abs(Math.sin(angle));
    double normal = weight * Math.cos(angle);
    double[] suction = state.load();
    double none = Double.POSITIVE_INFINITY;
    double pressed = suction[0] + normal;
    double[] d = DOWNHILL[heading];
    boolean pulls = pull > NO_PULL * weight;
    double slip = pulls ? machine.running().peakFriction() * pressed / pull : none;
    double sliding = pulls ? machine.running().slidingFriction() * pressed / pull : none;
    double tip = none;
    if (pulls && load.height() > 0) {
      double lowest = Double.NEGATIVE_INFINITY;
      for (WheelLoads.Wheel w : WheelLoads.wheels(machine.running().axles())) {
        lowest = Math.max(lowest, w.x() * d[0] + w.y() * d[1]);
      }
      double restoring =
          suction[0] * lowest
              - (suction[1] * d[0] + suction[2] * d[1])
              + normal * (lowest - load.x() * d[0] - load.y() * d[1]);
      tip = restoring / (pull * load.height());
    }
    double stays = Math.max(0, normal);
    double[] still = sum(suction, stays, stays * load.x(), stays * load.y());
    double[] pulled = sum(suction, tilted(angle, heading, 0));
    double[] before = WheelLoads.under(machine.running().axles(), still);
    double[] after = WheelLoads.under(machine.running().axles(), pulled);
    double lift = lift(Settling.byAxle(machine, before), Settling.byAxle(machine, after));
    lift = Math.min(lift, lift(sides(before), sides(after)));
    double peel = normal < -NO_PULL * weight ? suction[0] / -normal : none;
    return new Margins(slip, sliding, tip, lift, peel, Settling.byAxle(machine, after), true);
  }

  /** How many times the change can grow before a load is gone; 0 when one is gone without it. */
  private static double lift(double[] before, double[] after) {
    double least = Double.POSITIVE_INFINITY;
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

  /** Loads of the wheels left and right; those in the middle count half on each. */
  private double[] sides(double[] wheel) {
    List<WheelLoads.Wheel> wheels = WheelLoads.wheels(machine.running().axles());
    double[] out = new double[2];
    for (int i = 0; i < wheel.length; i++) {
      double left = wheels.get(i).y() > 0 ? 1 : wheels.get(i).y() < 0 ? 0 : 0.5;
      out[0] += left * wheel[i];
      out[1] += (1 - left) * wheel[i];
    }
    return out;
  }

  private static double[] sum(double[] a, double... b) {
    return new double[] {a[0] + b[0], a[1] + b[1], a[2] + b[2]};
  }
}
