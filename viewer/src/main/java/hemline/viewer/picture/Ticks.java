package hemline.viewer.picture;

import java.util.ArrayList;
import java.util.List;

/**
 * Round numbers on a scale.
 *
 * @param step distance between ticks
 * @param values the ticks, increasing
 * @param decimals digits behind the point that tell neighbouring ticks apart
 */
public record Ticks(double step, List<Double> values, int decimals) {

  /** Ticks inside a range, about as many as wanted, at steps of 1, 2 or 5 times a power of ten. */
  public static Ticks within(double low, double high, int wanted) {
    double step = step(high - low, wanted);
    int decimals = Math.max(0, (int) -Math.floor(Math.log10(step) + 1e-9));
    List<Double> values = new ArrayList<>();
    long last = (long) Math.floor(high / step + 1e-9);
    for (long k = (long) Math.ceil(low / step - 1e-9); k <= last; k++) {
      values.add(k * step);
    }
    return new Ticks(step, List.copyOf(values), decimals);
  }

  /** The round step nearest to a range over the wanted count. */
  public static double step(double range, int wanted) {
    if (!(range > 0) || wanted < 1) {
      throw new IllegalArgumentException("no ticks in a range of " + range);
    }
    double raw = range / wanted;
    double ten = Math.pow(10, Math.floor(Math.log10(raw)));
    double lead = raw / ten;
    return ten * (lead < 1.5 ? 1 : lead < 3.5 ? 2 : lead < 7.5 ? 5 : 10);
  }
}
