package hemline.solver.study;

import hemline.shared.problem.Problem;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * Gaps of a seal over rough ground and how much of its length lies over each.
 *
 * @param gaps m, positive, increasing
 * @param weights share of the seal at each gap, positive or 0, summing to 1
 */
public record GapDistribution(List<Double> gaps, List<Double> weights) {
  private static final double ROUND_OFF = 1e-9;

  public GapDistribution {
    gaps = List.copyOf(gaps);
    weights = List.copyOf(weights);
    double sum = 0;
    for (int g = 0; g < gaps.size(); g++) {
      if (!(gaps.get(g) > 0) || g > 0 && !(gaps.get(g) > gaps.get(g - 1))) {
        throw new IllegalArgumentException("gaps must be positive and increase, got " + gaps);
      }
      sum += g < weights.size() && weights.get(g) >= 0 ? weights.get(g) : Double.NaN;
    }
    if (gaps.isEmpty() || weights.size() != gaps.size() || !(Math.abs(sum - 1) < ROUND_OFF)) {
      throw new IllegalArgumentException(
          "a distribution needs a weight for each gap, together 1, got " + weights);
    }
  }

  /**
   * Every gap with the same weight.
   *
   * @param gaps m, at least one, in any order; repeats count once
   */
  public static GapDistribution even(List<Double> gaps) {
    return of(
        gaps.stream().distinct().toList(),
        Collections.nCopies((int) gaps.stream().distinct().count(), 1.0));
  }

  /**
   * Gaps with weights, which are scaled so that they sum to 1.
   *
   * @param gaps m, at least one, in any order; weights of repeated gaps add up
   * @param weights as many as gaps, not negative, not all 0
   */
  public static GapDistribution of(List<Double> gaps, List<Double> weights) {
    SortedMap<Double, Double> sorted = new TreeMap<>();
    double sum = 0;
    for (int g = 0; g < gaps.size(); g++) {
      sorted.merge(gaps.get(g), weights.get(g), Double::sum);
      sum += weights.get(g);
    }
    double total = sum;
    return new GapDistribution(
        List.copyOf(sorted.keySet()), sorted.values().stream().map(w -> w / total).toList());
  }

  /**
   * The distribution of heights that were measured along the ground: a height between two gaps
   * counts for both of them, as straight interpolation of the leak between them would have it.
   *
   * @param gaps m, at least two, increasing
   * @param heights clearances measured at places as long as each other, m, each within the gaps; at
   *     least one
   */
  public static GapDistribution ofHeights(List<Double> gaps, List<Double> heights) {
    double[] weight = new double[gaps.size()];
    for (double height : heights) {
      int g = 1;
      while (g < gaps.size() - 1 && gaps.get(g) < height) {
        g++;
      }
      double share = (height - gaps.get(g - 1)) / (gaps.get(g) - gaps.get(g - 1));
      weight[g - 1] += 1 - share;
      weight[g] += share;
    }
    List<Double> weights = new ArrayList<>();
    for (double w : weight) {
      weights.add(Math.max(0, w));
    }
    return of(gaps, weights);
  }

  /**
   * What is wrong with weights that a user gave; empty when they can be used.
   *
   * @param of what they weigh, such as gaps
   * @param count how many of them
   * @param weights as given
   */
  public static List<Problem> check(String of, int count, List<Double> weights) {
    if (weights.size() != count) {
      return List.of(
          problem(
              "there must be one weight for each of the "
                  + count
                  + " "
                  + of
                  + ", got "
                  + weights.size()));
    }
    double sum = 0;
    for (double weight : weights) {
      if (!(weight >= 0) || !Double.isFinite(weight)) {
        return List.of(problem("a weight must be 0 or more, got " + weight));
      }
      sum += weight;
    }
    return sum > 0 && Double.isFinite(sum)
        ? List.of()
        : List.of(problem("at least one weight must be above 0"));
  }

  private static Problem problem(String text) {
    return new Problem("ranking.weights", "weights", text);
  }

  /** True when all gaps weigh the same. */
  public boolean uniform() {
    return weights.stream().allMatch(w -> Math.abs(w * weights.size() - 1) < ROUND_OFF);
  }
}
