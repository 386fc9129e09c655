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

  /**
   * Source of k⁺ that keeps a wall cell with its centre at y⁺ in balance: mean production less mean
   * destruction up to 2 y⁺ plus the destruction that the cell's own values give. In the sublayer,
   * where the two means cancel to nothing, the mean production alone.
   */
  private static final double[] PRODUCTION = {
    6.776e-06, 1.833e-05, 4.942e-05, 0.0001332, 0.0003578, 0.0009577, 0.002498, 0.006247, 0.010423,
    0.025616, 0.052134, 0.089471, 0.13366, 0.17703, 0.2094, 0.22329, 0.21888, 0.20139, 0.17678,
    0.15039, 0.12571, 0.104, 0.085514, 0.070071, 0.057325, 0.046878, 0.03834, 0.031374, 0.025696,
    0.021064, 0.017282, 0.014192, 0.011666, 0.0095976, 0.0079024, 0.0065125, 0.0053723, 0.0044362,
    0.0036677, 0.0030373, 0.0025205
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

  /** Source of k⁺ in a wall cell with its centre at y⁺. */
  static double production(double y) {
    if (y < FIRST) {
      double r = y / FIRST;
      return PRODUCTION[0] * r * r * r * r * r;
    }
    // 1 / (κ y) in the logarithmic layer
    return y > LAST ? PRODUCTION[PRODUCTION.length - 1] * LAST / y : at(PRODUCTION, y);
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
