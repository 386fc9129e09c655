package hemline.solver.grid;

/**
 * Lines of a tensor-product grid, strictly increasing, metres.
 *
 * <p>The arrays are not copied and must not be changed.
 *
 * @param x vertical lines, nx + 1 of them
 * @param y horizontal lines, ny + 1 of them
 */
public record GridLines(double[] x, double[] y) {
  public GridLines {
    requireIncreasing(x);
    requireIncreasing(y);
  }

  private static void requireIncreasing(double[] line) {
    if (line.length < 2) {
      throw new IllegalArgumentException("a grid needs at least one cell each way");
    }
    for (int i = 1; i < line.length; i++) {
      if (!(line[i] > line[i - 1])) {
        throw new IllegalArgumentException("grid lines must increase, at index " + i);
      }
    }
  }

  public int nx() {
    return x.length - 1;
  }

  public int ny() {
    return y.length - 1;
  }
}
