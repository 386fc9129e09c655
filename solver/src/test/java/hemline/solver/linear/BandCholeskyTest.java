package hemline.solver.linear;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Band systems with a known answer. */
class BandCholeskyTest {
  @ParameterizedTest(name = "{0} rows, band {1}")
  @CsvSource({"1, 0", "1, 3", "7, 0", "9, 1", "40, 7", "12, 30"})
  void findsTheKnownAnswer(int size, int band) {
    SplittableRandom random = new SplittableRandom(size * 100L + band);
    BandCholesky solver = new BandCholesky(size, band);
    double[] x = RandomNetwork.values(size, -1, 1, random);
    double[] b = new double[size];
    for (int round = 0; round < 2; round++) {
      solver.clear();
      java.util.Arrays.fill(b, 0);
      for (int i = 0; i < size; i++) {
        double diagonal = 2 * band + 1 + random.nextDouble();
        solver.add(i, i, diagonal);
        b[i] += diagonal * x[i];
        for (int j = Math.max(0, i - band); j < i; j++) {
          double value = random.nextDouble(-1, 1);
          solver.add(i, j, value);
          b[i] += value * x[j];
          b[j] += value * x[i];
        }
      }
    }
    assertThat(solver.factorise()).isTrue();
    solver.solve(b);
    assertThat(RandomNetwork.distance(b, x)).isLessThan(1e-13 * (1 + RandomNetwork.norm(x)));
  }

  @Test
  void indefiniteMatricesAreRefused() {
    BandCholesky solver = new BandCholesky(2, 1);
    solver.add(0, 0, 1);
    solver.add(1, 0, 2);
    solver.add(1, 1, 1);
    assertThat(solver.factorise()).isFalse();
  }
}
