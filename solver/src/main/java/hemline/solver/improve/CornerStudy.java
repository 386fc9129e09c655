package hemline.solver.improve;

import hemline.shared.geometry.Vertex;
import hemline.shared.profile.LipDrawing;
import hemline.shared.profile.LipProfile;
import hemline.shared.profile.LipResolver;
import hemline.shared.result.Estimate;
import hemline.shared.result.Figure;
import hemline.shared.result.GridRun;
import hemline.shared.result.SectionResult;
import hemline.shared.section.SealSection;
import hemline.solver.flow.CancelToken;
import hemline.solver.flow.Closure;
import hemline.solver.flow.ProgressListener;
import hemline.solver.grid.MeshLevel;
import hemline.solver.refine.SectionFamily;
import hemline.solver.study.BatchAnswer;
import hemline.solver.study.BatchStudy;
import hemline.solver.study.PoolRunner;
import hemline.solver.study.ResultStore;
import hemline.solver.study.RunOptions;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What moving each corner does to the leak, by central differences of its logarithm on one mesh
 * family, so that errors that both moved lips share cancel:
 *
 * <pre>  s = (ln q₊ − ln q₋) d / (h₊ + h₋),  d = 0.1 mm, h the steps</pre>
 *
 * <p>The gap stays that below the lowest point; a lowest corner only moves up, since moved down it
 * would raise all others. The band holds the differences between the grids of the family (the whole
 * effect where only one grid has a flow), what the iteration leaves, and the difference to the
 * second flow model.
 */
public final class CornerStudy {
  private final SectionFamily family;
  private final ResultStore<SectionResult> store;
  private final MeshLevel level;
  private final double step;

  /**
   * A study on coarse grids with steps of a tenth of a millimetre.
   *
   * @param store keeps what is solved
   */
  public CornerStudy(SectionFamily family, ResultStore<SectionResult> store) {
    this(family, store, MeshLevel.COARSE, CornerEffect.STEP);
  }

  CornerStudy(
      SectionFamily family, ResultStore<SectionResult> store, MeshLevel level, double step) {
    this.family = family;
    this.store = store;
    this.level = level;
    this.step = step;
  }

  /** A lip with one coordinate of one corner moved both ways. */
  private record Pair(
      int corner, boolean upwards, double reach, LipProfile ahead, LipProfile behind) {}

  /**
   * Effects of the corners that may move, in their order.
   *
   * @param lip as drawn; the profile of the section is its own
   * @param closure flow model; AUTO is that of the lip itself
   * @param corners numbers of the corners
   * @return empty when stopped
   */
  public List<CornerEffect> of(
      LipDrawing lip,
      SealSection section,
      Closure closure,
      List<Integer> corners,
      int threads,
      CancelToken cancel,
      ProgressListener progress) {
    List<Pair> pairs = new ArrayList<>();
    for (int corner : corners) {
      add(pairs, lip, corner, false);
      add(pairs, lip, corner, true);
    }
    List<SectionResult> alone =
        solved(List.of(section), closure, threads, cancel, (share, what) -> {});
    if (alone.isEmpty()) {
      return List.of();
    }
    Closure main = closure(alone.get(0), closure);
    boolean second = main != Closure.LAMINAR && main != Closure.AUTO;
    List<SealSection> sections = new ArrayList<>();
    for (Pair pair : pairs) {
      sections.add(section.withProfile(pair.ahead()));
      sections.add(section.withProfile(pair.behind()));
    }
    double share = second ? 0.5 : 1;
    List<SectionResult> first =
        solved(sections, main, threads, cancel, (d, w) -> progress.progress(share * d, w));
    List<SectionResult> other =
        second
            ? solved(
                sections,
                main.second(),
                threads,
                cancel,
                (d, w) -> progress.progress(share + share * d, w))
            : first;
    if (first.size() < sections.size() || other.size() < sections.size()) {
      return List.of();
    }
    List<CornerEffect> effects = new ArrayList<>();
    for (int corner : corners) {
      Vertex v = lip.body().at(corner);
      Estimate[] found = new Estimate[2];
      for (int k = 0; k < pairs.size(); k++) {
        if (pairs.get(k).corner() == corner) {
          double times = CornerEffect.STEP / pairs.get(k).reach();
          Estimate e =
              estimate(
                  first.subList(2 * k, 2 * k + 2),
                  second ? other.subList(2 * k, 2 * k + 2) : List.of(),
                  times);
          found[pairs.get(k).upwards() ? 1 : 0] = e;
        }
      }
      effects.add(new CornerEffect(corner, v.x(), v.y(), found[0], found[1], lowest(lip, corner)));
    }
    return effects;
  }

