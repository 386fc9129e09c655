package hemline.solver.grid;

import java.util.ArrayList;
import java.util.List;

/**
 * Wanted cell size along one direction: the least of what all sources ask for, m.
 *
 * <p>A source asks for its own size on its interval; away from it the size grows in proportion to
 * the distance, gently at first.
 */
final class SizeFunction {
  /** Growth of the size per distance far from sources. */
  static final double GROWTH = 0.15;

  /**
   * A place that asks for fine cells.
   *
   * @param from start of its interval, m
   * @param to end, m
   * @param size wanted there, m
   * @param nearGrowth growth of the size per distance in the zone around the interval
   * @param zone width of that zone, m
   */
  record Source(double from, double to, double size, double nearGrowth, double zone) {
    double at(double c) {
      double d = c < from ? from - c : c > to ? c - to : 0;
      return size + nearGrowth * Math.min(d, zone) + GROWTH * Math.max(0, d - zone);
    }
  }

  private final List<Source> sources = new ArrayList<>();
  private final double largest;

  /**
   * @param largest size without sources, m
   */
  SizeFunction(double largest) {
    this.largest = largest;
  }

  void add(Source source) {
    sources.add(source);
  }

  double at(double c) {
    double s = largest;
    for (Source source : sources) {
      s = Math.min(s, source.at(c));
    }
    return s;
  }
}
