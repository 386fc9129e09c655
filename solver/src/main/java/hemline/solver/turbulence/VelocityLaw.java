package hemline.solver.turbulence;

import java.util.function.DoubleUnaryOperator;

/**
 * Law of the wall for the velocity, u⁺ of y⁺, from the constant-stress layer of a closure: a table
 * evenly spaced in ln y⁺ from 0.5 to 1000, the sublayer below and a logarithm above.
 */
final class VelocityLaw {
  private static final double FIRST = 0.5;
  private static final double LAST = 1000;
  private static final double KAPPA = 0.41;

  /** Points of a table, and steps of the integral between two of them. */
  private static final int POINTS = 81;

  private static final int STEPS = 200;

  private final double[] u;
  private final double perPoint;

  /**
   * A law from its table.
   *
   * @param u u⁺ at points evenly spaced in ln y⁺, from {@link #FIRST} to {@link #LAST}
   */
  VelocityLaw(double[] u) {
    this.u = u.clone();
    perPoint = Math.log(LAST / FIRST) / (u.length - 1);
  }

  /**
   * The law of a layer whose eddy viscosity is known: u⁺ = ∫ dy⁺ / (1 + ν_t / ν) under constant
   * stress.
   *
   * @param ratio eddy viscosity over viscosity at y⁺
   */
  static VelocityLaw of(DoubleUnaryOperator ratio) {
    double[] u = new double[POINTS];
    double sum = 0;
    double from = 0;
    for (int p = 0; p < POINTS; p++) {
      double to = FIRST * Math.pow(LAST / FIRST, p / (POINTS - 1.0));
      double step = (to - from) / STEPS;
      for (int k = 0; k < STEPS; k++) {
        sum += step / (1 + ratio.applyAsDouble(from + (k + 0.5) * step));
      }
      from = to;
      u[p] = sum;
    }
    return new VelocityLaw(u);
  }

  /** u⁺ at y⁺. */
  double velocity(double y) {
    if (y < FIRST) {
      return y;
    }
    if (y > LAST) {
      return u[u.length - 1] + Math.log(y / LAST) / KAPPA;
    }
    double s = Math.log(y / FIRST) / perPoint;
    int i = Math.max(0, Math.min(u.length - 2, (int) s));
    double t = s - i;
    return (1 - t) * u[i] + t * u[i + 1];
  }

  /** du⁺/dy⁺ at y⁺, over a tenth of it to either side. */
  double slope(double y) {
    return y < FIRST ? 1 : (velocity(1.1 * y) - velocity(0.9 * y)) / (0.2 * y);
  }

  /**
   * Distance in wall units at which u⁺ y⁺ equals a Reynolds number.
   *
   * @param reynolds relative speed times distance over viscosity, not negative
   * @param guess start, for instance the last answer
   */
  double distance(double reynolds, double guess) {
    if (reynolds <= FIRST * FIRST) {
      return Math.sqrt(reynolds);
    }
    // Newton on ln(u⁺ y⁺) as a function of ln y⁺: the slope lies between 1 and 2
    double y = Math.max(FIRST, guess);
    double target = Math.log(reynolds);
    for (int i = 0; i < 12; i++) {
      double at = velocity(y);
      double slope = 1 + (velocity(1.02 * y) - at) / (0.02 * at);
      double step = (target - Math.log(at * y)) / slope;
      y *= Math.exp(Math.max(-1, Math.min(1, step)));
      if (Math.abs(step) < 1e-6) {
        break;
      }
    }
    return y;
  }
}
