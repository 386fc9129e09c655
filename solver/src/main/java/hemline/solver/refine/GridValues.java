package hemline.solver.refine;

import java.util.Arrays;

/**
 * One quantity on the grids of a family, coarsest first, with the noise iteration left in it.
 *
 * <p>Grids without a usable value are left out. The sizes are relative: only their ratios count.
 */
public final class GridValues {
  private final double[] value;
  private final double[] size;
  private final double[] iteration;

  /**
   * Keeps the grids whose value is finite.
   *
   * @param value coarsest first; not a number where a grid has none; at least one must be finite
   * @param size representative cell sizes, falling
   * @param iteration half-widths from incomplete or cycling iteration, not negative
   */
  public GridValues(double[] value, double[] size, double[] iteration) {
    int[] kept = new int[value.length];
    int n = 0;
    for (int k = 0; k < value.length; k++) {
      if (Double.isFinite(value[k])) {
        kept[n++] = k;
      }
    }
    if (n == 0) {
      throw new IllegalArgumentException("no grid has a usable value");
    }
    int[] index = Arrays.copyOf(kept, n);
    this.value = pick(value, index);
    this.size = pick(size, index);
    this.iteration = pick(iteration, index);
    for (int k = 0; k < n; k++) {
      if (!(this.size[k] > 0)
          || !(this.iteration[k] >= 0)
          || k > 0 && !(this.size[k] < this.size[k - 1])) {
        throw new IllegalArgumentException(
            "cell sizes must fall and noise must not be negative, got sizes "
                + Arrays.toString(size)
                + " and noise "
                + Arrays.toString(iteration));
      }
    }
  }

  private static double[] pick(double[] from, int[] index) {
    return Arrays.stream(index).mapToDouble(k -> from[k]).toArray();
  }

  int count() {
    return value.length;
  }

  double value(int k) {
    return value[k];
  }

  double size(int k) {
    return size[k];
  }

  double iteration(int k) {
    return iteration[k];
  }

  /** Largest iteration half-width of the three finest grids. */
  double noise() {
    double noise = 0;
    for (int k = Math.max(0, value.length - 3); k < value.length; k++) {
      noise = Math.max(noise, iteration[k]);
    }
    return noise;
  }
}
