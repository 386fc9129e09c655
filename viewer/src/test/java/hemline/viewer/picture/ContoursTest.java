package hemline.viewer.picture;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.SplittableRandom;
import java.util.function.DoubleBinaryOperator;
import org.junit.jupiter.api.Test;

final class ContoursTest {

  private static double[] lines(double from, double to, int cells, double stretch) {
    double[] x = new double[cells + 1];
    for (int k = 0; k <= cells; k++) {
      double t = (double) k / cells;
      x[k] = from + (to - from) * (t + stretch * t * (1 - t));
    }
    return x;
  }

  private static double[] sample(double[] x, double[] y, DoubleBinaryOperator f) {
    double[] values = new double[x.length * y.length];
    for (int j = 0; j < y.length; j++) {
      for (int i = 0; i < x.length; i++) {
        values[j * x.length + i] = f.applyAsDouble(x[i], y[j]);
      }
    }
    return values;
  }

  private static double area(Contours.Line line) {
    double twice = 0;
    for (int k = 0; k < line.x().length; k++) {
      int n = (k + 1) % line.x().length;
      twice += line.x()[k] * line.y()[n] - line.x()[n] * line.y()[k];
    }
    return 0.5 * twice;
  }

  @Test
  void circleIsOneClosedLineWithTheHighSideOnItsLeft() {
    double[] x = lines(-2, 2, 80, 0.3);
    double[] y = lines(-2, 2, 60, -0.2);
    Contours hill = new Contours(x, y, sample(x, y, (a, b) -> -a * a - b * b));
    List<Contours.Line> lines = hill.lines(-1);
    assertThat(lines).hasSize(1);
    assertThat(lines.get(0).closed()).isTrue();
    assertThat(area(lines.get(0))).isCloseTo(Math.PI, within(0.01));
    Contours bowl = new Contours(x, y, sample(x, y, (a, b) -> a * a + b * b));
    assertThat(area(bowl.lines(1).get(0))).isCloseTo(-Math.PI, within(0.01));
  }

  @Test
  void plainSlopeGivesOneStraightOpenLine() {
    double[] x = lines(0, 3, 7, 0.4);
    double[] y = lines(0, 2, 5, 0.1);
    List<Contours.Line> lines =
        new Contours(x, y, sample(x, y, (a, b) -> 2 * a + 3 * b)).lines(4.1);
    assertThat(lines).hasSize(1);
    assertThat(lines.get(0).closed()).isFalse();
    for (int k = 0; k < lines.get(0).x().length; k++) {
      assertThat(2 * lines.get(0).x()[k] + 3 * lines.get(0).y()[k]).isCloseTo(4.1, within(1e-12));
    }
  }

  @Test
  void saddleKeepsItsTwoBranchesApart() {
    double[] x = {0, 1};
    double[] y = {0, 1};
    Contours saddle = new Contours(x, y, new double[] {1, 0, 0, 1});
    assertThat(saddle.lines(0.4)).hasSize(2);
    assertThat(saddle.lines(0.6)).hasSize(2);
    // below the mean the high corners are joined, above it they are not
    assertThat(saddle.lines(0.4).get(0).x()[0]).isCloseTo(0.6, within(1e-12));
  }

  @Test
  void regionReachesTheBorderAndHasTheRightArea() {
    double[] x = lines(0, 2, 40, 0.2);
    double[] y = lines(0, 1, 20, 0);
    List<Contours.Line> region = new Contours(x, y, sample(x, y, (a, b) -> a)).region(0.5);
    assertThat(region).hasSize(1);
    assertThat(region.get(0).closed()).isTrue();
    assertThat(area(region.get(0))).isCloseTo(1.5, within(1e-9));
    assertThat(new Contours(x, y, sample(x, y, (a, b) -> 7)).region(0.5)).hasSize(1);
    assertThat(new Contours(x, y, sample(x, y, (a, b) -> 0)).region(0.5)).isEmpty();
  }

  @Test
  void everyLineOfARandomFieldIsClosedOrEndsAtTheBorder() {
    for (long seed = 1; seed <= 100; seed++) {
      SplittableRandom random = new SplittableRandom(seed);
      double[] x = lines(0, 1, 3 + random.nextInt(8), 0);
      double[] y = lines(0, 1, 3 + random.nextInt(8), 0);
      double[] values = new double[x.length * y.length];
      for (int k = 0; k < values.length; k++) {
        values[k] = random.nextInt(5);
      }
      for (Contours.Line line : new Contours(x, y, values).lines(2)) {
        if (!line.closed()) {
          int last = line.x().length - 1;
          assertThat(onBorder(line.x()[0], line.y()[0])).as("seed %d", seed).isTrue();
          assertThat(onBorder(line.x()[last], line.y()[last])).as("seed %d", seed).isTrue();
        }
      }
    }
  }

  private static boolean onBorder(double x, double y) {
    return x == 0 || y == 0 || x == 1 || y == 1;
  }
}
