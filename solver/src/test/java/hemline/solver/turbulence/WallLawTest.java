package hemline.solver.turbulence;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The tables of the wall law against the layer they come from. */
class WallLawTest {
  private static final int POINTS = 41;
  private static final WallLayer LAYER = new WallLayer(100);

  /** Place of a point of the table, y⁺. */
  private static double place(int point) {
    return 0.5 * Math.pow(2000, point / 40.0);
  }

  /** Five digits, with a millionth for the interpolation at a point. */
  private static void assertPrinted(double table, double layer, int point) {
    double unit = Math.pow(10, Math.floor(Math.log10(layer)) - 4);
    assertThat(table).as("point %d", point).isCloseTo(layer, within(0.5 * unit + 1e-6 * layer));
  }

  @Test
  void holdsTheLayerDigitByDigit() {
    for (int p = 0; p < POINTS; p++) {
      int node = LAYER.node(p);
      double y = place(p);
      assertThat(LAYER.y[node]).isCloseTo(y, within(1e-9 * y));
      assertPrinted(WallLaw.VELOCITY.velocity(y), LAYER.u[node], p);
      assertPrinted(WallLaw.omega(y) * y, LAYER.omega[node] * y, p);
      assertPrinted(WallLaw.production(y), LAYER.cellProduction(node), p);
    }
  }

  /** Half as many nodes give the same digits but the last. */
  @Test
  void theLayerDoesNotDependOnItsNodes() {
    WallLayer coarse = new WallLayer(50);
    for (int p = 0; p < POINTS; p++) {
      int a = coarse.node(p);
      int b = LAYER.node(p);
      assertThat(coarse.u[a] / LAYER.u[b]).isCloseTo(1, within(1e-5));
      assertThat(coarse.omega[a] / LAYER.omega[b]).isCloseTo(1, within(1e-5));
      assertThat(coarse.cellProduction(a) / LAYER.cellProduction(b)).isCloseTo(1, within(1e-4));
    }
  }

  /**
   * The logarithmic law u⁺ = ln(y⁺) / 0.41 + C with C of about 5 (Coles 1956, J. Fluid Mech. 1,
   * 191: 0.41 and 5.0, from memory), which the layer knows nothing of.
   */
  @Test
  void followsTheLogarithmicLaw() {
    for (double y : new double[] {200, 500, 1000, 3000, 1e5}) {
      assertThat(WallLaw.VELOCITY.velocity(y) - Math.log(y) / 0.41)
          .as("y⁺ %s", y)
          .isBetween(4.5, 5.4);
      // ω = u_τ / (√β* κ y), production u_τ³ / (κ y)
      assertThat(WallLaw.omega(y) * y).isCloseTo(1 / (0.3 * 0.41), within(0.12 / (0.3 * 0.41)));
      assertThat(WallLaw.production(y) * y).isCloseTo(1 / 0.41, within(0.1 / 0.41));
    }
  }

  /** u⁺ = y⁺ and ω⁺ = 6 / (β₁ y⁺²) in the sublayer, k production as y⁵ there. */
  @Test
  void isTheSublayerBelow() {
    for (double y : new double[] {0.01, 0.2, 0.4999}) {
      assertThat(WallLaw.VELOCITY.velocity(y)).isEqualTo(y);
      assertThat(WallLaw.omega(y)).isCloseTo(6 / (0.075 * y * y), within(1e-10 / (y * y)));
      assertThat(WallLaw.production(y))
          .isCloseTo(WallLaw.production(0.5) * Math.pow(2 * y, 5), within(1e-18));
    }
  }

  @ParameterizedTest
  @ValueSource(doubles = {0.5, 1000})
  void joinsWithoutAStep(double y) {
    double below = y * (1 - 1e-12);
    double above = y * (1 + 1e-12);
    assertThat(WallLaw.VELOCITY.velocity(above))
        .isCloseTo(WallLaw.VELOCITY.velocity(below), within(1e-3 * y / 500));
    assertThat(WallLaw.omega(above) / WallLaw.omega(below)).isCloseTo(1, within(1e-4));
    assertThat(WallLaw.production(above) / WallLaw.production(below)).isCloseTo(1, within(1e-4));
  }

  /** Beyond the table: one more logarithm, and falling as 1 / y. */
  @Test
  void goesOnAsTheLogarithmicLayer() {
    assertThat(WallLaw.VELOCITY.velocity(1000 * Math.E) - WallLaw.VELOCITY.velocity(1000))
        .isCloseTo(1 / 0.41, within(1e-9));
    assertThat(WallLaw.omega(2000)).isCloseTo(WallLaw.omega(1000) / 2, within(1e-12));
    assertThat(WallLaw.production(2000)).isCloseTo(WallLaw.production(1000) / 2, within(1e-12));
  }

  /** Linear in ln y⁺ between the points of the table. */
  @Test
  void interpolatesBetweenThePoints() {
    double a = place(20);
    double b = place(21);
    double y = a * Math.pow(b / a, 0.25);
    assertThat(WallLaw.VELOCITY.velocity(y))
        .isCloseTo(
            0.75 * WallLaw.VELOCITY.velocity(a) + 0.25 * WallLaw.VELOCITY.velocity(b),
            within(1e-9));
  }

  /** u⁺ y⁺ of the answer is the Reynolds number, whatever the guess. */
  @ParameterizedTest
  @ValueSource(doubles = {0, 1e-9, 0.1, 0.2499, 0.2501, 1, 30, 160, 1e3, 2e4, 3e5})
  void findsTheDistance(double reynolds) {
    for (double guess : new double[] {0, 1, 11, 500, 1e4}) {
      double y = WallLaw.VELOCITY.distance(reynolds, guess);
      assertThat(WallLaw.VELOCITY.velocity(y) * y)
          .as("from %s", guess)
          .isCloseTo(reynolds, within(2e-5 * reynolds));
    }
  }
}
