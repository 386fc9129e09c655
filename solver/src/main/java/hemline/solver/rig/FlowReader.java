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
  private final List<RigReading> taped;
  private final boolean relative;

  /**
   * A reader.
   *
   * @throws InputException if a reading has neither a flow nor a place on the fan's curve
   */
  FlowReader(Rig rig) throws InputException {
    this.rig = rig;
    this.taped = rig.of(RigReading.Kind.TAPED);
    this.relative =
        rig.fan().curve() == null && rig.readings().stream().allMatch(r -> Double.isNaN(r.flow()));
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
    FanCurve fan = rig.fan().curve();
    if (relative) {
      double shut = taped.stream().mapToDouble(RigReading::suction).average().orElse(0);
      if (r.kind() == RigReading.Kind.LIP && !(r.suction() < shut)) {
        problems.add(
            new Problem(
                "rig.flow",
                at,
                "there is no flow; read a meter, name a fan curve, or, at one setting of the"
                    + " blower, read the suction with the lip taped shut too, which is above this"
                    + " one"));
      }
      return;
    }
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

  double gap(RigReading r, Errors e, int place) {
    return r.gap() * (1 + e.of(Errors.Shared.GAP_SHARE))
        + e.of(Errors.Shared.GAP_ZERO)
        + e.of(place, Errors.Own.GAP);
  }

  double suction(RigReading r, Errors e, int place) {
    return sharedSuction(r, e) + e.of(place, Errors.Own.SUCTION);
  }

  /** Suction once the errors that all readings share are taken off. */
  double sharedSuction(RigReading r, Errors e) {
    return r.suction() * (1 + e.of(Errors.Shared.SUCTION_SHARE)) + e.of(Errors.Shared.SUCTION_ZERO);
  }

  double lipLength(Errors e) {
    return rig.lipLength() * (1 + e.of(Errors.Shared.LIP_LENGTH_SHARE))
        + e.of(Errors.Shared.LIP_LENGTH_ZERO);
  }

  double barometer(RigReading r, Errors e) {
    return r.air().barometer() + e.of(Errors.Shared.BAROMETER);
  }

  /** Density of the ambient air, kg/m³. */
  double density(RigReading r, Errors e) {
    return Air.density(r.air().temperature() + e.of(Errors.Shared.TEMPERATURE), barometer(r, e));
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
    FanCurve fan = rig.fan().curve();
    if (fan == null) {
      return relative(r, suction, e);
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

  /**
   * Flow in a unit of its own where suction alone was read: the pressure of a blower at one setting
   * falls from that with the lip taped as about the square of its flow (hose and rotor lose so;
   * common practice, no source).
   */
  private double relative(RigReading r, double suction, Errors e) {
    if (r.kind() == RigReading.Kind.TAPED) {
      return 0;
    }
    double shut = taped.stream().mapToDouble(t -> sharedSuction(t, e)).average().orElse(Double.NaN);
    double exponent = 2 + e.of(Errors.Shared.BLOWER_EXPONENT);
    return Math.pow(Math.max(0, shut - suction), 1 / exponent);
  }

  /** True where no flow is known, only how it changes. */
  boolean relative() {
    return relative;
  }

  /** Pressure of the fan over that of its curve, by the fan laws. */
  private static double pressureFactor(FanCurve fan, RigReading r, double speed, double suction) {
    double density =
        Air.density(r.air().temperature(), r.air().barometer())
            * (1 - suction / r.air().barometer());
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
