package hemline.solver.rig;

import hemline.shared.fluid.Air;
import hemline.shared.problem.InputException;
import hemline.shared.problem.Problem;
import hemline.shared.rig.Rig;
import hemline.shared.rig.RigReading;
import hemline.shared.units.NumberText;
import hemline.shared.vehicle.FanCurve;
import java.util.ArrayList;
import java.util.List;

/** Suction, air and flow of a reading once the errors of the instruments are taken off. */
final class FlowReader {
  private static final int HALVINGS = 60;

  private final Rig rig;

  /**
   * A reader.
   *
   * @throws InputException if a reading has neither a flow nor a place on the fan's curve
   */
  FlowReader(Rig rig) throws InputException {
    this.rig = rig;
    List<Problem> problems = new ArrayList<>();
    for (RigReading r : rig.readings()) {
      if (r.kind() != RigReading.Kind.DECAY && Double.isNaN(r.flow())) {
        place(r, problems);
      }
    }
    if (!problems.isEmpty()) {
      throw new InputException(problems);
    }
  }

  private void place(RigReading r, List<Problem> problems) {
    String at = rig.name() + ", line " + r.line();
    FanCurve fan = rig.fan();
    if (fan == null) {
      problems.add(
          new Problem(
              "rig.flow", at, "there is no flow; read a meter, or name a fan curve and its speed"));
      return;
    }
    double most = fan.peakPressure() * pressureFactor(fan, r, r.fanSpeed(), r.suction());
    if (r.suction() > most) {
      problems.add(
          new Problem(
              "rig.fan",
              at,
              "the fan reaches "
                  + NumberText.pressure(most)
                  + " at this speed by its curve, less than the suction read; check the speed and"
                  + " the curve"));
    }
  }

  /** True where all flows come from a meter. */
  boolean metered() {
    return rig.readings().stream().noneMatch(r -> Double.isNaN(r.flow()));
  }

  double gap(RigReading r, Errors e, int place) {
    return r.gap() * (1 + e.of(Errors.Shared.GAP_SHARE))
        + e.of(Errors.Shared.GAP_ZERO)
        + e.of(place, Errors.Own.GAP);
  }

  double suction(RigReading r, Errors e, int place) {
    return r.suction() * (1 + e.of(Errors.Shared.SUCTION_SHARE))
        + e.of(Errors.Shared.SUCTION_ZERO)
        + e.of(place, Errors.Own.SUCTION);
  }

  double lipLength(Errors e) {
    return rig.lipLength() * (1 + e.of(Errors.Shared.LIP_LENGTH_SHARE))
        + e.of(Errors.Shared.LIP_LENGTH_ZERO);
  }

  double barometer(RigReading r, Errors e) {
    return r.barometer() + e.of(Errors.Shared.BAROMETER);
  }

  /** Density of the ambient air, kg/m³. */
  double density(RigReading r, Errors e) {
    return Air.density(r.temperature() + e.of(Errors.Shared.TEMPERATURE), barometer(r, e));
  }

  /**
   * Volume flow out of the box as ambient air, m³/s.
   *
   * @param suction that the fan works against, Pa
   */
  double flow(RigReading r, double suction, Errors e, int place) {
    if (!Double.isNaN(r.flow())) {
      return r.flow() * (1 + e.of(Errors.Shared.FLOW_SHARE))
          + e.of(Errors.Shared.FLOW_ZERO)
          + e.of(place, Errors.Own.FLOW);
    }
    FanCurve fan = rig.fan();
    if (fan == null) {
      return Double.NaN;
    }
    double speed =
        r.fanSpeed() * (1 + e.of(Errors.Shared.FAN_SPEED_SHARE))
            + e.of(Errors.Shared.FAN_SPEED_ZERO);
    double inBox = density(r, e) * (1 - suction / barometer(r, e));
    double onCurve = suction * fan.density() / inBox * square(fan.speed() / speed);
    return atPressure(fan, onCurve)
        * (speed / fan.speed())
        * (1 + e.of(Errors.Shared.FAN_CURVE))
        * (inBox / density(r, e));
  }

  /** Pressure of the fan over that of its curve, by the fan laws. */
  private static double pressureFactor(FanCurve fan, RigReading r, double speed, double suction) {
    double density = Air.density(r.temperature(), r.barometer()) * (1 - suction / r.barometer());
    return density / fan.density() * square(speed / fan.speed());
  }

  /** Flow on the falling side of the curve, by halving; its ends where the pressure lies beyond. */
  private static double atPressure(FanCurve fan, double pressure) {
    double low = fan.peakFlow();
    double high = fan.largestFlow();
    for (int k = 0; k < HALVINGS; k++) {
      double middle = 0.5 * (low + high);
      if (fan.pressureAt(middle) > pressure) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return 0.5 * (low + high);
  }

  private static double square(double x) {
    return x * x;
  }
}
