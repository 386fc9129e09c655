package hemline.solver.linear;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Linear fixed points x = M x + c. */
class AndersonAccelerationTest {
  private final SplittableRandom random = new SplittableRandom(71);

  /** M with the given largest sum of a row, so that radius below 1 contracts. */
  private double[][] matrix(int n, double radius) {
    double[][] m = new double[n][];
    for (int i = 0; i < n; i++) {
      m[i] = RandomNetwork.values(n, -1, 1, random);
      double sum = Arrays.stream(m[i]).map(Math::abs).sum();
      for (int j = 0; j < n; j++) {
        m[i][j] *= radius / sum;
      }
    }
    return m;
  }

  private static double[] apply(double[][] m, double[] c, double[] x) {
    double[] y = c.clone();
    for (int i = 0; i < m.length; i++) {
      for (int j = 0; j < m.length; j++) {
        y[i] += m[i][j] * x[j];
      }
    }
    return y;
  }

  private static double[] ones(int n) {
    double[] w = new double[n];
    Arrays.fill(w, 1);
    return w;
  }

  private static double miss(double[][] m, double[] c, double[] x) {
    return RandomNetwork.distance(apply(m, c, x), x);
  }

  @ParameterizedTest(name = "{0} unknowns, radius {1}")
  @CsvSource({"1, 0.9", "3, 0.9", "6, 0.95", "6, 3"})
  void aLinearFixedPointIsFoundInAsManyStepsAsUnknowns(int n, double radius) {
    double[][] m = matrix(n, radius);
    double[] c = RandomNetwork.values(n, -1, 1, random);
    double[] weight = RandomNetwork.values(n, 0.5, 2, random);
    AndersonAcceleration acceleration = new AndersonAcceleration(n, n, n);
    double[] x = new double[n];
    double start = miss(m, c, x);
    // one plain step, then one difference per unknown
    for (int k = 0; k <= n; k++) {
      double[] g = apply(m, c, x);
      acceleration.accelerate(x, g, weight);
      x = g;
    }
    assertThat(miss(m, c, x)).isLessThan(1e-6 * start);
  }

  @Test
  void aShortHistoryStillBeatsThePlainIteration() {
    double[][] m = matrix(40, 1);
    for (int i = 0; i < 40; i++) {
      m[i][i] += 0.6;
    }
    double[] c = RandomNetwork.values(40, -1, 1, random);
    double[] plain = new double[40];
    double[] fast = new double[40];
    AndersonAcceleration acceleration = new AndersonAcceleration(40, 40, 3);
    for (int k = 0; k < 30; k++) {
      plain = apply(m, c, plain);
      double[] g = apply(m, c, fast);
      acceleration.accelerate(fast, g, ones(40));
      fast = g;
    }
    assertThat(miss(m, c, fast)).isLessThan(1e-2 * miss(m, c, plain));
  }

  @Test
  void entriesThatAreNotJudgedFollow() {
    // the last two entries depend on the first three only
    double[][] m = matrix(5, 0.9);
    for (double[] row : m) {
      row[3] = 0;
      row[4] = 0;
    }
    double[] c = RandomNetwork.values(5, -1, 1, random);
    AndersonAcceleration acceleration = new AndersonAcceleration(5, 3, 3);
    double[] x = new double[5];
    for (int k = 0; k < 6; k++) {
      double[] g = apply(m, c, x);
      acceleration.accelerate(x, g, ones(3));
      x = g;
    }
    assertThat(miss(m, c, x)).isLessThan(1e-6);
  }

  @Test
  void aRestartForgets() {
    double[][] m = matrix(4, 0.9);
    double[] c = RandomNetwork.values(4, -1, 1, random);
    AndersonAcceleration used = new AndersonAcceleration(4, 4, 2);
    double[] x = RandomNetwork.values(4, -9, 9, random);
    for (int k = 0; k < 5; k++) {
      double[] g = apply(m, c, x);
      used.accelerate(x, g, ones(4));
      x = g;
    }
    used.restart();
    AndersonAcceleration fresh = new AndersonAcceleration(4, 4, 2);
    double[] a = {1, 2, 3, 4};
    double[] b = a.clone();
    for (int k = 0; k < 4; k++) {
      double[] ga = apply(m, c, a);
      used.accelerate(a, ga, ones(4));
      a = ga;
      double[] gb = apply(m, c, b);
      fresh.accelerate(b, gb, ones(4));
      b = gb;
      assertThat(a).isEqualTo(b);
    }
  }

  @Test
  void usingFewDifferencesIsLikeKeepingFew() {
    double[][] m = matrix(6, 0.9);
    double[] c = RandomNetwork.values(6, -1, 1, random);
    AndersonAcceleration keepsMany = new AndersonAcceleration(6, 6, 5);
    AndersonAcceleration keepsFew = new AndersonAcceleration(6, 6, 2);
    double[] a = RandomNetwork.values(6, -9, 9, random);
    double[] b = a.clone();
    for (int k = 0; k < 9; k++) {
      double[] ga = apply(m, c, a);
      keepsMany.accelerate(a, ga, ones(6), 2);
      a = ga;
      double[] gb = apply(m, c, b);
      keepsFew.accelerate(b, gb, ones(6));
      b = gb;
      assertThat(a).isEqualTo(b);
    }
  }

  @Test
  void aFixedPointStays() {
    AndersonAcceleration acceleration = new AndersonAcceleration(2, 2, 3);
    for (int k = 0; k < 6; k++) {
      double[] answer = {1, -2};
      acceleration.accelerate(new double[] {1, -2}, answer, ones(2));
      assertThat(answer).containsExactly(1, -2);
    }
  }
}
