package hemline.solver.linear;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.SplittableRandom;
import org.ejml.data.DMatrixRMaj;
import org.ejml.dense.row.factory.LinearSolverFactory_DDRM;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Conductance networks against a dense solution, and iteration counts on grids of any size. */
class AggregationMultigridTest {

  private static double[] dense(
      RandomNetwork net, double[] conductance, double[] grounding, double[] b) {
    DMatrixRMaj a = new DMatrixRMaj(net.size, net.size);
    for (int i = 0; i < net.size; i++) {
      a.add(i, i, grounding[i]);
    }
    for (int l = 0; l < net.first.length; l++) {
      a.add(net.first[l], net.first[l], conductance[l]);
      a.add(net.second[l], net.second[l], conductance[l]);
      a.add(net.first[l], net.second[l], -conductance[l]);
      a.add(net.second[l], net.first[l], -conductance[l]);
    }
    var solver = LinearSolverFactory_DDRM.chol(net.size);
    assertThat(solver.setA(a)).isTrue();
    DMatrixRMaj x = new DMatrixRMaj(net.size, 1);
    solver.solve(DMatrixRMaj.wrap(net.size, 1, b.clone()), x);
    return x.data;
  }

  @ParameterizedTest(name = "seed {0}")
  @ValueSource(longs = {11, 12, 13, 14, 15, 16, 17, 18, 19, 20})
  void randomNetworksAgreeWithTheDenseSolution(long seed) {
    SplittableRandom random = new SplittableRandom(seed);
    int size = seed == 11 ? 1 : 2 + random.nextInt(400);
    RandomNetwork net = RandomNetwork.of(size, random.nextInt(2 * size), random);
    double[] conductance = RandomNetwork.values(net.first.length, 0, 1, random);
    double[] typical = new double[conductance.length];
    for (int l = 0; l < conductance.length; l++) {
      conductance[l] = Math.pow(10, 4 * conductance[l] - 2);
      // strengths at building time need not be those solved with
      typical[l] = conductance[l] * (0.5 + random.nextDouble());
    }
    double[] grounding = new double[size];
    for (int i = 0; i < size; i++) {
      grounding[i] = i == 0 || random.nextInt(4) == 0 ? random.nextDouble() + 0.01 : 0;
    }
    double[] b = RandomNetwork.values(size, -1, 1, random);
    double[] x = RandomNetwork.values(size, -1, 1, random);
    double[] given = b.clone();
    double[] exact = dense(net, conductance, grounding, b);
    AggregationMultigrid solver = new AggregationMultigrid(size, net.first, net.second, typical);
    solver.setCoefficients(conductance, grounding);
    solver.solve(b, x, 1e-13, 300);
    assertThat(b).as("seed %d", seed).isEqualTo(given);
    assertThat(RandomNetwork.distance(x, exact))
        .as("seed %d, %d unknowns", seed, size)
        .isLessThan(1e-8 * RandomNetwork.norm(exact));
  }

  /** Iterations for 1e-8 on an n by n grid with one side to ground. */
  private static int iterations(int n, double ratio) {
    RandomNetwork net = RandomNetwork.grid(n, n);
    double[] conductance = new double[net.first.length];
    Arrays.fill(conductance, 1);
    Arrays.fill(conductance, (n - 1) * n, conductance.length, ratio);
    double[] grounding = new double[net.size];
    for (int j = 0; j < n; j++) {
      grounding[j * n] = 2;
    }
    double[] b = RandomNetwork.values(net.size, -1, 1, new SplittableRandom(5));
    double[] x = new double[net.size];
    AggregationMultigrid solver =
        new AggregationMultigrid(net.size, net.first, net.second, conductance);
    solver.setCoefficients(conductance, grounding);
    return solver.solve(b, x, 1e-8, 100);
  }

  @ParameterizedTest(name = "conductance ratio {0}")
  @CsvSource({"1", "30", "1000"})
  void iterationsDoNotGrowWithTheGrid(double ratio) {
    int coarse = iterations(32, ratio);
    int fine = iterations(256, ratio);
    assertThat(coarse).isBetween(5, 25);
    assertThat(fine).as("against %d on the coarse grid", coarse).isBetween(5, coarse + 6);
  }

  @Test
  void answersAreKeptWhenTheyAreRight() {
    RandomNetwork net = RandomNetwork.grid(12, 9);
    double[] ones = new double[net.first.length];
    Arrays.fill(ones, 1);
    double[] grounding = new double[net.size];
    grounding[5] = 1;
    AggregationMultigrid solver = new AggregationMultigrid(net.size, net.first, net.second, ones);
    solver.setCoefficients(ones, grounding);
    double[] b = new double[net.size];
    b[5] = 3;
    double[] x = new double[net.size];
    Arrays.fill(x, 3);
    assertThat(solver.solve(b, x, 1e-6, 50)).isZero();
    assertThat(x).containsOnly(3.0);
  }

  @Test
  void newCoefficientsReplaceTheOld() {
    RandomNetwork net = RandomNetwork.grid(20, 20);
    SplittableRandom random = new SplittableRandom(3);
    double[] typical = new double[net.first.length];
    Arrays.fill(typical, 1);
    AggregationMultigrid solver =
        new AggregationMultigrid(net.size, net.first, net.second, typical);
    double[] grounding = new double[net.size];
    grounding[0] = 1;
    double[] b = RandomNetwork.values(net.size, -1, 1, random);
    for (int k = 0; k < 3; k++) {
      double[] conductance = RandomNetwork.values(net.first.length, 0.1, 10, random);
      solver.setCoefficients(conductance, grounding);
      double[] x = new double[net.size];
      solver.solve(b, x, 1e-12, 100);
      double[] exact = dense(net, conductance, grounding, b);
      assertThat(RandomNetwork.distance(x, exact)).isLessThan(1e-9 * RandomNetwork.norm(exact));
    }
  }
}
