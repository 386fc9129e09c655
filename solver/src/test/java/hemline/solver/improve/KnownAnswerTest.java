package hemline.solver.improve;

import static org.assertj.core.api.Assertions.assertThat;

import hemline.shared.fluid.Air;
import hemline.shared.profile.LipDrawing;
import hemline.shared.profile.LipProfile;
import hemline.shared.profile.LipResolver;
import hemline.shared.profile.Starter;
import hemline.shared.result.Figure;
import hemline.shared.result.GridRun;
import hemline.shared.section.GroundMotion;
import hemline.shared.section.SealSection;
import hemline.solver.flow.CancelToken;
import hemline.solver.flow.Closure;
import hemline.solver.flow.ProgressListener;
import hemline.solver.grid.MeshLevel;
import hemline.solver.refine.FamilySolver;
import hemline.solver.refine.SolveRequest;
import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleFunction;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/**
 * A search beside a brute sweep of one length, on solved flows. Every build takes few points on one
 * grid; {@code -Dhemline.sweep=100} sets the points of the long form, which takes three grids.
 */
final class KnownAnswerTest {
  private static final int POINTS = Integer.getInteger("hemline.sweep", 5);
  private static final boolean LONG = POINTS >= 100;
  private static final int EVALUATIONS = LONG ? 25 : 6;

  /** Half the least numerical band of a coarse ratio: leaks this close are the same. */
  private static final double BAND = 0.005;

  private static final ShapeLimits LIMITS = new ShapeLimits(40e-3, 10e-3, 0.8e-3, 0.8e-3);

  private static LipSpace one(String name, double low, double high, DoubleFunction<Starter> shape) {
    return new LipSpace() {
      @Override
      public List<NamedLength> lengths() {
        return List.of(new NamedLength(name, low, high));
      }

      @Override
      public LipDrawing drawing(double[] v) {
        return shape.apply(v[0]).drawing();
      }
    };
  }

  private static List<Double> leaks(
      List<LipProfile> lips, double gap, double suction, Closure closure) {
    List<SealSection> sections = new ArrayList<>();
    for (LipProfile lip : lips) {
      sections.add(
          new SealSection(lip, gap, suction, new GroundMotion(0, 0), Air.STANDARD, List.of()));
    }
    Double[] leaks = new Double[sections.size()];
    IntStream.range(0, leaks.length)
        .parallel()
        .forEach(k -> leaks[k] = leak(sections.get(k), closure));
    return List.of(leaks);
  }

  /** On the finest grid, m²/s. */
  private static double leak(SealSection section, Closure closure) {
    List<GridRun> runs =
        new FamilySolver()
            .solve(
                SolveRequest.cold(section, MeshLevel.COARSE, LONG ? 3 : 1, closure),
                new CancelToken(),
                ProgressListener.NONE)
            .runs();
    return runs.get(runs.size() - 1).figures().scalars().getOrDefault(Figure.LEAK_FLOW, Double.NaN);
  }

  private static void beside(LipSpace space, double gap, double suction, Closure closure)
      throws Exception {
    NamedLength length = space.lengths().get(0);
    List<LipProfile> brute = new ArrayList<>();
    for (int k = 0; k < POINTS; k++) {
      double at = length.at(k / (POINTS - 1.0));
      brute.add(LipResolver.resolve(space.drawing(new double[] {at})));
    }
    List<Double> known = leaks(brute, gap, suction, closure);
    double least = known.stream().mapToDouble(q -> q).filter(q -> q > 0).min().orElseThrow();
    LipSearch search =
        new LipSearch(
            space,
            LIMITS,
            lips ->
                leaks(lips, gap, suction, closure).stream()
                    .map(q -> new LipSearch.Score(q / least, null))
                    .toList(),
            EVALUATIONS,
            1,
            () -> false);
    assertThat(search.run(all -> {})).isTrue();
    Evaluation best =
        search.history().stream()
            .min(java.util.Comparator.comparingDouble(Evaluation::score))
            .orElseThrow();
    String told =
        "%s: sweep best at %.4g m, search %.4g m in evaluation %d, leak over the best %.5f"
            .formatted(
                length.name(),
                length.at(known.indexOf(least) / (POINTS - 1.0)),
                best.lengths().get(0),
                best.number(),
                best.score());
    if (LONG) {
      System.out.println(told);
    }
    assertThat(best.score()).as(told).isLessThan(1 + BAND);
  }

  @Test
  void theWidthOfAFlatLipInLaminarFlow() throws Exception {
    beside(
        one("width", 1e-3, 14e-3, w -> new Starter.Flat(w, 10e-3)), 0.3e-3, 100, Closure.LAMINAR);
  }

  @Test
  void thePitchOfTeeth() throws Exception {
    beside(
        one("pitch", 1.8e-3, 12e-3, p -> new Starter.Teeth(3, p, 6e-3, 0.8e-3, 0, 10e-3)),
        2e-3,
        600,
        Closure.SA);
  }
}
