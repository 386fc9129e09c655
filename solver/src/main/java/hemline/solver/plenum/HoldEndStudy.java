package hemline.solver.plenum;

import hemline.shared.fluid.Air;
import hemline.shared.vehicle.Fan;
import hemline.shared.vehicle.Load;
import hemline.shared.vehicle.Machine;
import java.util.List;
import java.util.function.DoubleFunction;
import org.jspecify.annotations.Nullable;

/**
 * How far a hold is from its end, and how long it lasts once the fan stops.
 *
 * <p>A rotor of inertia J whose motor has no power runs down by its own load, P ~ ω³: J ω dω/dt =
 * −P₀ (ω/ω₀)³, so ω₀/ω = 1 + t P₀ / (J ω₀²). If the fan stopped at once the plenum of volume V
 * would fill through the leaks, q ~ √Δp: V / (κ p) dΔp/dt = −q, so t = 2 V Δp₀ (1 − √(Δp/Δp₀)) / (κ
 * p q₀).
 */
final class HoldEndStudy {
  private static final int STEPS = 14;

  /** Widest opening of all gaps that is tried, m. */
  private static final double WIDEST = 5e-3;

  /** Largest payload over the mass that is tried. */
  private static final double HEAVIEST = 10;

  /** Least share of the fan's speed that is tried. */
  private static final double SLOWEST = 0.1;

  private final PlenumBalance balance;
  private final Machine machine;
  private final double asked;

  private HoldEndStudy(PlenumBalance balance) {
    this.balance = balance;
    machine = balance.machine();
    asked = machine.terms().safetyFactor();
  }

  /** Ends of those holds that hold as estimated. */
  static List<HoldEnd> of(PlenumBalance balance, List<Hold> holds) {
    HoldEndStudy study = new HoldEndStudy(balance);
    return holds.parallelStream()
        .filter(h -> !h.place().equals("level") && h.margin() != null)
        .filter(h -> h.margin() != null && h.margin().value() > study.asked)
        .map(study::end)
        .toList();
  }

  private HoldEnd end(Hold h) {
    double tilt = h.angle();
    Fan fan = machine.fan();
    Load load = machine.load();
    double slowest = last(1, SLOWEST, f -> machine.withFan(fan.atSpeed(f * fan.speed())), tilt);
    double wider = last(0, WIDEST, d -> machine.withFloor(machine.floor().withGapsWider(d)), tilt);
    double heavier =
        last(
            0,
            HEAVIEST,
            f ->
                machine.withLoad(
                    new Load((1 + f) * load.mass(), load.x(), load.y(), load.height())),
            tilt);
    double volts = machine.power().batteryVoltage();
    return new HoldEnd(
        h.place(),
        tilt,
        slowest * fan.speed(),
        volts > 0 ? slowest * volts : null,
        wider < WIDEST ? wider : null,
        h.slip() == null ? null : machine.running().peakFriction() * asked / h.slip().value(),
        heavier * load.mass(),
        plenumTime(h, slowest),
        rotorTime(h, slowest));
  }

  /** The last value from a good one towards another at which the margin suffices. */
  private double last(double good, double towards, DoubleFunction<Machine> changed, double tilt) {
    if (suffices(changed.apply(towards), tilt)) {
      return towards;
    }
    double bears = good;
    double fails = towards;
    for (int k = 0; k < STEPS; k++) {
      double middle = 0.5 * (bears + fails);
      if (suffices(changed.apply(middle), tilt)) {
        bears = middle;
      } else {
        fails = middle;
      }
    }
    return bears;
  }

  private boolean suffices(Machine changed, double tilt) {
    HoldSearch search = HoldSearch.whole(new HoldStatics(balance.changed(changed), true));
    return search.among(search.headings(tilt)).least() >= asked;
  }

  private @Nullable PlenumState state(Hold h) {
    HoldStatics statics = new HoldStatics(balance, true);
    return balance.settled(
        statics.stand(new Attitude(h.angle(), Math.PI - h.noseAngle()), Side.VALUE));
  }

  private double plenumTime(Hold h, double slowest) {
    PlenumState s = state(h);
    if (s == null) {
      return 0;
    }
    double volume = balance.area() * machine.floor().ceilingHeight();
    double filling = volume / (Air.HEAT_RATIO * machine.air().pressure());
    return 2 * filling * s.suction() * (1 - slowest) / s.fanFlow();
  }

  private @Nullable Double rotorTime(Hold h, double slowest) {
    double inertia = machine.fan().rotorInertia();
    PlenumState s = state(h);
    if (!(inertia > 0) || s == null) {
      return null;
    }
    double omega = 2 * Math.PI * machine.fan().speed();
    return inertia * omega * omega / Settling.shaftPower(balance, s) * (1 / slowest - 1);
  }

  /**
   * Steepest slope on which the machine holds with the fan off and no power, in any heading, rad.
   */
  static double steepestWithoutFan(PlenumBalance balance) {
    HoldSearch search =
        new HoldSearch(new HoldStatics(balance, false), (a, side, like) -> PlenumState.FAN_OFF);
    double holds = 0;
    double slides = 0.5 * Math.PI;
    for (int k = 0; k < 2 * STEPS; k++) {
      double middle = 0.5 * (holds + slides);
      if (search.at(middle).least() >= balance.machine().terms().safetyFactor()) {
        holds = middle;
      } else {
        slides = middle;
      }
    }
    return holds;
  }
}
