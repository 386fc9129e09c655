package hemline.solver.linear;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import org.ejml.data.DMatrixRMaj;
import org.ejml.dense.row.factory.LinearSolverFactory_DDRM;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Conductance networks against a dense solution, and iteration counts on grids of any size. */
class LineMultigridTest {

  private static double[] dense(
      PlaceGrid net, double[] conductance, double[] grounding, double[] b) {
    int n = net.size();
    DMatrixRMaj a = new DMatrixRMaj(n, n);
    for (int i = 0; i < n; i++) {
      a.add(i, i, grounding[i]);
    }
    for (int l = 0; l < net.first().length; l++) {
      int i = net.first()[l];
      int j = net.second()[l];
      a.add(i, i, conductance[l]);
      a.add(j, j, conductance[l]);
      a.add(i, j, -conductance[l]);
      a.add(j, i, -conductance[l]);
    }
    var solver = LinearSolverFactory_DDRM.chol(n);
    assertThat(solver.setA(a)).isTrue();
    DMatrixRMaj x = new DMatrixRMaj(n, 1);
    solver.solve(DMatrixRMaj.wrap(n, 1, b.clone()), x);
    return x.data;
  }

  /** Unknown of each place: some places empty, some joined to the one before. */
  private static int[] places(
      int nx, int ny, double empty, double joined, SplittableRandom random) {
    int[] at = new int[nx * ny];
    int count = 0;
    for (int p = 0; p < at.length; p++) {
      if (p > 0 && random.nextDouble() < empty) {
        at[p] = -1;
      } else if (p % nx > 0 && at[p - 1] >= 0 && random.nextDouble() < joined) {
        at[p] = at[p - 1];
      } else {
        at[p] = count++;
      }
    }
    return at;
  }

  /**
   * Links between all neighbouring places of different unknowns, some of them twice.
   *
   * @param without unknowns more that have no place, each linked to two that have one
   */
  private static PlaceGrid grid(
      int nx, int ny, int[] at, int without, double twice, SplittableRandom random) {
    List<int[]> links = new ArrayList<>();
    for (int p = 0; p < at.length; p++) {
      for (int step : new int[] {1, nx}) {
        boolean inside = step == 1 ? p % nx + 1 < nx : p + nx < at.length;
        if (inside && at[p] >= 0 && at[p + step] >= 0 && at[p] != at[p + step]) {
          links.add(new int[] {at[p], at[p + step], step == 1 ? 1 : 0, p});
          if (random.nextDouble() < twice) {
            links.add(links.get(links.size() - 1));
          }
        }
      }
    }
    int size = Arrays.stream(at).max().orElse(-1) + 1;
    for (int k = 0; k < without; k++) {
      int p = random.nextInt(nx - 1);
      if (at[p] >= 0) {
        links.add(new int[] {at[p], size + k, 1, p});
      }
      links.add(new int[] {size + k, 0, 1, p});
    }
    int[][] column = new int[3][links.size()];
    boolean[] alongX = new boolean[links.size()];
    for (int l = 0; l < alongX.length; l++) {
      column[0][l] = links.get(l)[0];
      column[1][l] = links.get(l)[1];
      alongX[l] = links.get(l)[2] == 1;
      column[2][l] = links.get(l)[3];
    }
    return new PlaceGrid(size + without, nx, ny, at, column[0], column[1], alongX, column[2]);
  }

  @ParameterizedTest(name = "seed {0}")
  @ValueSource(longs = {11, 12, 13, 14, 15, 16, 17, 18, 19, 20})
  void cutGridsAgreeWithTheDenseSolution(long seed) {
    SplittableRandom random = new SplittableRandom(seed);
    int nx = 2 + random.nextInt(30);
    int ny = 1 + random.nextInt(30);
    int[] at = places(nx, ny, 0.2, 0.1, random);
    PlaceGrid net = grid(nx, ny, at, random.nextInt(3), 0.1, random);
    int links = net.first().length;
    double[] conductance = RandomNetwork.values(links, 0, 1, random);
    double[] typical = new double[links];
    for (int l = 0; l < links; l++) {
      conductance[l] = Math.pow(10, 4 * conductance[l] - 2);
      // strengths at building time need not be those solved with
      typical[l] = conductance[l] * (0.5 + random.nextDouble());
    }
    double[] grounding = RandomNetwork.values(net.size(), 0.01, 1, random);
    double[] b = RandomNetwork.values(net.size(), -1, 1, random);
    double[] x = RandomNetwork.values(net.size(), -1, 1, random);
    double[] given = b.clone();
    double[] exact = dense(net, conductance, grounding, b);
    LineMultigrid solver = new LineMultigrid(net, typical);
    solver.setCoefficients(conductance, grounding);
    solver.solve(b, x, 1e-13, 300);
    assertThat(b).as("seed %d", seed).isEqualTo(given);
    assertThat(RandomNetwork.distance(x, exact))
        .as("seed %d, %d unknowns", seed, net.size())
        .isLessThan(1e-8 * RandomNetwork.norm(exact));
  }

