package hemline.solver.refine;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import hemline.shared.result.Figure;
import hemline.shared.result.SolveStatus;
import hemline.shared.section.SealSection;
import hemline.solver.flow.CancelToken;
import hemline.solver.flow.Closure;
import hemline.solver.flow.Lips;
import hemline.solver.flow.ProgressListener;
import hemline.solver.flow.SolvedSection;
import hemline.solver.grid.MeshLevel;
import java.util.List;
import org.junit.jupiter.api.Test;

/** A flow that starts from the turbulent flow of another model that it is compared with. */
class ComparedFlowTest {
  private static final SealSection SECTION =
      Lips.section(Lips.shipped("labyrinth-three-teeth"), 1, 600, 0, 0);

  private static GridFamily solve(Closure closure, List<SolvedSection> before) {
    return new FamilySolver()
        .solve(
            new SolveRequest(SECTION, MeshLevel.COARSE, 1, closure, before),
            new CancelToken(),
            ProgressListener.NONE);
  }

  private static double leak(GridFamily family) {
    return family.runs().get(0).figures().scalars().get(Figure.LEAK_FLOW);
  }

  @Test
  void isTheLaminarFlow() {
    GridFamily turbulent = solve(Closure.SST, List.of());
    SolvedSection start = turbulent.start();
    assertThat(start).isNotNull();
    GridFamily fromRest = solve(Closure.LAMINAR, List.of());
    GridFamily compared = solve(Closure.LAMINAR, List.of(start.toCompare()));
    assertThat(compared.closure()).isEqualTo(Closure.LAMINAR);
    assertThat(compared.runs().get(0).status()).isEqualTo(SolveStatus.CONVERGED);
    assertThat(leak(compared) / leak(fromRest)).isCloseTo(1, within(1e-3));
    assertThat(Math.abs(leak(turbulent) / leak(fromRest) - 1)).isGreaterThan(5e-3);
  }

  @Test
  void isTheFlowOfTheSecondTurbulentModel() {
    SolvedSection start = solve(Closure.SA, List.of()).start();
    assertThat(start).isNotNull();
    GridFamily fromRest = solve(Closure.SST, List.of());
    GridFamily compared = solve(Closure.SST, List.of(start.toCompare()));
    assertThat(compared.runs().get(0).status()).isEqualTo(SolveStatus.CONVERGED);
    assertThat(leak(compared) / leak(fromRest)).isCloseTo(1, within(1e-3));
    assertThat(compared.runs().get(0).iterations()).isLessThan(fromRest.runs().get(0).iterations());
  }

  @Test
  void startsFromNoOtherModelUnasked() {
    SolvedSection start = solve(Closure.SST, List.of()).start();
    assertThat(start).isNotNull();
    assertThat(start.starts(Closure.SST)).isTrue();
    assertThat(start.starts(Closure.LAMINAR)).isFalse();
    assertThat(start.toCompare().starts(Closure.LAMINAR)).isTrue();
    assertThat(start.starts(Closure.SA)).isFalse();
    assertThat(start.toCompare().starts(Closure.SA)).isTrue();
  }
}
