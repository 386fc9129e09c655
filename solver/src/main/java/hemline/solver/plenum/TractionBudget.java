package hemline.solver.plenum;

import hemline.shared.vehicle.Axle;
import hemline.shared.vehicle.Load;
import hemline.shared.vehicle.Machine;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Grip and power on level ground: how hard the machine accelerates, and time and distance to a
 * speed.
 *
 * <p>Accelerating by a shifts m a H of moment to the rear wheels. The driven wheels carry N_d(a) =
 * N₀ + c a, so grip ends at a = (μ N₀ + T) / (m − μ c), T the forward thrust of the fan. Up to v₁ =
 * P / (m a) grip limits, then power: m v dv/dt = P, so
 *
 * <pre>  t = v₁ / a + m (v² − v₁²) / (2 P),   s = v₁² / (2 a) + m (v³ − v₁³) / (3 P)</pre>
 *
 * Rolling resistance and air drag are left out: at the speeds of these machines they are small
 * against grip (common practice, no source).
 */
final class TractionBudget {
  private TractionBudget() {}

  /**
   * A start.
   *
   * @param grip acceleration that the tyres carry, m/s²
   * @param lifts true when an axle lifts before they slip; grip is then that of the lift
   * @param until speed from which power limits, m/s
   * @param time s
   * @param distance m
   */
  record Start(double grip, boolean lifts, double until, double time, double distance) {}

  static Launch of(PlenumBalance balance, Bands<PlenumState> state) {
    Machine machine = balance.machine();
    Bands<Start> b =
        state.map(
            s -> start(balance, s.load(), balance.forwardThrust(s.flows().fan(), s.suction())));
    return new Launch(
        b.of(Start::grip),
        b.value().lifts(),
        b.of(Start::until),
        machine.running().topSpeed(),
        b.of(Start::time),
        b.of(Start::distance),
        start(balance, new double[3], 0).grip());
  }

  /**
   * A start with a load of suction.
   *
   * @param suction {N, Σ N x, Σ N y}
   * @param thrust forwards, N
   */
  static Start start(PlenumBalance balance, double[] suction, double thrust) {
    Machine machine = balance.machine();
    Wheels wheels = balance.wheels();
    Load load = machine.load();
    double weight = load.mass() * Wheels.GRAVITY;
    double[] still = {
      suction[0] + weight, suction[1] + weight * load.x(), suction[2] + weight * load.y()
    };
    double[] shift = {0, -load.mass() * load.height(), 0};
    List<Axle> axles = machine.running().axles();
    double[] n = wheels.byAxle(wheels.bonded(still));
    double[] c = wheels.byAxle(wheels.bonded(shift));
    double driven = 0;
    double gain = 0;
    for (int i = 0; i < n.length; i++) {
      if (axles.get(i).driven()) {
        driven += n[i];
        gain += c[i];
      }
    }
    double mu = machine.running().peakFriction();
    double a = (mu * driven + thrust) / (load.mass() - mu * gain);
    boolean lifts = false;
    if (!(a > 0) || !Double.isFinite(a)) {
      a = Double.POSITIVE_INFINITY; // load transfer outruns slip: only lift ends it
    }
    for (int i = 0; i < n.length; i++) {
      if (c[i] < 0 && n[i] / -c[i] < a) {
        a = Math.max(0, n[i] / -c[i]);
        lifts = true;
      }
    }
    return timed(
        a, lifts, load.mass(), machine.running().drivePower(), machine.running().topSpeed());
  }

  /** Time and distance to a speed, grip first and then power. */
  static Start timed(double a, boolean lifts, double mass, double power, double speed) {
    if (!(a > 0)) {
      return new Start(0, lifts, 0, 0, 0);
    }
    double until = Math.min(speed, power / (mass * a));
    double time = until / a + mass * (speed * speed - until * until) / (2 * power);
    double distance =
        until * until / (2 * a)
            + mass * (speed * speed * speed - until * until * until) / (3 * power);
    return new Start(a, lifts, until, time, distance);
  }

  /** Launch of the slower of two states, at rest or travelling; null when there is none. */
  static @Nullable Launch slower(
      PlenumBalance balance,
      @Nullable Bands<PlenumState> rest,
      @Nullable Bands<PlenumState> moving) {
    if (rest == null) {
      return null;
    }
    boolean useMoving = moving != null && moving.value().parts().sum() < rest.value().parts().sum();
    return of(balance, useMoving && moving != null ? moving : rest);
  }
}
