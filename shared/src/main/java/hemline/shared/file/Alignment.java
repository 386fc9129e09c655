package hemline.shared.file;

import hemline.shared.geometry.Outline;
import hemline.shared.geometry.Vertex;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.ToDoubleFunction;

/**
 * Brings coordinates that a drawing meant to be equal to the same value, so that level edges are
 * level to the last bit.
 *
 * <p>Coordinates within 10 nm of each other become one; values a rounding error from a whole
 * nanometre become it.
 */
final class Alignment {
  private static final double SAME = 1e-8;
  private static final double NANOMETRE = 1e-9;
  private static final double ROUNDING = 1e-12;

  private Alignment() {}

  static List<Outline> align(List<Outline> outlines) {
    double[] x = levels(outlines, Vertex::x);
    double[] y = levels(outlines, Vertex::y);
    List<Outline> out = new ArrayList<>();
    for (Outline o : outlines) {
      out.add(
          new Outline(
              o.vertices().stream()
                  .map(v -> new Vertex(level(x, v.x()), level(y, v.y()), v.bulge()))
                  .toList()));
    }
    return out;
  }

  /** Sorted coordinates, the first of each group standing for it. */
  private static double[] levels(List<Outline> outlines, ToDoubleFunction<Vertex> coordinate) {
    double[] sorted =
        outlines.stream()
            .flatMap(o -> o.vertices().stream())
            .mapToDouble(coordinate)
            .sorted()
            .toArray();
    double[] first = new double[sorted.length];
    int count = 0;
    for (double value : sorted) {
      if (count == 0 || value - first[count - 1] > SAME) {
        first[count++] = value;
      }
    }
    return Arrays.copyOf(first, count);
  }

  private static double level(double[] levels, double value) {
    int at = Arrays.binarySearch(levels, value);
    double level = levels[at >= 0 ? at : -at - 2];
    double whole = Math.rint(level / NANOMETRE) / 1e9;
    return Math.abs(whole - level) <= ROUNDING ? whole : level;
  }
}
