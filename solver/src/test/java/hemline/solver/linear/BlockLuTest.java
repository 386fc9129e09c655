package hemline.solver.linear;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.SplittableRandom;
import org.ejml.data.DMatrixRMaj;
import org.ejml.dense.row.factory.LinearSolverFactory_DDRM;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Random diagonally dominant block systems against a dense solution and their own residual. */
class BlockLuTest {

  /** A block system on a network with every row diagonally dominant. */
  private static final class Blocks {
    final SparsePattern pattern;
    final int block;
    final double[] diagonal;
    final double[] entry;

    Blocks(RandomNetwork net, int block, SplittableRandom random) {
      this.block = block;
      pattern = new SparsePattern(net.size, net.first, net.second);
      int area = block * block;
      diagonal = RandomNetwork.values(net.size * area, -1, 1, random);
      entry = RandomNetwork.values(pattern.column.length * area, -1, 1, random);
      for (int i = 0; i < net.size; i++) {
        for (int a = 0; a < block; a++) {
          double sum = 0;
          for (int b = 0; b < block; b++) {
            sum += Math.abs(diagonal[i * area + a * block + b]);
            for (int e = pattern.rowStart[i]; e < pattern.rowStart[i + 1]; e++) {
              sum += Math.abs(entry[e * area + a * block + b]);
            }
          }
          diagonal[i * area + a * block + a] = random.nextBoolean() ? 1.1 * sum : -1.1 * sum;
        }
      }
    }

    double[] multiply(double[] x) {
      double[] y = new double[x.length];
      int area = block * block;
      for (int i = 0; i < pattern.size; i++) {
        add(y, i, diagonal, i * area, x, i);
        for (int e = pattern.rowStart[i]; e < pattern.rowStart[i + 1]; e++) {
          add(y, i, entry, e * area, x, pattern.column[e]);
        }
      }
      return y;
    }

    private void add(double[] y, int row, double[] from, int at, double[] x, int column) {
      for (int a = 0; a < block; a++) {
        for (int b = 0; b < block; b++) {
          y[row * block + a] += from[at + a * block + b] * x[column * block + b];
        }
      }
    }

    DMatrixRMaj dense() {
      int n = pattern.size * block;
      DMatrixRMaj m = new DMatrixRMaj(n, n);
      double[] unit = new double[n];
      for (int k = 0; k < n; k++) {
        unit[k] = 1;
        double[] column = multiply(unit);
        for (int i = 0; i < n; i++) {
          m.set(i, k, column[i]);
        }
        unit[k] = 0;
      }
      return m;
    }
  }

  @ParameterizedTest(name = "seed {0}")
  @ValueSource(longs = {31, 32, 33, 34, 35, 36, 37, 38, 39, 40})
  void randomNetworksAgreeWithTheDenseSolution(long seed) {
    SplittableRandom random = new SplittableRandom(seed);
    int size = seed == 31 ? 1 : 2 + random.nextInt(90);
    int block = 1 + random.nextInt(3);
    RandomNetwork net = RandomNetwork.of(size, random.nextInt(size), random);
    Blocks a = new Blocks(net, block, random);
    // places have nothing to do with the links, and several unknowns share one
    double[] x = new double[size];
    double[] y = new double[size];
    for (int i = 0; i < size; i++) {
      x[i] = random.nextInt(6);
      y[i] = random.nextInt(6);
    }
    double[] diagonalBefore = a.diagonal.clone();
    double[] entryBefore = a.entry.clone();
    BlockLu lu = new BlockLu(a.pattern, x, y, block);
    assertThat(lu.factor(a.diagonal, a.entry)).isTrue();
    assertThat(a.diagonal).isEqualTo(diagonalBefore);
    assertThat(a.entry).isEqualTo(entryBefore);
    double[] b = RandomNetwork.values(size * block, -1, 1, random);
    var solver = LinearSolverFactory_DDRM.lu(size * block);
    assertThat(solver.setA(a.dense())).isTrue();
    DMatrixRMaj exact = new DMatrixRMaj(size * block, 1);
    solver.solve(DMatrixRMaj.wrap(size * block, 1, b.clone()), exact);
    double[] answer = b.clone();
    lu.solve(answer);
    assertThat(RandomNetwork.distance(answer, exact.data))
        .as("seed %d, %d unknowns of %d", seed, size, block)
        .isLessThan(1e-5 * RandomNetwork.norm(exact.data));
  }

  @Test
  void gridsAreSolvedToSinglePrecisionAndFactorsStaySmall() {
    SplittableRandom random = new SplittableRandom(9);
    long before = 0;
    for (int n : new int[] {20, 40, 80}) {
      RandomNetwork net = RandomNetwork.grid(n, n);
      double[] x = new double[net.size];
      double[] y = new double[net.size];
      for (int i = 0; i < net.size; i++) {
        x[i] = i % n;
        y[i] = i / n;
      }
      Blocks a = new Blocks(net, 3, random);
      BlockLu lu = new BlockLu(a.pattern, x, y, 3);
      // the second factorisation must not see the first
      assertThat(lu.factor(new Blocks(net, 3, random).diagonal, a.entry)).isTrue();
      assertThat(lu.factor(a.diagonal, a.entry)).isTrue();
      double[] b = RandomNetwork.values(3 * net.size, -1, 1, random);
      double[] answer = b.clone();
      lu.solve(answer);
      assertThat(RandomNetwork.distance(a.multiply(answer), b))
          .isLessThan(1e-6 * RandomNetwork.norm(b));
      // four times the unknowns: n log n, well below the factor 8 of banded elimination
      if (before > 0) {
        assertThat(lu.factorSize()).isBetween(4 * before, 6 * before);
      }
      before = lu.factorSize();
    }
  }

  @Test
  void separatePartsAndLooseUnknownsAreSolvedToo() {
    SplittableRandom random = new SplittableRandom(10);
    SparsePattern pattern = new SparsePattern(5, new int[] {0, 3}, new int[] {1, 4});
    double[] place = {0, 1, 2, 3, 4};
    BlockLu lu = new BlockLu(pattern, place, new double[5], 1);
    double[] diagonal = {2, 3, 4, 5, 6};
    double[] entry = new double[pattern.column.length];
    java.util.Arrays.fill(entry, 1);
    assertThat(lu.factor(diagonal, entry)).isTrue();
    double[] x = RandomNetwork.values(5, -1, 1, random);
    double[] b = {2 * x[0] + x[1], 3 * x[1] + x[0], 4 * x[2], 5 * x[3] + x[4], 6 * x[4] + x[3]};
    lu.solve(b);
    assertThat(RandomNetwork.distance(b, x)).isLessThan(1e-6);
  }

  @Test
  void singularAndBrokenMatricesAreToldApart() {
    SparsePattern pattern = new SparsePattern(2, new int[] {0}, new int[] {1});
    BlockLu lu = new BlockLu(pattern, new double[] {0, 1}, new double[2], 1);
    double[] entry = {-1, -1};
    assertThat(lu.factor(new double[] {1, 1}, entry)).as("singular").isFalse();
    assertThat(lu.factor(new double[] {Double.NaN, 1}, entry)).as("not a number").isFalse();
    assertThat(lu.factor(new double[] {2, 1}, entry)).as("regular after failures").isTrue();
    double[] x = {1, 0};
    lu.solve(x);
    assertThat(x[0]).isEqualTo(1);
    assertThat(x[1]).isEqualTo(1);
  }
}
