package hemline.solver.improve;

import hemline.shared.problem.Notice;
import hemline.shared.profile.LipDrawing;
import hemline.shared.profile.LipProfile;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;
import org.apache.commons.math3.distribution.NormalDistribution;
import org.apache.commons.math3.random.HaltonSequenceGenerator;
import org.apache.commons.math3.random.RandomGenerator;
import org.apache.commons.math3.random.Well19937c;
import org.jspecify.annotations.Nullable;

/**
 * Searches a space of lips for the least score with few evaluations: by expected improvement of a
 * {@link Surrogate} (Jones, Schonlau & Welch 1998, J. Global Optim. 13, 455, eq. 15), two at a
 * time, the second as if the first had come out as predicted (Ginsbourger, Le Riche & Carraro 2010,
 * kriging believer; from memory). It begins with a Halton sequence over the space. Lips that cannot
 * be built are passed over. The same seed gives the same lips, whatever the threads.
 */
final class LipSearch {
  /** Evaluated at once: work for two threads, and part of the result, so it never changes. */
  private static final int TOGETHER = 2;

  private static final int GLOBAL = 300;
  private static final int LOCAL = 60;
  private static final int CENTRES = 3;
  private static final int MOST_DRAWS = 4000;

  /** Places closer than this, in the unit cube, are the same. */
  private static final double SAME = 1e-4;

  private final LipSpace space;
  private final ShapeLimits limits;
  private final Scorer scorer;
  private final int budget;
  private final BooleanSupplier spent;
  private final RandomGenerator chance;
  private final HaltonSequenceGenerator halton;
  private final List<double[]> places = new ArrayList<>();
  private final List<Evaluation> history = new ArrayList<>();
  private final Map<String, Integer> refusals = new HashMap<>();
  private double[] parameters;
  private int fitted;

  /** Scores lips. */
  interface Scorer {
    /**
     * Scores lips, the less the better.
     *
     * @return in their order; an empty list when stopped
     */
    List<Score> of(List<LipProfile> lips);
  }

  /**
   * A score.
   *
   * @param value not a number where there is no usable flow
   * @param doubt why the solver doubts it; null where it does not
   */
  record Score(double value, @Nullable Notice doubt) {}

  /**
   * A search.
   *
   * @param budget evaluations at most
   * @param spent true once the time is up
   */
  LipSearch(
      LipSpace space,
      ShapeLimits limits,
      Scorer scorer,
      int budget,
      long seed,
      BooleanSupplier spent) {
    this.space = space;
    this.limits = limits;
    this.scorer = scorer;
    this.budget = budget;
    this.spent = spent;
    this.chance = new Well19937c(seed);
    this.halton = new HaltonSequenceGenerator(space.lengths().size());
    this.parameters = Surrogate.usual(space.lengths().size());
    halton.skipTo((int) Math.floorMod(seed, 1000L) + 1);
  }

  /**
   * Searches until the budget is used up, the time is, or it is stopped.
   *
   * @param taker is given all evaluations so far whenever there are more
   * @return false when stopped
   */
  boolean run(Consumer<List<Evaluation>> taker) {
    int first = Math.min(budget, Math.max(4, 2 * space.lengths().size() + 2));
    while (history.size() < budget && !spent.getAsBoolean()) {
      int count = Math.min(TOGETHER, budget - history.size());
      List<Candidate> next = history.size() < first ? drawn(count) : expected(count);
      if (next.isEmpty()) {
        return true;
      }
      List<Score> scores = scorer.of(next.stream().map(Candidate::profile).toList());
      if (scores.size() < next.size()) {
        return false;
      }
      for (int i = 0; i < next.size(); i++) {
        Candidate c = next.get(i);
        Score s = scores.get(i);
        places.add(c.place());
        history.add(
            new Evaluation(
                history.size() + 1, values(c.place()), s.value(), s.doubt(), c.drawing()));
      }
      taker.accept(history());
    }
    return true;
  }

  /** All evaluations in their order. */
  List<Evaluation> history() {
    return List.copyOf(history);
  }

  /** Most frequent reason why a lip could not be built; empty where all could. */
  String refusal() {
    return refusals.entrySet().stream()
        .max(
            Map.Entry.<String, Integer>comparingByValue().thenComparing(Map.Entry.comparingByKey()))
        .map(Map.Entry::getKey)
        .orElse("");
  }

  private record Candidate(double[] place, LipDrawing drawing, LipProfile profile) {}

  private List<Double> values(double[] place) {
    List<Double> values = new ArrayList<>();
    for (int i = 0; i < place.length; i++) {
      values.add(space.lengths().get(i).at(place[i]));
    }
    return values;
  }

