package hemline.viewer.picture;

import hemline.viewer.format.Digits;
import java.util.ArrayList;
import java.util.List;

/**
 * A linear or logarithmic number scale.
 *
 * @param low value at its beginning
 * @param high value at its end
 * @param log true for powers of ten
 */
record PlotScale(double low, double high, boolean log) {
  private static final int LONGEST_PLAIN = 4;
  private static final double[] WITHIN_A_DECADE = {1, 1.5, 2, 3, 4, 6, 8};

  /** A place on the scale with its number. */
  record Tick(double value, String text) {}

  PlotScale {
    if (!(high > low) || log && !(low > 0)) {
      throw new IllegalArgumentException("no scale from " + low + " to " + high);
    }
  }

  /** Scale from 0. */
  static PlotScale upTo(double high) {
    return new PlotScale(0, high, false);
  }

  /** Scale with some air around a range, never empty. */
  static PlotScale linear(double low, double high) {
    double air = Math.max(0.06 * (high - low), 1e-6 * (Math.abs(low) + Math.abs(high)) + 1e-12);
    return new PlotScale(low - air, high + air, false);
  }

  /** Whole decades around a positive range. */
  static PlotScale decades(double low, double high) {
    double from = Math.pow(10, Math.floor(Math.log10(low)));
    double to = Math.pow(10, Math.ceil(Math.log10(high)));
    return new PlotScale(from, to > from ? to : 10 * from, true);
  }

  /** Share of the way from beginning to end. */
  double share(double value) {
    return log ? Math.log(value / low) / Math.log(high / low) : (value - low) / (high - low);
  }

  boolean holds(double value) {
    return value >= low - 1e-9 * Math.abs(low) && value <= high + 1e-9 * Math.abs(high);
  }

  /** Round numbers along the scale, about as many as wanted. */
  List<Tick> ticks(int wanted) {
    List<Tick> ticks = new ArrayList<>();
    if (log) {
      int first = (int) Math.ceil(Math.log10(low) - 1e-9);
      int last = (int) Math.floor(Math.log10(high) + 1e-9);
      if (high / low < 10) {
        for (double value : WITHIN_A_DECADE) {
          if (holds(value)) {
            ticks.add(new Tick(value, Digits.plain(value, 2)));
          }
        }
        return ticks;
      }
      int step = Math.max(1, (int) Math.ceil((last - first) / (double) wanted));
      for (int k = first; k <= last; k += step) {
        ticks.add(new Tick(Math.pow(10, k), power(k)));
      }
      return ticks;
    }
    Ticks round = Ticks.within(low, high, wanted);
    for (double value : round.values()) {
      ticks.add(new Tick(value, Digits.fixed(value, round.decimals())));
    }
    return ticks;
  }

  private static String power(int k) {
    if (k < 0) {
      return k >= -LONGEST_PLAIN ? Digits.fixed(Math.pow(10, k), -k) : "1e\u2212" + -k;
    }
    return k <= LONGEST_PLAIN ? Digits.fixed(Math.pow(10, k), 0) : "1e" + k;
  }
}
