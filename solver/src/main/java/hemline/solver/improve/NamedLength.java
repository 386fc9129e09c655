package hemline.solver.improve;

/**
 * A length of a shape that a search may change.
 *
 * @param name for people and options
 * @param low least, m
 * @param high most, m, above low
 */
public record NamedLength(String name, double low, double high) {
  public NamedLength {
    if (!(high > low) || !Double.isFinite(high - low)) {
      throw new IllegalArgumentException(
          "the limits of " + name + " must rise, got " + low + " to " + high + " m");
    }
  }

  /** Length at a share of the range, 0 to 1. */
  public double at(double share) {
    return low + share * (high - low);
  }

  /** Share of the range at a length. */
  public double share(double length) {
    return (length - low) / (high - low);
  }
}
