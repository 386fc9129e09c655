package hemline.solver.plenum;

import hemline.shared.result.Estimate;
import hemline.shared.vehicle.Machine;
import org.jspecify.annotations.Nullable;

/**
 * Grip and power while the machine moves, without rolling resistance and air drag.
 *
 * <p>Climbing nose up, only driven wheels push: grip is μ Σ N_driven over m g sin α, and power
 * allows v = P / (m g sin α). Braking and turning load the wheels like a pull of m a along the
 * ground at the centre of gravity, so the margins of {@link HoldStatics} under a pull of one m/s²
 * are the accelerations themselves; loads of the wheels move with a, which is found by going
 * between a and the loads.
 */
final class ManoeuvreStudy {
  private static final int ROUNDS = 60;

  private final PlenumBalance balance;
  private final Machine machine;
  private final HoldStatics statics;

  private ManoeuvreStudy(PlenumBalance balance) {
    this.balance = balance;
    machine = balance.machine();
    statics = new HoldStatics(balance, true);
  }

  static Manoeuvres of(PlenumBalance balance, Bands<PlenumState> rest) {
    ManoeuvreStudy s = new ManoeuvreStudy(balance);
    double slope = balance.machine().duty().slope();
    double top = balance.machine().running().topSpeed();
    Estimate braking = rest.of(p -> s.most(0, 0, p).value());
    Bands<PlenumState> down = s.settled(new Attitude(slope, 0));
    Most turning = s.turning(rest.value());
    return new Manoeuvres(
        s.climb(slope),
        s.climb(0.5 * Math.PI),
        new Manoeuvres.Braking(
            braking,
            rest.of(p -> top * top / (2 * Math.max(1e-6, s.most(0, 0, p).value()))),
            down == null ? null : down.of(p -> s.most(slope, 0, p).value())),
        new Manoeuvres.Turning(rest.of(p -> s.turning(p).value()), turning.endsIn()));
  }

  /** A largest acceleration and what ends it. */
  private record Most(double value, String endsIn) {}

  private Most turning(PlenumState p) {
    Most left = most(0, 0.5 * Math.PI, p);
    Most right = most(0, -0.5 * Math.PI, p);
    return left.value() < right.value() ? left : right;
  }

  private @Nullable Bands<PlenumState> settled(Attitude a) {
    PlenumState v = balance.settled(statics.stand(a, Side.VALUE));
    return v == null
        ? null
        : new Bands<>(
            v,
            balance.settled(statics.stand(a, Side.LOW)),
            balance.settled(statics.stand(a, Side.HIGH)),
            0,
            0);
  }

  private Manoeuvres.Climb climb(double tilt) {
    return new Manoeuvres.Climb(grip(tilt), speed(tilt));
  }

  private @Nullable Estimate grip(double tilt) {
    Bands<PlenumState> b = settled(Attitude.noseUp(tilt));
    double pull = machine.load().mass() * Wheels.GRAVITY * Math.sin(tilt);
    if (b == null || !(pull > 1e-9)) {
      return null;
    }
    return b.of(
        s -> {
          double[] axles = statics.margins(Attitude.noseUp(tilt), s).loads().axles();
          double driven = 0;
          for (int i = 0; i < axles.length; i++) {
            driven += machine.running().axles().get(i).driven() ? Math.max(0, axles[i]) : 0;
          }
          return machine.running().peakFriction() * driven / pull;
        });
  }

  private double speed(double tilt) {
    double pull = machine.load().mass() * Wheels.GRAVITY * Math.sin(tilt);
    double top = machine.running().topSpeed();
    return pull > 0 ? Math.min(top, machine.running().drivePower() / pull) : top;
  }

  /**
   * Largest acceleration against which the wheels still hold: weight on a slope and inertia m a
   * both pull along the ground in one direction, at the centre of gravity.
   *
   * @param tilt of the ground, rad
   * @param away direction in which inertia pulls, seen in the machine
   */
  private Most most(double tilt, double away, PlenumState p) {
    double g = Wheels.GRAVITY;
    double low = 0;
    double high = 100 * g;
    String ends = "slip";
    for (int k = 0; k < ROUNDS; k++) {
      double a = 0.5 * (low + high);
      HoldStatics.Margins m =
          statics.pulled(
              new Attitude(tilt, away), machine.load().mass() * (g * Math.sin(tilt) + a), p);
      if (m.least() >= 1) {
        low = a;
      } else {
        high = a;
        ends = HoldStudy.limitedBy(m);
      }
    }
    return new Most(low, ends);
  }
}
