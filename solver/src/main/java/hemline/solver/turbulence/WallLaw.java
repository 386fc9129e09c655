package hemline.solver.turbulence;

/**
 * The constant-stress wall layer of the k-ω SST closure in wall units.
 *
 * <p>Between the sublayer and the logarithmic layer the values are those of the closure's own
 * one-dimensional solution (500 cells, first at y⁺ = 0.001, up to y⁺ = 5000), kept at 41 points
 * evenly spaced in ln y⁺ from 0.5 to 1000; below the sublayer and above the logarithmic limits take
 * over. Tables of this kind: Kalitzin, Medic, Iaccarino & Durbin 2005, J. Comput. Phys. 204, 265.
 */
final class WallLaw {
  private static final double FIRST = 0.5;
  private static final double LAST = 1000;
  private static final double KAPPA = 0.41;

  private static final double[] U = {
    0.50002, 0.60468, 0.73122, 0.88421, 1.0692, 1.293, 1.5636, 1.8906, 2.2854, 2.7615, 3.3321,
    4.0084, 4.7901, 5.658, 6.5722, 7.4892, 8.3797, 9.2341, 10.041, 10.795, 11.501, 12.17, 12.807,
    13.417, 14.005, 14.573, 15.126, 15.665, 16.192, 16.71, 17.22, 17.724, 18.221, 18.714, 19.203,
    19.689, 20.173, 20.654, 21.135, 21.615, 22.096
  };

  /** ω⁺ y⁺. */
  private static final double[] OMEGA_Y = {
    160, 132.31, 109.41, 90.478, 74.82, 61.872, 51.164, 42.31, 34.988, 29.33, 25.043, 21.8, 19.452,
    17.79, 16.557, 15.551, 14.666, 13.831, 13.038, 12.314, 11.69, 11.155, 10.698, 10.31, 9.9817,
    9.7041, 9.4694, 9.271, 9.1035, 8.9619, 8.8425, 8.7418, 8.6574, 8.5872, 8.5295, 8.4834, 8.4484,
    8.4248, 8.4135, 8.4169, 8.4387
  };

  /** Mean production of k between the wall and y⁺, in wall units. */
  private static final double[] PRODUCTION = {
    1.8067e-07,
    4.8825e-07,
    1.3183e-06,
    3.5567e-06,
    9.6017e-06,
    2.5935e-05,
    7.0028e-05,
    0.00018871,
    0.00050619,
    0.0013462,
    0.0034637,
    0.0084942,
    0.019131,
    0.037996,
    0.064586,
    0.094226,
    0.12098,
    0.14111,
    0.15327,
    0.15787,
    0.15633,
    0.15045,
    0.14169,
    0.13122,
    0.11993,
    0.10844,
    0.097217,
    0.086531,
    0.076563,
    0.067401,
    0.05908,
    0.051594,
    0.044912,
    0.038983,
    0.033752,
    0.029158,
    0.02514,
    0.021637,
    0.018592,
    0.015953,
    0.013672
  };

  private static final double PER_POINT = Math.log(LAST / FIRST) / (U.length - 1);

  private WallLaw() {}

  private static double at(double[] table, double y) {
    double s = Math.log(y / FIRST) / PER_POINT;
    int i = Math.max(0, Math.min(U.length - 2, (int) s));
    double t = s - i;
    return (1 - t) * table[i] + t * table[i + 1];
  }

  /** u⁺ at y⁺. */
  static double velocity(double y) {
    if (y < FIRST) {
      return y;
    }
    return y > LAST ? U[U.length - 1] + Math.log(y / LAST) / KAPPA : at(U, y);
  }

  /** ω⁺ at y⁺. */
  static double omega(double y) {
    if (y < FIRST) {
      return 80 / (y * y);
    }
    return (y > LAST ? OMEGA_Y[OMEGA_Y.length - 1] : at(OMEGA_Y, y)) / y;
  }

  /** Mean production of k⁺ between the wall and y⁺. */
  static double meanProduction(double y) {
    if (y < FIRST) {
      double r = y / FIRST;
      return PRODUCTION[0] * r * r * r * r * r;
    }
    if (y > LAST) {
      // ∫ dy / (κ y) carried on
      return (PRODUCTION[PRODUCTION.length - 1] * LAST + Math.log(y / LAST) / KAPPA) / y;
    }
    return at(PRODUCTION, y);
  }

  /**
   * Distance in wall units at which u⁺ y⁺ equals a Reynolds number.
   *
   * @param reynolds relative speed times distance over viscosity, not negative
   * @param guess start, for instance the last answer
   */
  static double distance(double reynolds, double guess) {
    if (reynolds <= FIRST * FIRST) {
      return Math.sqrt(reynolds);
    }
    // Newton on ln(u⁺ y⁺) as a function of ln y⁺: the slope lies between 1 and 2
    double y = Math.max(FIRST, guess);
    double target = Math.log(reynolds);
    for (int i = 0; i < 12; i++) {
      double u = velocity(y);
      double slope = 1 + (velocity(1.02 * y) - u) / (0.02 * u);
      double step = (target - Math.log(u * y)) / slope;
      y *= Math.exp(Math.max(-1, Math.min(1, step)));
      if (Math.abs(step) < 1e-6) {
        break;
      }
    }
    return y;
  }
}
