package hemline.shared.units;

/**
 * A range of a quantity, SI.
 *
 * @param low lower end
 * @param high upper end, above the lower
 */
public record QuantityRange(double low, double high) {
  public QuantityRange {
    if (!(low < high)) {
      throw new IllegalArgumentException("a range needs low < high, got " + low + ".." + high);
    }
  }
}
