package hemline.solver.linear;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.SplittableRandom;
import org.ejml.data.DMatrixRMaj;
import org.ejml.dense.row.factory.LinearSolverFactory_DDRM;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * What every linear solver owes: the same system, the same answer, nothing made up of bad input.
 */
class SolverContractTest {
  private static final int NX = 7;
  private static final int NY = 5;

  /** A network on a grid of NX by NY with couplings to ground: symmetric, positive definite. */
  private static final class Task {
    final RandomNetwork net = RandomNetwork.grid(NX, NY);
    final double[] conductance;
    final double[] grounding;
    final double[] b;

    Task(long seed) {
      SplittableRandom random = new SplittableRandom(seed);
      conductance = RandomNetwork.values(net.first.length, 0.2, 3, random);
      grounding = RandomNetwork.values(net.size, 0.1, 1, random);
      b = RandomNetwork.values(net.size, -1, 1, random);
    }

    PlaceGrid places() {
      int[] at = new int[net.size];
      boolean[] alongX = new boolean[net.first.length];
      Arrays.setAll(at, i -> i);
      for (int l = 0; l < alongX.length; l++) {
        alongX[l] = net.second[l] == net.first[l] + 1;
      }
      return new PlaceGrid(net.size, NX, NY, at, net.first, net.second, alongX, net.first);
    }

    double[] diagonal() {
      double[] d = grounding.clone();
      for (int l = 0; l < conductance.length; l++) {
        d[net.first[l]] += conductance[l];
        d[net.second[l]] += conductance[l];
      }
      return d;
    }

    SparsePattern pattern() {
      return new SparsePattern(net.size, net.first, net.second);
    }

    /** Values of the entries of the pattern, with a sign. */
    double[] entries(SparsePattern pattern, double sign) {
      double[] entry = new double[pattern.column.length];
      for (int l = 0; l < conductance.length; l++) {
        entry[pattern.firstEntry[l]] += sign * conductance[l];
        entry[pattern.secondEntry[l]] += sign * conductance[l];
      }
      return entry;
    }

    double[] dense() {
      DMatrixRMaj a = new DMatrixRMaj(net.size, net.size);
      for (int i = 0; i < net.size; i++) {
        a.set(i, i, diagonal()[i]);
      }
      for (int l = 0; l < conductance.length; l++) {
        a.add(net.first[l], net.second[l], -conductance[l]);
        a.add(net.second[l], net.first[l], -conductance[l]);
      }
      DMatrixRMaj x = new DMatrixRMaj(net.size, 1);
      var solver = LinearSolverFactory_DDRM.chol(net.size);
      assertThat(solver.setA(a)).isTrue();
      solver.solve(DMatrixRMaj.wrap(net.size, 1, b.clone()), x);
      return x.data;
    }
  }

  /** Every member passes these. */
  abstract static class Contract {
    /** The answer; no numbers where the solver tells that it has none. */
    abstract double[] solve(Task task);

    /** Largest relative miss. */
    double accuracy() {
      return 1e-9;
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3})
    void agreesWithTheDenseSolution(long seed) {
      Task task = new Task(seed);
      double[] given = task.b.clone();
      double[] conductance = task.conductance.clone();
      double[] exact = task.dense();
      double[] x = solve(task);
      assertThat(RandomNetwork.distance(x, exact))
          .isLessThan(accuracy() * RandomNetwork.norm(exact));
      assertThat(task.b).as("right-hand side").containsExactly(given);
      assertThat(task.conductance).as("coefficients").containsExactly(conductance);
      double[] ax = new double[x.length];
      new PlacedNetwork(task.places()).multiply(task.conductance, task.grounding, x, ax);
      assertThat(RandomNetwork.distance(ax, task.b))
          .isLessThan(accuracy() * RandomNetwork.norm(task.b));
    }

    @Test
    void theSameQuestionHasTheSameBits() {
      assertThat(solve(new Task(4))).containsExactly(solve(new Task(4)));
    }

    @Test
    void nothingAskedIsNothingAnswered() {
      Task task = new Task(5);
      Arrays.fill(task.b, 0);
      assertThat(solve(task)).containsOnly(0.0);
    }

    /** Told, or no number at all: never a number that looks right. */
    @Test
    void brokenCoefficientsGiveNoAnswer() {
      Task task = new Task(6);
      Arrays.fill(task.conductance, Double.NaN);
      double[] x = solve(task);
      assertThat(Arrays.stream(x).filter(v -> Double.isFinite(v) && v != 0)).isEmpty();
    }
  }

  @Nested
  class Sweeps extends Contract {
    @Override
    double[] solve(Task task) {
      SparseSystem system = new SparseSystem(task.pattern());
      System.arraycopy(task.diagonal(), 0, system.diagonal, 0, task.net.size);
      double[] entry = task.entries(system.pattern, 1);
      System.arraycopy(entry, 0, system.neighbour, 0, entry.length);
      double[] x = new double[task.net.size];
      system.relax(task.b, x, 400);
      return x;
    }
  }

  @Nested
  class Multigrid extends Contract {
    @Override
    double[] solve(Task task) {
      double[] typical = new double[task.conductance.length];
      Arrays.fill(typical, 1);
      LineMultigrid solver = new LineMultigrid(task.places(), typical);
      solver.setCoefficients(task.conductance, task.grounding);
      double[] x = new double[task.net.size];
      solver.solve(task.b, x, 1e-12, 100);
      return x;
    }
  }

  @Nested
  class Elimination extends Contract {
    @Override
    double accuracy() {
      return 1e-5; // single precision
    }

    @Override
    double[] solve(Task task) {
      SparsePattern pattern = task.pattern();
      double[] x = new double[task.net.size];
      double[] y = new double[task.net.size];
      for (int i = 0; i < x.length; i++) {
        x[i] = i % NX;
        y[i] = i / NX;
      }
      BlockLu lu = new BlockLu(pattern, x, y, 1);
      double[] answer = task.b.clone();
      if (!lu.factor(task.diagonal(), task.entries(pattern, -1))) {
        Arrays.fill(answer, Double.NaN);
        return answer;
      }
      lu.solve(answer);
      return answer;
    }
  }

  @Nested
  class Band extends Contract {
    @Override
    double[] solve(Task task) {
      BandCholesky solver = new BandCholesky(task.net.size, NX);
      double[] diagonal = task.diagonal();
      for (int i = 0; i < diagonal.length; i++) {
        solver.add(i, i, diagonal[i]);
      }
      for (int l = 0; l < task.conductance.length; l++) {
        solver.add(task.net.second[l], task.net.first[l], -task.conductance[l]);
      }
      double[] answer = task.b.clone();
      if (!solver.factorise()) {
        Arrays.fill(answer, Double.NaN);
        return answer;
      }
      solver.solve(answer);
      return answer;
    }
  }

  @Nested
  class KrylovSpace extends Contract {
    @Override
    double[] solve(Task task) {
      PlacedNetwork network = new PlacedNetwork(task.places());
      double[] diagonal = task.diagonal();
      double[] x = new double[task.net.size];
      new FlexibleGmres(task.net.size, task.net.size)
          .solve(
              (from, to) -> network.multiply(task.conductance, task.grounding, from, to),
              (from, to) -> Arrays.setAll(to, i -> from[i] / diagonal[i]),
              task.b,
              x,
              1e-12);
      return x;
    }
  }
}
