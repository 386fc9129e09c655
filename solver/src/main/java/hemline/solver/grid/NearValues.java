package hemline.solver.grid;

import java.util.Arrays;

/**
 * Values that are joined to groups no wider than a reach, each group to be given one value.
 *
 * <p>That value is the least or greatest of all if the group holds it, else the one with the most
 * weight, else the middle of the group.
 */
final class NearValues {
  private final double[] value;
  private final double reach;
  private final int[] parent;
  private final double[] low;
  private final double[] high;
  private final double[] weight;

  /**
   * @param value not modified
   * @param reach greatest width of a group
   */
  NearValues(double[] value, double reach) {
    this.value = value.clone();
    this.reach = reach;
    low = value.clone();
    high = value.clone();
    weight = new double[value.length];
    parent = new int[value.length];
    Arrays.setAll(parent, k -> k);
  }

  /** True when the groups of the two together are no wider than the reach. */
  boolean fit(int a, int b) {
    int ra = root(a);
    int rb = root(b);
    return Math.max(high[ra], high[rb]) - Math.min(low[ra], low[rb]) <= reach;
  }

  void join(int a, int b) {
    int to = Math.min(root(a), root(b));
    int gone = Math.max(root(a), root(b));
    parent[gone] = to;
    low[to] = Math.min(low[to], low[gone]);
    high[to] = Math.max(high[to], high[gone]);
  }

  /** Adds weight to a value. */
  void weigh(int k, double by) {
    weight[k] += by;
  }

  /** The value that each now has. */
  double[] settled() {
    double least = Arrays.stream(value).min().orElse(0);
    double greatest = Arrays.stream(value).max().orElse(0);
    double[] settled = new double[value.length];
    for (int k = 0; k < value.length; k++) {
      int r = root(k);
      if (low[r] == high[r]) {
        settled[k] = value[k];
      } else if (low[r] == least || high[r] == greatest) {
        settled[k] = low[r] == least ? least : greatest;
      } else {
        settled[k] = heaviest(r);
      }
    }
    return settled;
  }

  private double heaviest(int group) {
    double best = 0.5 * (low[group] + high[group]);
    double most = 0;
    for (int k = 0; k < value.length; k++) {
      if (root(k) == group && weightOf(group, value[k]) > most) {
        most = weightOf(group, value[k]);
        best = value[k];
      }
    }
    return best;
  }

  private double weightOf(int group, double v) {
    double sum = 0;
    for (int k = 0; k < value.length; k++) {
      if (value[k] == v && root(k) == group) {
        sum += weight[k];
      }
    }
    return sum;
  }

  private int root(int k) {
    int r = k;
    while (parent[r] != r) {
      r = parent[r];
    }
    return r;
  }
}