  private void add(List<Pair> pairs, LipDrawing lip, int corner, boolean upwards) {
    boolean lowest = upwards && lowest(lip, corner);
    LipProfile ahead = moved(lip, corner, upwards, step);
    LipProfile behind = moved(lip, corner, upwards, lowest ? 0 : -step);
    if (ahead != null && behind != null) {
      pairs.add(new Pair(corner, upwards, lowest ? step : 2 * step, ahead, behind));
    }
  }

  private static boolean lowest(LipDrawing lip, int corner) {
    return lip.body().vertices().stream().allMatch(v -> v.y() >= lip.body().at(corner).y());
  }

  private static @Nullable LipProfile moved(
      LipDrawing lip, int corner, boolean upwards, double by) {
    Vertex v = lip.body().at(corner);
    double[] at = {v.x() + (upwards ? 0 : by), v.y() + (upwards ? by : 0)};
    return LipResolver.checkShape(new CornerSpace(lip, List.of(corner), 1).drawing(at)).profile();
  }

  private List<SectionResult> solved(
      List<SealSection> sections,
      Closure closure,
      int threads,
      CancelToken cancel,
      ProgressListener progress) {
    BatchAnswer answer =
        new BatchStudy(new PoolRunner(family), store)
            .run(sections, new RunOptions(level, closure, false, threads), cancel, progress);
    return answer.complete() ? answer.results() : List.of();
  }

  private static Closure closure(SectionResult result, Closure asked) {
    for (Closure closure : Closure.values()) {
      if (closure.key().equals(result.closure())) {
        return closure;
      }
    }
    return asked;
  }

  private static @Nullable Estimate estimate(
      List<SectionResult> pair, List<SectionResult> second, double times) {
    List<Double> byGrid = slopes(pair, times);
    if (byGrid.isEmpty()) {
      return null;
    }
    double value = byGrid.get(byGrid.size() - 1);
    // one grid alone tells nothing of its error
    double numerical = byGrid.size() < 2 ? Math.abs(value) : 0;
    for (double other : byGrid) {
      numerical = Math.max(numerical, Math.abs(other - value));
    }
    List<Double> others = second.isEmpty() ? List.of() : slopes(second, times);
    double model = others.isEmpty() ? 0 : Math.abs(others.get(others.size() - 1) - value);
    return new Estimate(
        value, numerical, times * spread(pair), model, model, Estimate.Trend.UNKNOWN);
  }

  /** Slopes grid by grid, coarsest first, where both lips have a flow. */
  private static List<Double> slopes(List<SectionResult> pair, double times) {
    List<Double> slopes = new ArrayList<>();
    int n = Math.min(pair.get(0).grids().size(), pair.get(1).grids().size());
    for (int k = 0; k < n; k++) {
      double ahead = leak(pair.get(0).grids().get(k));
      double behind = leak(pair.get(1).grids().get(k));
      double slope = times * Math.log(ahead / behind);
      if (Double.isFinite(slope)) {
        slopes.add(slope);
      }
    }
    return slopes;
  }

  private static double leak(GridRun run) {
    return run.figures().scalars().getOrDefault(Figure.LEAK_FLOW, Double.NaN);
  }

  /** What iteration leaves of the ratio on the finest grids, as a share. */
  private static double spread(List<SectionResult> pair) {
    double sum = 0;
    for (SectionResult r : pair) {
      GridRun run = r.grids().get(r.grids().size() - 1);
      double share = run.leakSpread() / leak(run);
      sum = Math.hypot(sum, Double.isFinite(share) ? share : 0);
    }
    return sum;
  }
}
