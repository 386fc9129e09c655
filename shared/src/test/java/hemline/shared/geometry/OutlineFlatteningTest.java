package hemline.shared.geometry;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.DoubleStream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

class OutlineFlatteningTest {

  @Test
  void straightOutlinesStayAsTheyAre() {
    Ring ring =
        new Outline(List.of(new Vertex(0, 0), new Vertex(2, 0), new Vertex(1, 1))).flatten();
    assertThat(ring.x()).containsExactly(0, 2, 1);
    assertThat(ring.y()).containsExactly(0, 0, 1);
  }

  @Test
  void clockwiseOutlinesAreTurned() {
    Ring ring =
        new Outline(List.of(new Vertex(1, 1), new Vertex(2, 0), new Vertex(0, 0))).flatten();
    assertThat(ring.x()).containsExactly(0, 2, 1);
  }

  /** Discs of any start angle, either way round: on the circle, extremes exact, sagitta kept. */
  @Test
  @Tag("many")
  void chordsOfADiscKeepTheSagittaAndTheExtremes() {
    for (int seed = 0; seed < 300; seed++) {
      SplittableRandom random = new SplittableRandom(seed);
      double r = Math.pow(10, random.nextDouble(-4, 0));
      double start = random.nextDouble(-4, 4);
      double sweep = random.nextDouble(0.5, 5.5);
      boolean back = random.nextBoolean();
      double first = Math.tan(sweep / 4);
      double second = Math.tan((2 * Math.PI - sweep) / 4);
      Vertex a = new Vertex(r * Math.cos(start), r * Math.sin(start), back ? -second : first);
      Vertex b =
          new Vertex(
              r * Math.cos(start + sweep), r * Math.sin(start + sweep), back ? -first : second);
      Ring ring = new Outline(List.of(a, b)).flatten();
      double twice = 0;
      for (int i = 0; i < ring.size(); i++) {
        int j = (i + 1) % ring.size();
        double mx = 0.5 * (ring.x()[i] + ring.x()[j]);
        double my = 0.5 * (ring.y()[i] + ring.y()[j]);
        assertThat(Math.hypot(ring.x()[i], ring.y()[i]))
            .as("seed %d", seed)
            .isCloseTo(r, within(1e-12 * r));
        assertThat(1 - Math.hypot(mx, my) / r)
            .as("seed %d", seed)
            .isLessThan(Outline.SAGITTA * (1 + 1e-6));
        twice += ring.x()[i] * ring.y()[j] - ring.x()[j] * ring.y()[i];
      }
      assertThat(twice).as("seed %d: counter-clockwise", seed).isPositive();
      for (double[] c : new double[][] {ring.x(), ring.y()}) {
        double lowest = DoubleStream.of(c).min().orElseThrow();
        double highest = DoubleStream.of(c).max().orElseThrow();
        assertThat(lowest).as("seed %d", seed).isCloseTo(-r, within(1e-12 * r));
        assertThat(highest).as("seed %d", seed).isCloseTo(r, within(1e-12 * r));
      }
    }
  }
}
