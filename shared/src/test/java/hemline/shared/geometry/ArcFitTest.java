package hemline.shared.geometry;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.function.DoubleFunction;
import org.junit.jupiter.api.Test;

class ArcFitTest {

  @Test
  void aCircularArcIsOneEdge() {
    List<Vertex> out = new ArrayList<>();
    ArcFit.append(t -> new double[] {Math.cos(-5 * t), Math.sin(-5 * t)}, 1e-9, out);
    assertThat(out).hasSize(1);
    assertThat(out.get(0).bulge()).isCloseTo(-Math.tan(5.0 / 4), within(1e-12));
  }

  @Test
  void aStraightCurveIsOneEdge() {
    List<Vertex> out = new ArrayList<>();
    ArcFit.append(t -> new double[] {t * t, 2 * t * t}, 1e-9, out);
    assertThat(out).containsExactly(new Vertex(0, 0));
  }

  /** Every point of a cubic lies within the tolerance of the edges made of it. */
  @Test
  void staysWithinTheTolerance() {
    double tolerance = 1e-4;
    for (int seed = 0; seed < 100; seed++) {
      SplittableRandom random = new SplittableRandom(seed);
      double[] c = random.doubles(8, -1, 1).toArray();
      DoubleFunction<double[]> cubic =
          t -> {
            double s = 1 - t;
            double[] w = {s * s * s, 3 * s * s * t, 3 * s * t * t, t * t * t};
            double x = 0;
            double y = 0;
            for (int k = 0; k < 4; k++) {
              x += w[k] * c[2 * k];
              y += w[k] * c[2 * k + 1];
            }
            return new double[] {x, y};
          };
      List<Vertex> out = new ArrayList<>();
      ArcFit.append(cubic, tolerance, out);
      double[] end = cubic.apply(1);
      out.add(new Vertex(end[0], end[1]));
      assertThat(out.size()).as("seed %d", seed).isLessThan(200);
      for (int k = 0; k <= 997; k++) {
        assertThat(distance(cubic.apply(k / 997.0), out))
            .as("seed %d", seed)
            .isLessThan(1.1 * tolerance);
      }
    }
  }

  private static double distance(double[] p, List<Vertex> edges) {
    double least = Double.POSITIVE_INFINITY;
    for (int i = 0; i + 1 < edges.size(); i++) {
      Vertex a = edges.get(i);
      Vertex b = edges.get(i + 1);
      least = Math.min(least, Math.hypot(p[0] - a.x(), p[1] - a.y()));
      least = Math.min(least, Math.hypot(p[0] - b.x(), p[1] - b.y()));
      if (a.bulge() != 0) {
        Arc arc = Arc.of(a, b);
        if (arc.passes(Math.atan2(p[1] - arc.yc(), p[0] - arc.xc()))) {
          double r = Math.hypot(p[0] - arc.xc(), p[1] - arc.yc());
          least = Math.min(least, Math.abs(r - arc.radius()));
        }
      } else {
        double dx = b.x() - a.x();
        double dy = b.y() - a.y();
        double t = ((p[0] - a.x()) * dx + (p[1] - a.y()) * dy) / (dx * dx + dy * dy);
        if (t > 0 && t < 1) {
          least = Math.min(least, Math.hypot(p[0] - a.x() - t * dx, p[1] - a.y() - t * dy));
        }
      }
    }
    return least;
  }
}
