package hemline.solver.measure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import hemline.shared.result.RawFigures.Vortex;
import hemline.solver.grid.GridLines;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Extremes of streamfunctions that are written down. */
class EddiesTest {
  private static final double[] ALL = {0, 1, 0, 1};

  /** Uneven both ways. */
  private static final GridLines LINES =
      new GridLines(
          new double[] {0, 0.1, 0.25, 0.45, 0.6, 0.7, 0.85, 1},
          new double[] {0, 0.15, 0.3, 0.4, 0.55, 0.75, 0.9, 1});

  private static double[] psi(MadeFlow.Field f) {
    double[] x = LINES.x();
    double[] y = LINES.y();
    double[] psi = new double[x.length * y.length];
    for (int j = 0; j < y.length; j++) {
      for (int i = 0; i < x.length; i++) {
        psi[j * x.length + i] = f.at(x[i], y[j]);
      }
    }
    return psi;
  }

  private static double hill(double x, double y, double x0, double y0) {
    return 1 - 10 * (x - x0) * (x - x0) - 15 * (y - y0) * (y - y0);
  }

  private static void assertVortex(Vortex v, double strength, double x, double y) {
    assertThat(v.strength()).isCloseTo(strength, within(1e-12));
    assertThat(v.x()).isCloseTo(x, within(1e-12));
    assertThat(v.y()).isCloseTo(y, within(1e-12));
  }

  /** Between the corners, beyond either bound, whichever way the leak runs. */
  @Test
  void extremesOfParaboloidsAreExact() {
    double[] up = psi((x, y) -> 0.5 + 0.3 * hill(x, y, 0.42, 0.52));
    assertVortex(Eddies.find(LINES, up, 0.5, 0.5, ALL).get(0), 0.6, 0.42, 0.52);
    assertVortex(Eddies.find(LINES, up, -0.5, 0.5, ALL).get(0), 1.6, 0.42, 0.52);
    double[] down = psi((x, y) -> -0.3 * hill(x, y, 0.64, 0.43));
    assertVortex(Eddies.find(LINES, down, 0.5, 0.5, ALL).get(0), 0.6, 0.64, 0.43);
    double[] below = psi((x, y) -> -0.5 - 0.3 * hill(x, y, 0.64, 0.43));
    assertVortex(Eddies.find(LINES, below, -0.5, 0.5, ALL).get(0), 0.6, 0.64, 0.43);
  }

  @Test
  void theStrongestComesFirst() {
    double[] two =
        psi(
            (x, y) ->
                Math.max(
                    0.2 * hill(x, y, 0.25, 0.3), Math.max(0.4 * hill(x, y, 0.7, 0.75), -0.01)));
    List<Vortex> found = Eddies.find(LINES, two, 0, 1, ALL);
    assertThat(found).hasSize(2);
    assertVortex(found.get(0), 0.4, 0.7, 0.75);
    assertVortex(found.get(1), 0.2, 0.25, 0.3);
    double[] equal =
        psi(
            (x, y) ->
                Math.max(
                    0.2 * hill(x, y, 0.7, 0.75), Math.max(0.2 * hill(x, y, 0.25, 0.3), -0.01)));
    assertThat(Eddies.find(LINES, equal, 0, 1, ALL).get(0).x()).isCloseTo(0.25, within(1e-12));
    double[] above =
        psi(
            (x, y) ->
                Math.max(
                    0.2 * hill(x, y, 0.45, 0.75), Math.max(0.2 * hill(x, y, 0.45, 0.3), -0.01)));
    assertThat(Eddies.find(LINES, above, 0, 1, ALL).get(0).y()).isCloseTo(0.3, within(1e-12));
  }

  /** Faint is a strength of 0.002 or less. */
  @Test
  void faintOnesAreLeftOut() {
    MadeFlow.Field at = (x, y) -> hill(x, y, 0.45, 0.55);
    assertThat(Eddies.find(LINES, psi((x, y) -> 0.0019 * at.at(x, y)), 0, 1, ALL)).isEmpty();
    assertThat(Eddies.find(LINES, psi((x, y) -> 0.002 * at.at(x, y)), 0, 1, ALL)).isEmpty();
    assertThat(Eddies.find(LINES, psi((x, y) -> 0.0021 * at.at(x, y)), 0, 1, ALL)).hasSize(1);
    assertThat(Eddies.find(LINES, psi((x, y) -> 0.0021 * at.at(x, y)), 0, 2, ALL)).isEmpty();
  }

  /** Corners on the window's edge count. */
  @Test
  void onlyWhatLiesInTheWindowCounts() {
    double[] up = psi((x, y) -> 0.3 * hill(x, y, 0.45, 0.55));
    double[][] in = {{0.45, 1, 0, 1}, {0, 0.45, 0, 1}, {0, 1, 0.55, 1}, {0, 1, 0, 0.55}};
    double[][] out = {{0.46, 1, 0, 1}, {0, 0.44, 0, 1}, {0, 1, 0.56, 1}, {0, 1, 0, 0.54}};
    for (int k = 0; k < 4; k++) {
      assertThat(Eddies.find(LINES, up, 0, 1, in[k])).hasSize(1);
      assertThat(Eddies.find(LINES, up, 0, 1, out[k])).isEmpty();
    }
  }

  @Test
  void aPlateauIsOneEddy() {
    double[] flat = psi((x, y) -> x > 0.2 && x < 0.65 && y > 0.2 && y < 0.6 ? 0.7 : 0);
    List<Vortex> found = Eddies.find(LINES, flat, 0, 1, ALL);
    assertThat(found).hasSize(1);
    assertThat(found.get(0).strength()).isGreaterThanOrEqualTo(0.7);
    // a saddle is none
    assertThat(Eddies.find(LINES, psi((x, y) -> 0.1 + (x - 0.45) * (y - 0.55)), 0, 1, ALL))
        .isEmpty();
  }
}
