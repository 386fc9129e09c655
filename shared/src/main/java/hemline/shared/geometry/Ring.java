package hemline.shared.geometry;

/**
 * Simple polygon, closed implicitly, counter-clockwise, metres.
 *
 * <p>The arrays are not copied and must not be changed.
 */
public record Ring(double[] x, double[] y) {
  public Ring {
    if (x.length != y.length || x.length < 3) {
      throw new IllegalArgumentException("a ring needs at least three corners in equal arrays");
    }
  }

  public int size() {
    return x.length;
  }
}
