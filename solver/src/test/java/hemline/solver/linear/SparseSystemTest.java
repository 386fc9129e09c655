package hemline.solver.linear;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.SplittableRandom;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class SparseSystemTest {

  @ParameterizedTest(name = "seed {0}")
  @ValueSource(longs = {1, 2, 3, 4, 5, 6})
  void twoUnknownsSideBySideAreTheSameBitsAsOneByOne(long seed) {
    SplittableRandom random = new SplittableRandom(seed);
    int size = 2 + random.nextInt(70);
    RandomNetwork net = RandomNetwork.of(size, random.nextInt(150), random);
    SparseSystem system = new SparseSystem(new SparsePattern(size, net.first, net.second));
    double[] b = random(size, random);
    double[] c = random(size, random);
    double[] x = random(size, random);
    double[] y = random(size, random);
    for (int r = 0; r < size; r++) {
      system.diagonal[r] = 1;
      for (int e = system.pattern.rowStart[r]; e < system.pattern.rowStart[r + 1]; e++) {
        system.neighbour[e] = random.nextDouble();
        system.diagonal[r] += system.neighbour[e];
      }
    }
    double[] oneX = x.clone();
    double[] oneY = y.clone();
    double before = system.residual(b, x, all(size));
    system.relax(b, oneX, 3);
    system.relax(c, oneY, 3);
    system.relax(b, x, c, y, 3);
    assertThat(x).as("seed %d", seed).isEqualTo(oneX);
    assertThat(y).as("seed %d", seed).isEqualTo(oneY);
    assertThat(system.residual(b, x, all(size))).isLessThan(before);
  }

  private static double[] random(int size, SplittableRandom random) {
    return random.doubles(size, -1, 1).toArray();
  }

  private static boolean[] all(int size) {
    boolean[] all = new boolean[size];
    java.util.Arrays.fill(all, true);
    return all;
  }
}
