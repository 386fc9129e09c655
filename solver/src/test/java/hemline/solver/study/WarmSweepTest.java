package hemline.solver.study;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import hemline.shared.result.Figure;
import hemline.shared.result.GridRun;
import hemline.shared.result.SectionResult;
import hemline.shared.result.SolveStatus;
import hemline.solver.flow.CancelToken;
import hemline.solver.flow.Closure;
import hemline.solver.flow.ProgressListener;
import hemline.solver.flow.StoppingLimits;
import hemline.solver.grid.MeshLevel;
import hemline.solver.refine.FamilySolver;
import hemline.solver.refine.GridFamily;
import hemline.solver.refine.SectionFamily;
import hemline.solver.refine.SolveRequest;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import org.junit.jupiter.api.Test;

/** Sweeps whose points start from each other, on the coarsest grid of coarse families. */
class WarmSweepTest {
  /** Solves one grid for real and notes where each gap started; can fail at one gap. */
  private static final class OneGrid implements SectionFamily {
    private final FamilySolver solver = new FamilySolver();
    private final boolean warm;
    private final double failing;
    final Map<Double, List<Double>> starts = new ConcurrentHashMap<>();

    OneGrid(boolean warm, double failing) {
      this.warm = warm;
      this.failing = failing;
    }

    @Override
    public GridFamily solve(SolveRequest request, CancelToken cancel, ProgressListener progress) {
      double gap = request.section().gap();
      starts.put(gap, request.before().stream().map(b -> b.problem().scales().length()).toList());
      if (gap == failing) {
        throw new ArithmeticException("no flow");
      }
      return solver.solve(
          new SolveRequest(
              request.section(),
              request.level(),
              1,
              request.closure(),
              warm ? request.before() : List.of()),
          cancel,
          progress);
    }
  }

  private static List<SectionResult> sweep(
      OneGrid family, Closure closure, double suction, int threads, Double... gaps) {
    return new SweepStudy(family)
        .overGaps(
            MadeUpFamily.section(MadeUpFamily.lip("flat")).withSuction(suction),
            List.of(gaps),
            new RunOptions(MeshLevel.COARSE, closure, false, threads),
            new CancelToken(),
            ProgressListener.NONE)
        .points();
  }

  private static GridRun run(SectionResult result) {
    return result.grids().get(0);
  }

  private static double leak(SectionResult result) {
    return run(result).figures().scalars().get(Figure.LEAK_FLOW);
  }

  private static void warmEqualsCold(Closure closure, double suction, double share) {
    Double[] gaps = {1.6e-3, 1.8e-3, 2.0e-3, 2.2e-3};
    List<SectionResult> warm = sweep(new OneGrid(true, 0), closure, suction, 2, gaps);
    List<SectionResult> cold = sweep(new OneGrid(false, 0), closure, suction, 2, gaps);
    double window = StoppingLimits.LEAK.figureWindow();
    for (int i = 0; i < gaps.length; i++) {
      assertThat(warm.get(i).status()).isEqualTo(SolveStatus.CONVERGED);
      assertThat(leak(warm.get(i)) / leak(cold.get(i))).isCloseTo(1, within(window));
    }
    // 1.8 and 2.2 mm are the middles of the halves, 1.6 and 2.0 mm start from them
    for (int i : new int[] {0, 2}) {
      assertThat((double) run(warm.get(i)).iterations())
          .isLessThan(share * run(cold.get(i)).iterations());
    }
    for (int i : new int[] {1, 3}) {
      assertThat(run(warm.get(i)).iterations()).isEqualTo(run(cold.get(i)).iterations());
    }
  }

  @Test
  void turbulentWarmAnswersAreTheColdOnesForLess() {
    warmEqualsCold(Closure.SST, 600, 0.8);
  }

  @Test
  void laminarWarmAnswersAreTheColdOnesForLess() {
    // 19 steps from a neighbour; 29 from rest, where upwind convection leads to the first grid
    warmEqualsCold(Closure.LAMINAR, 10, 0.7);
  }

  @Test
  void theSameBitsForAnyThreadsAndOrderOfTheRequest() {
    OneGrid family = new OneGrid(true, 0);
    List<SectionResult> one = sweep(family, Closure.SST, 600, 1, 1.6e-3, 1.8e-3, 2e-3, 2.2e-3);
    List<SectionResult> two =
        sweep(new OneGrid(true, 0), Closure.SST, 600, 2, 2.2e-3, 1.6e-3, 2e-3, 1.8e-3, 1.6e-3);
    assertThat(family.starts)
        .containsEntry(1.8e-3, List.of())
        .containsEntry(1.6e-3, List.of(1.8e-3))
        .containsEntry(2.2e-3, List.of())
        .containsEntry(2e-3, List.of(2.2e-3));
    int[] place = {3, 0, 2, 1, 0};
    for (int i = 0; i < place.length; i++) {
      assertThat(run(two.get(i))).isEqualTo(run(one.get(place[i])));
    }
  }

  @Test
  void aPointStartsColdWhenItsNeighbourFailed() {
    OneGrid family = new OneGrid(true, 1.8e-3);
    List<SectionResult> points =
        sweep(family, Closure.LAMINAR, 10, 2, 1.6e-3, 1.8e-3, 2e-3, 2.2e-3);
    assertThat(points.get(1).status()).isEqualTo(SolveStatus.FAILED);
    assertThat(family.starts).containsEntry(1.6e-3, List.of());
    List<SectionResult> cold = sweep(new OneGrid(false, 0), Closure.LAMINAR, 10, 1, 1.6e-3);
    assertThat(run(points.get(0))).isEqualTo(run(cold.get(0)));
  }

  @Test
  void everyPointStartsFromOneSolvedBeforeIt() {
    for (int n = 0; n <= 40; n++) {
      int[] parent = WarmOrder.of(n);
      assertThat(Arrays.stream(parent).filter(p -> p < 0)).hasSize(Math.min(n, 2));
      for (int i = 0; i < n; i++) {
        int steps = 0;
        for (int p = i; p >= 0; p = parent[p]) {
          steps++;
        }
        assertThat(steps).as("depth of point %d of %d", i, n).isLessThanOrEqualTo(6);
      }
    }
  }
}
