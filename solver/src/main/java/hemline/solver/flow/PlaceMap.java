package hemline.solver.flow;

import java.util.Arrays;

/**
 * Place in one section that corresponds to a place in another: piecewise linear along x and y
 * between stations that both have, such as the lip's sides and its lowest point.
 */
final class PlaceMap {
  private final double[] targetX;
  private final double[] sourceX;
  private final double[] targetY;
  private final double[] sourceY;

  /** Pairs stations, each list strictly increasing and both directions equally long, m. */
  private PlaceMap(double[] targetX, double[] sourceX, double[] targetY, double[] sourceY) {
    this.targetX = targetX;
    this.sourceX = sourceX;
    this.targetY = targetY;
    this.sourceY = sourceY;
  }

  /** Every place corresponds to itself. */
  static PlaceMap same() {
    double[] unit = {0, 1};
    return new PlaceMap(unit, unit, unit, unit);
  }

  /**
   * From the places of one section to those of another with the same lip: heights below the lip and
   * lengths beside it scale with the gap or the domain, the lip itself keeps its size.
   */
  static PlaceMap between(SectionSetup target, SectionSetup source) {
    return new PlaceMap(
        target.stationsX(), source.stationsX(), target.stationsY(), source.stationsY());
  }

  /** Source place for a target place, m. */
  double x(double x) {
    return map(targetX, sourceX, x);
  }

  double y(double y) {
    return map(targetY, sourceY, y);
  }

  private static double map(double[] from, double[] to, double at) {
    int k = Arrays.binarySearch(from, at);
    int i = Math.max(0, Math.min(from.length - 2, k >= 0 ? k : -k - 2));
    double t = (at - from[i]) / (from[i + 1] - from[i]);
    return to[i] + t * (to[i + 1] - to[i]);
  }
}