  private static PlaceGrid whole(int nx, int ny) {
    SplittableRandom none = new SplittableRandom(1);
    return grid(nx, ny, places(nx, ny, 0, 0, none), 0, 0, none);
  }

  /** Iterations for 1e-8 on an n by n grid with one side to ground and a wall with a gap. */
  private static int iterations(int n, double ratio, boolean wall) {
    int[] at = places(n, n, 0, 0, new SplittableRandom(1));
    if (wall) {
      for (int j = n / 8; j < n; j++) {
        at[j * n + n / 2] = -1;
      }
      int count = 0;
      for (int p = 0; p < at.length; p++) {
        at[p] = at[p] < 0 ? -1 : count++;
      }
    }
    PlaceGrid net = grid(n, n, at, 0, 0, new SplittableRandom(1));
    double[] conductance = new double[net.first().length];
    for (int l = 0; l < conductance.length; l++) {
      // cells get thinner towards the ground and towards the middle
      double thin = 1 + (ratio - 1) * Math.exp(-8.0 * (net.lowerPlace()[l] / n) / n);
      conductance[l] = net.alongX()[l] ? 1 / thin : thin;
    }
    double[] grounding = new double[net.size()];
    for (int j = 0; j < n; j++) {
      grounding[at[j * n]] = 2;
    }
    double[] b = RandomNetwork.values(net.size(), -1, 1, new SplittableRandom(5));
    double[] x = new double[net.size()];
    LineMultigrid solver = new LineMultigrid(net, conductance);
    solver.setCoefficients(conductance, grounding);
    return solver.solve(b, x, 1e-8, 100);
  }

  @ParameterizedTest(name = "conductance ratio {0}, wall {1}")
  @CsvSource({"1, false", "30, false", "1000, false", "1, true", "1000, true"})
  void iterationsDoNotGrowWithTheGrid(double ratio, boolean wall) {
    int coarse = iterations(32, ratio, wall);
    int fine = iterations(256, ratio, wall);
    assertThat(coarse).isBetween(2, 10);
    assertThat(fine).as("against %d on the coarse grid", coarse).isBetween(2, coarse + 3);
  }

  @Test
  void answersAreKeptWhenTheyAreRight() {
    PlaceGrid net = whole(12, 9);
    double[] ones = new double[net.first().length];
    Arrays.fill(ones, 1);
    double[] grounding = new double[net.size()];
    grounding[5] = 1;
    LineMultigrid solver = new LineMultigrid(net, ones);
    solver.setCoefficients(ones, grounding);
    double[] b = new double[net.size()];
    b[5] = 3;
    double[] x = new double[net.size()];
    Arrays.fill(x, 3);
    assertThat(solver.solve(b, x, 1e-6, 50)).isZero();
    assertThat(x).containsOnly(3.0);
  }

  @Test
  void newCoefficientsReplaceTheOld() {
    PlaceGrid net = whole(20, 20);
    SplittableRandom random = new SplittableRandom(3);
    double[] typical = new double[net.first().length];
    Arrays.fill(typical, 1);
    LineMultigrid solver = new LineMultigrid(net, typical);
    double[] grounding = new double[net.size()];
    grounding[0] = 1;
    double[] b = RandomNetwork.values(net.size(), -1, 1, random);
    for (int k = 0; k < 3; k++) {
      double[] conductance = RandomNetwork.values(net.first().length, 0.1, 10, random);
      solver.setCoefficients(conductance, grounding);
      double[] x = new double[net.size()];
      solver.solve(b, x, 1e-12, 100);
      double[] exact = dense(net, conductance, grounding, b);
      assertThat(RandomNetwork.distance(x, exact)).isLessThan(1e-9 * RandomNetwork.norm(exact));
    }
  }

  @Test
  void numbersThatRanAwayGiveNoCorrection() {
    PlaceGrid net = whole(3, 3);
    double[] ones = new double[net.first().length];
    Arrays.fill(ones, 1);
    LineMultigrid solver = new LineMultigrid(net, ones);
    double[] grounding = new double[9];
    grounding[4] = Double.NaN;
    solver.setCoefficients(ones, grounding);
    double[] x = new double[9];
    solver.solve(ones, x, 1e-6, 5);
    assertThat(x).containsOnly(0.0);
  }
}
