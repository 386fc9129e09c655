package hemline.solver.turbulence;

/**
 * The constant-stress wall layer of the k-ω SST closure in wall units.
 *
 * <p>Between the sublayer and the logarithmic layer the values are those of the closure's own
 * one-dimensional solution, kept at 41 points evenly spaced in ln y⁺ from 0.5 to 1000 (the test of
 * this class solves it anew and holds every digit); below the sublayer and above the logarithmic
 * limits take over. Tables of this kind: Kalitzin, Medic, Iaccarino and Durbin 2005, J. Comput.
 * Phys. 204, 265.
 */
final class WallLaw {
  private static final double FIRST = 0.5;
  private static final double LAST = 1000;

  private static final double[] U = {
    0.5, 0.60464, 0.73117, 0.88419, 1.0692, 1.293, 1.5635, 1.8905, 2.2854, 2.7613, 3.3319, 4.008,
    4.7897, 5.6573, 6.5711, 7.4877, 8.3779, 9.232, 10.039, 10.793, 11.498, 12.167, 12.804, 13.414,
    14.002, 14.57, 15.123, 15.662, 16.189, 16.708, 17.218, 17.721, 18.218, 18.711, 19.2, 19.686,
    20.169, 20.65, 21.131, 21.61, 22.09
  };

  /** ω⁺ y⁺. */
  private static final double[] OMEGA_Y = {
    160, 132.31, 109.41, 90.478, 74.82, 61.872, 51.164, 42.31, 34.988, 29.26, 24.995, 21.766,
    19.429, 17.773, 16.544, 15.541, 14.657, 13.825, 13.032, 12.308, 11.686, 11.151, 10.695, 10.307,
    9.9791, 9.7017, 9.4672, 9.269, 9.1015, 8.9599, 8.8404, 8.7397, 8.6551, 8.5846, 8.5265, 8.4798,
    8.4441, 8.4193, 8.4067, 8.4082, 8.4276
  };

  /**
   * Source of k⁺ that keeps a wall cell with its centre at y⁺ in balance: mean production less mean
   * destruction up to 2 y⁺ plus the destruction that the cell's own values give. Up to y⁺ = 2,
   * where the two means cancel to nothing, the mean production alone.
   */
  private static final double[] PRODUCTION = {
    6.7766e-6, 1.8299e-5, 4.9395e-5, 0.0001332, 3.5835e-4, 9.5854e-4, 0.0025016, 0.006258, 0.010587,
    0.02565, 0.052236, 0.089612, 0.13381, 0.17716, 0.20945, 0.22329, 0.21885, 0.20134, 0.17673,
    0.15035, 0.12569, 0.10399, 0.085512, 0.070076, 0.057336, 0.046888, 0.038351, 0.031387, 0.025707,
    0.021074, 0.017292, 0.014201, 0.011673, 0.0096036, 0.0079075, 0.0065165, 0.005375, 0.0044379,
    0.0036685, 0.003037, 0.0025192
  };

  private static final double PER_POINT = Math.log(LAST / FIRST) / (OMEGA_Y.length - 1);

  /** u⁺. */
  static final VelocityLaw VELOCITY = new VelocityLaw(U);

  private WallLaw() {}

  private static double at(double[] table, double y) {
    double s = Math.log(y / FIRST) / PER_POINT;
    int i = Math.max(0, Math.min(U.length - 2, (int) s));
    double t = s - i;
    return (1 - t) * table[i] + t * table[i + 1];
  }

  /** ω⁺ at y⁺. */
  static double omega(double y) {
    if (y < FIRST) {
      // 6 / (β₁ y²) with β₁ = 0.075: Wilcox 1988, AIAA J. 26, 1299, as in Menter 1994, AIAA J. 32,
      // 1598
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
}
