package hemline.solver.linear;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class FlexibleGmresTest {
  private static final FlexibleGmres.Map SAME = (f, t) -> System.arraycopy(f, 0, t, 0, f.length);

  private static FlexibleGmres.Map matrix(double[][] a) {
    return (from, to) -> {
      for (int i = 0; i < a.length; i++) {
        to[i] = 0;
        for (int j = 0; j < a.length; j++) {
          to[i] += a[i][j] * from[j];
        }
      }
    };
  }

  private static double[][] random(int n, double dominance, SplittableRandom random) {
    double[][] a = new double[n][];
    for (int i = 0; i < n; i++) {
      a[i] = RandomNetwork.values(n, -1, 1, random);
      a[i][i] += dominance;
    }
    return a;
  }

  private static double residual(FlexibleGmres.Map a, double[] x, double[] b) {
    double[] ax = new double[b.length];
    a.apply(x, ax);
    return RandomNetwork.distance(ax, b) / RandomNetwork.norm(b);
  }

  @ParameterizedTest(name = "seed {0}")
  @ValueSource(longs = {51, 52, 53, 54})
  void endsAfterAtMostAsManyStepsAsUnknowns(long seed) {
    SplittableRandom random = new SplittableRandom(seed);
    int n = 2 + random.nextInt(30);
    FlexibleGmres.Map a = matrix(random(n, 0, random));
    double[] b = RandomNetwork.values(n, -1, 1, random);
    double[] given = b.clone();
    double[] x = RandomNetwork.values(n, -1, 1, random);
    int steps = new FlexibleGmres(n, n + 5).solve(a, SAME, b, x, 1e-9);
    assertThat(b).isEqualTo(given);
    assertThat(steps).as("seed %d, %d unknowns", seed, n).isLessThanOrEqualTo(n);
    assertThat(residual(a, x, b)).as("seed %d", seed).isLessThan(1e-8);
  }

  @Test
  void stopsWhenTheReductionIsReached() {
    SplittableRandom random = new SplittableRandom(55);
    FlexibleGmres.Map a = matrix(random(60, 12, random));
    double[] b = RandomNetwork.values(60, -1, 1, random);
    double[] x = new double[60];
    FlexibleGmres gmres = new FlexibleGmres(60, 60);
    int few = gmres.solve(a, SAME, b, x, 1e-2);
    assertThat(residual(a, x, b)).isBetween(1e-5, 1e-2);
    int many = gmres.solve(a, SAME, b, x, 1e-10);
    assertThat(residual(a, x, b)).isLessThan(1.01e-10);
    assertThat(many).isGreaterThan(few);
  }

  @Test
  void theResidualFallsWithTheRoomGiven() {
    SplittableRandom random = new SplittableRandom(56);
    FlexibleGmres.Map a = matrix(random(40, 3, random));
    double[] b = RandomNetwork.values(40, -1, 1, random);
    double before = 1;
    for (int most = 1; most <= 40; most += 3) {
      double[] x = new double[40];
      int steps = new FlexibleGmres(40, most).solve(a, SAME, b, x, 0);
      assertThat(steps).isEqualTo(most);
      double now = residual(a, x, b);
      assertThat(now).isLessThanOrEqualTo(before * (1 + 1e-12));
      before = now;
    }
  }

  @Test
  void anExactPreconditionerNeedsOneStep() {
    FlexibleGmres.Map a = (f, t) -> scale(f, t, 1);
    FlexibleGmres.Map inverse = (f, t) -> scale(f, t, -1);
    double[] b = RandomNetwork.values(25, -1, 1, new SplittableRandom(57));
    double[] x = new double[25];
    assertThat(new FlexibleGmres(25, 10).solve(a, inverse, b, x, 1e-12)).isEqualTo(1);
    assertThat(residual(a, x, b)).isLessThan(1e-12);
  }

  private static void scale(double[] from, double[] to, int power) {
    for (int i = 0; i < from.length; i++) {
      to[i] = from[i] * Math.pow(1.0 + i, power);
    }
  }

  @Test
  void thePreconditionerMayChangeFromStepToStep() {
    SplittableRandom random = new SplittableRandom(58);
    double[][] m = random(30, 8, random);
    FlexibleGmres.Map a = matrix(m);
    int[] call = {0};
    FlexibleGmres.Map changing =
        (f, t) -> {
          call[0]++;
          for (int i = 0; i < f.length; i++) {
            t[i] = f[i] / m[i][i] * (1 + 0.3 * Math.sin(call[0] * (i + 1.0)));
          }
        };
    double[] b = RandomNetwork.values(30, -1, 1, random);
    double[] x = new double[30];
    new FlexibleGmres(30, 30).solve(a, changing, b, x, 1e-10);
    assertThat(residual(a, x, b)).isLessThan(1.01e-10);
  }

  @Test
  void nothingAskedIsNothingDone() {
    double[] x = {3, 4};
    assertThat(new FlexibleGmres(2, 5).solve(SAME, SAME, new double[2], x, 1e-3)).isZero();
    assertThat(x).containsOnly(0.0);
  }
}
