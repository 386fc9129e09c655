package hemline.solver.refine;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import hemline.shared.result.Figure;
import hemline.shared.result.GridRun;
import hemline.shared.result.SolveStatus;
import hemline.shared.section.SealSection;
import hemline.solver.flow.CancelToken;
import hemline.solver.flow.Closure;
import hemline.solver.flow.Lips;
import hemline.solver.flow.ProgressListener;
import hemline.solver.grid.MeshLevel;
import java.util.stream.DoubleStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Named;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** Sections at the edge of the range end with usable, finite figures on every grid. */
class HardSectionsTest {

  static Stream<Arguments> sections() {
    double[] step = {4, -1, 400, -1, 400, 0.8, 4, 0.8};
    double[] stepDown = {-400, -1, 4, -1, 4, 0.8, -400, 0.8};
    double[] body = {0, 0, 2, 0, 2, 10, 0, 10};
    double[] vane = {5, 1, 7, 0.5, 7, 3, 5, 3};
    double[] wedge = {-4, 0, -3, 0, -3.5, 3};
    return Stream.of(
        section("0.3 mm under 60 mm", Lips.section(Lips.flat(60), 0.3, 600, 0, 0)),
        section("15 mm", Lips.section(Lips.flat(8), 15, 600, 0, 0)),
        section("hook", Lips.section(Lips.shipped("undercut-hook"), 2, 600, -15, 0)),
        section(
            "bumps before and under the lip",
            Lips.withBumps(
                Lips.section(Lips.flat(8), 2, 600, 5, 0),
                new double[] {-4, 0, -2, 0, -2, 0.7, -4, 0.7},
                new double[] {3, 0, 5, 0, 4, 0.9})),
        section("step up", Lips.withBumps(Lips.section(Lips.flat(8), 2, 600, 0, 0), step)),
        section("step down", Lips.withBumps(Lips.section(Lips.flat(8), 2, 600, 0, 0), stepDown)),
        section("vane behind", Lips.section(Lips.lip("two bodies", body, vane), 2, 600, 0, 0)),
        section(
            "vane behind, wedge before, slow",
            Lips.section(Lips.lip("three bodies", body, vane, wedge), 2, 30, 5, 0)),
        section("20 kPa", Lips.section(Lips.shipped("knife-fin"), 2, 20000, 0, 0)),
        section("20 Pa, ground at twice the jet", Lips.section(Lips.flat(8), 2, 20, 12, 5)));
  }

  private static Arguments section(String name, SealSection section) {
    return Arguments.of(Named.of(name, section));
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("sections")
  void everyGridIsUsable(SealSection section) {
    GridFamily family =
        new FamilySolver()
            .solve(
                SolveRequest.cold(section, MeshLevel.COARSE, 2, Closure.AUTO),
                new CancelToken(),
                ProgressListener.NONE);
    assertThat(family.grids()).hasSize(2);
    for (GridSolution grid : family.grids()) {
      GridRun run = grid.run();
      assertThat(run.status()).isIn(SolveStatus.CONVERGED, SolveStatus.UNSTEADY);
      assertThat(run.figures().scalars())
          .containsKeys(
              Figure.LEAK_FLOW,
              Figure.DISCHARGE_COEFFICIENT,
              Figure.PRESSURE_RECOVERY,
              Figure.LIP_FORCE_X,
              Figure.LIP_FORCE_Y,
              Figure.GROUND_DRAG)
          .allSatisfy((figure, value) -> assertThat(value).as("%s", figure).isFinite());
      assertThat(run.figures().scalars().get(Figure.DISCHARGE_COEFFICIENT)).isBetween(0.05, 1.5);
      assertThat(run.figures().stageShares().stream().mapToDouble(s -> s).sum())
          .isCloseTo(1, within(1e-9));
      assertThat(DoubleStream.of(grid.field().p()).allMatch(Double::isFinite)).isTrue();
      assertThat(run.massResidual()).isLessThan(1e-10);
    }
  }
}
