package hemline.solver.improve;

import static org.assertj.core.api.Assertions.assertThat;

import hemline.shared.fluid.Air;
import hemline.shared.profile.LipDrawing;
import hemline.shared.profile.LipResolver;
import hemline.shared.profile.Starter;
import hemline.shared.result.Estimate;
import hemline.shared.result.Figure;
import hemline.shared.result.GridRun;
import hemline.shared.section.GroundMotion;
import hemline.shared.section.SealSection;
import hemline.solver.flow.CancelToken;
import hemline.solver.flow.Closure;
import hemline.solver.grid.MeshLevel;
import hemline.solver.refine.FamilySolver;
import hemline.solver.study.BatchStudy;
import hemline.solver.study.PoolRunner;
import hemline.solver.study.ResultStore;
import hemline.solver.study.RunOptions;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledIfSystemProperty;

/** The plenum corner of a flat lip in laminar flow: the leak falls as the lip gets wider. */
final class CornerStudyTest {
  private static final double WIDTH = 4e-3;

  private static LipDrawing flat(double width) {
    return new Starter.Flat(width, 6e-3).drawing();
  }

  private static SealSection section(LipDrawing lip) throws Exception {
    return new SealSection(
        LipResolver.resolve(lip), 0.4e-3, 60, new GroundMotion(0, 0), Air.STANDARD, List.of());
  }

  private static CornerEffect effect(MeshLevel level, double step) throws Exception {
    LipDrawing lip = flat(WIDTH);
    return new CornerStudy(new FamilySolver(), ResultStore.none(), level, step)
        .of(
            lip,
            section(lip),
            Closure.LAMINAR,
            List.of(1),
            2,
            new CancelToken(),
            (done, what) -> {})
        .get(0);
  }

  private static Estimate known(Estimate e) {
    assertThat(e).isNotNull();
    return e;
  }

  /** By the corner, and by lips of other widths. */
  @Test
  void bothWaysAgree() throws Exception {
    CornerEffect coarse = effect(MeshLevel.COARSE, 0.1e-3);
    Estimate dx = known(coarse.dx());
    assertThat(coarse.lowest()).isTrue();
    assertThat(dx.high()).isNegative();
    List<Double> leaks =
        new BatchStudy(new PoolRunner(new FamilySolver()), ResultStore.none())
                .run(
                    List.of(section(flat(WIDTH + 0.1e-3)), section(flat(WIDTH - 0.1e-3))),
                    new RunOptions(MeshLevel.COARSE, Closure.LAMINAR, false, 2),
                    new CancelToken(),
                    (done, what) -> {})
                .results()
                .stream()
                .map(
                    r -> {
                      GridRun finest = r.grids().get(r.grids().size() - 1);
                      return finest.figures().scalars().getOrDefault(Figure.LEAK_FLOW, Double.NaN);
                    })
                .toList();
    double byWidth = 0.5 * Math.log(leaks.get(0) / leaks.get(1));
    // the wall above the corner leans by 2 degrees or stands upright: the same to a tenth
    assertThat(dx.value() / byWidth).isBetween(0.9, 1.1);
  }

  /**
   * On finer grids and with half the step; takes a minute, so only where {@code hemline.sweep} is
   * set.
   */
  @Test
  @EnabledIfSystemProperty(named = "hemline.sweep", matches = ".+")
  void anotherGridAndHalfTheStepAgree() throws Exception {
    CornerEffect coarse = effect(MeshLevel.COARSE, 0.1e-3);
    CornerEffect medium = effect(MeshLevel.MEDIUM, 0.1e-3);
    alike(known(coarse.dx()), known(medium.dx()));
    alike(known(coarse.dy()), known(medium.dy()));
    alike(known(coarse.dx()), known(effect(MeshLevel.COARSE, 0.05e-3).dx()));
  }

  private static void alike(Estimate one, Estimate other) {
    double allowed = Math.max(0.05 * Math.abs(one.value()), one.numerical() + other.numerical());
    assertThat(Math.abs(other.value() - one.value())).isLessThanOrEqualTo(allowed);
  }

  @Test
  void aStopGivesNothing() throws Exception {
    CancelToken cancel = new CancelToken();
    cancel.cancel();
    LipDrawing lip = flat(WIDTH);
    assertThat(
            new CornerStudy(new FamilySolver(), ResultStore.none())
                .of(lip, section(lip), Closure.AUTO, List.of(0, 1), 1, cancel, (d, w) -> {}))
        .isEmpty();
  }
}
