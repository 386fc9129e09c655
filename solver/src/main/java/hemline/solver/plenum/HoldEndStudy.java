package hemline.solver.plenum;

import hemline.shared.fluid.Air;
import hemline.shared.vehicle.Fan;
import hemline.shared.vehicle.Load;
import hemline.shared.vehicle.Machine;
import java.util.ArrayList;
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

  /** Least share of the friction that is tried. */
  private static final double LEAST_GRIP = 0.001;

  /** Least share of the fan's speed that is tried. */
  private static final double SLOWEST = 0.1;

  private final PlenumBalance balance;
  private final Machine machine;
  private final double asked;

  private HoldEndStudy(PlenumBalance balance) {
    this.balance = balance;
    machine = balance.machine();
    asked = machine.duty().terms().safetyFactor();
  }

  /** Ends of those holds that hold as estimated. */
  static List<HoldEnd> of(PlenumBalance balance, List<Hold> holds) {
    HoldEndStudy study = new HoldEndStudy(balance);
    return holds.parallelStream()
        .filter(h -> !h.place().name().equals("level") && h.margins().least() != null)
        .filter(h -> h.margins().least() != null && h.margins().least().value() > study.asked)
        .map(study::end)
        .toList();
  }

  private HoldEnd end(Hold h) {
    Tilts tilt = new Tilts(h);
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
    Double friction = leastFriction(h);
    return new HoldEnd(
        h.place().name(),
        h.place().angle(),
        new HoldEnd.LeastFan(slowest * fan.speed(), volts > 0 ? slowest * volts : null),
        wider < WIDEST ? wider : null,
        new HoldEnd.LeastGrip(friction, friction == null ? List.of() : SurfaceGrip.over(friction)),
        heavier * load.mass(),
        new HoldEnd.Times(plenumTime(h, slowest), rotorTime(h, slowest)));
  }

  /** Slip goes with friction, unless a brake yields first. */
  private @Nullable Double leastFriction(Hold h) {
    double peak = machine.running().peakFriction();
    if (h.margins().slip() == null) {
      return null;
    }
    if (machine.running().axles().stream().noneMatch(a -> Double.isFinite(a.brakeForce()))) {
      return peak * asked / h.margins().slip().value();
    }
    return peak
        * last(
            1, LEAST_GRIP, f -> machine.withRunning(machine.running().gripping(f)), new Tilts(h));
  }

  /** The last value from a good one towards another at which the margin suffices. */
  private double last(double good, double towards, DoubleFunction<Machine> changed, Tilts tilt) {
    if (tilt.suffices(changed.apply(towards))) {
      return towards;
    }
    double bears = good;
    double fails = towards;
    for (int k = 0; k < STEPS; k++) {
      double middle = 0.5 * (bears + fails);
      if (tilt.suffices(changed.apply(middle))) {
        bears = middle;
      } else {
        fails = middle;
      }
    }
    return bears;
  }

  /** The tilts at which a hold is asked: its own, or all where the worst of all is. */
  private final class Tilts {
    private final List<Double> tilts = new ArrayList<>();

    Tilts(Hold h) {
      tilts.add(h.place().angle());
      for (int k = 0; h.place().name().equals("worst") && k <= HoldStudy.TILTS; k++) {
        tilts.add(Math.PI * k / HoldStudy.TILTS);
      }
    }

    /** True when a changed machine holds at all of them; one that failed is asked first again. */
    boolean suffices(Machine changed) {
      HoldSearch search = HoldSearch.whole(new HoldStatics(balance.changed(changed), true));
      for (int k = 0; k < tilts.size(); k++) {
        if (search.among(search.headings(tilts.get(k))).least() < asked) {
          tilts.add(0, tilts.remove(k));
          return false;
        }
      }
      return true;
    }
  }

  private @Nullable PlenumState state(Hold h) {
    HoldStatics statics = new HoldStatics(balance, true);
    return balance.settled(
        statics.stand(
            new Attitude(h.place().angle(), Math.PI - h.place().noseAngle()), Side.VALUE));
  }

  private double plenumTime(Hold h, double slowest) {
    PlenumState s = state(h);
    if (s == null) {
      return 0;
    }
    double volume = balance.area() * machine.floor().ceilingHeight();
    double filling = volume / (Air.HEAT_RATIO * machine.duty().air().pressure());
    return 2 * filling * s.suction() * (1 - slowest) / s.flows().fan();
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
      if (search.at(middle).least() >= balance.machine().duty().terms().safetyFactor()) {
        holds = middle;
      } else {
        slides = middle;
      }
    }
    return holds;
  }
}
