package hemline.solver.study;

import java.util.Arrays;

/**
 * Which point of a sweep starts from which.
 *
 * <p>The points, in order of the swept value, are cut into two halves. In each half the middle
 * starts cold, the middles of the two parts that it leaves start from it, and so on: two cold
 * starts in all, and work for two threads from the first solve on, for more soon after.
 */
final class WarmOrder {
  private WarmOrder() {}

  /** Every point starts cold. */
  static int[] cold(int points) {
    int[] parent = new int[points];
    Arrays.fill(parent, -1);
    return parent;
  }

  /**
   * Point that each starts from, -1 for a cold start.
   *
   * @param points number of points, in order of the swept value
   */
  static int[] of(int points) {
    int[] parent = new int[points];
    int half = points / 2;
    part(parent, 0, half, -1);
    part(parent, half, points, -1);
    return parent;
  }

  private static void part(int[] parent, int from, int to, int start) {
    if (from < to) {
      int middle = from + (to - from) / 2;
      parent[middle] = start;
      part(parent, from, middle, middle);
      part(parent, middle + 1, to, middle);
    }
  }
}