  private List<Candidate> drawn(int count) {
    List<Candidate> found = new ArrayList<>();
    for (int k = 0; k < MOST_DRAWS && found.size() < count; k++) {
      consider(halton.nextVector(), found);
    }
    return found;
  }

  /** Adds a place that can be built and is new. */
  private void consider(double[] place, List<Candidate> found) {
    boolean known =
        places.stream().anyMatch(p -> distance(p, place) < SAME)
            || found.stream().anyMatch(c -> distance(c.place(), place) < SAME);
    if (known) {
      return;
    }
    LipDrawing drawing =
        space.drawing(values(place).stream().mapToDouble(Double::doubleValue).toArray());
    ShapeLimits.Judged judged = limits.judge(drawing);
    if (judged.profile() == null) {
      refusals.merge(judged.why(), 1, Integer::sum);
    } else {
      found.add(new Candidate(place, drawing, judged.profile()));
    }
  }

  private static double distance(double[] a, double[] b) {
    double most = 0;
    for (int i = 0; i < a.length; i++) {
      most = Math.max(most, Math.abs(a[i] - b[i]));
    }
    return most;
  }

  /** The next places by expected improvement. */
  private List<Candidate> expected(int count) {
    List<double[]> known = new ArrayList<>();
    List<Double> scores = new ArrayList<>();
    double worst = history.stream().mapToDouble(e -> finite(e.score())).max().orElse(1);
    for (int k = 0; k < history.size(); k++) {
      double score = history.get(k).penalised();
      known.add(places.get(k));
      scores.add(Math.log(Double.isFinite(score) ? score : 1.1 * worst));
    }
    double[] y = scores.stream().mapToDouble(Double::doubleValue).toArray();
    Surrogate model;
    if (known.size() > 1.1 * fitted) {
      model = Surrogate.of(known, y, parameters);
      parameters = model.parameters();
      fitted = known.size();
    } else {
      model = Surrogate.with(known, y, parameters);
    }
    List<Candidate> next = new ArrayList<>();
    while (next.size() < count) {
      double least = Double.POSITIVE_INFINITY;
      for (double value : y) {
        least = Math.min(least, value);
      }
      Candidate one = best(model, least, next);
      if (one == null) {
        return next.isEmpty() ? drawn(count) : next;
      }
      next.add(one);
      known = Surrogate.and(known, one.place());
      y = Arrays.copyOf(y, y.length + 1);
      y[y.length - 1] = model.at(one.place())[0];
      model = Surrogate.with(known, y, parameters);
    }
    return next;
  }

  private static double finite(double score) {
    return Double.isFinite(score) ? score : 0;
  }

  private @Nullable Candidate best(Surrogate model, double least, List<Candidate> taken) {
    record Ranked(double[] place, double gain) {}
    List<Ranked> ranked = new ArrayList<>();
    for (double[] place : proposals()) {
      double[] at = model.at(place);
      ranked.add(new Ranked(place, gain(least - at[0], at[1])));
    }
    ranked.sort(Comparator.comparingDouble(r -> -r.gain()));
    for (Ranked r : ranked) {
      List<Candidate> found = new ArrayList<>(taken);
      consider(r.place(), found);
      if (found.size() > taken.size()) {
        return found.get(taken.size());
      }
    }
    return null;
  }

  /** Expected improvement by a normal value. */
  private static double gain(double ahead, double deviation) {
    if (!(deviation > 0)) {
      return Math.max(0, ahead);
    }
    NormalDistribution unit = new NormalDistribution(null, 0, 1);
    double z = ahead / deviation;
    return ahead * unit.cumulativeProbability(z) + deviation * unit.density(z);
  }

  /** Places all over the space and about the best ones. */
  private List<double[]> proposals() {
    int d = space.lengths().size();
    List<double[]> all = new ArrayList<>();
    for (int k = 0; k < GLOBAL; k++) {
      all.add(halton.nextVector());
    }
    List<Integer> order = new ArrayList<>();
    for (int k = 0; k < history.size(); k++) {
      if (Double.isFinite(history.get(k).score())) {
        order.add(k);
      }
    }
    order.sort(Comparator.comparingDouble(k -> history.get(k).penalised()));
    for (int c = 0; c < Math.min(CENTRES, order.size()); c++) {
      double[] centre = places.get(order.get(c));
      for (int k = 0; k < LOCAL; k++) {
        double size = 0.2 * Math.pow(0.5, k % 5);
        double[] place = new double[d];
        for (int i = 0; i < d; i++) {
          double moved = chance.nextInt(d) < Math.max(1, d / 2) ? chance.nextGaussian() : 0;
          place[i] = Math.max(0, Math.min(1, centre[i] + size * moved));
        }
        all.add(place);
      }
    }
    return all;
  }
}
