package hemline.solver.flow;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import hemline.shared.fluid.FluidState;
import hemline.shared.geometry.Outline;
import hemline.shared.geometry.Vertex;
import hemline.shared.result.Figure;
import hemline.shared.result.SolveStatus;
import hemline.shared.section.Drive;
import hemline.shared.section.DuctSection;
import hemline.solver.grid.GridDesign;
import hemline.solver.grid.MeshLevel;
import hemline.solver.measure.SectionMeter;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** Flow at a gap Reynolds number of 0.01 is linear in flow rate and ground speed. */
class StokesLimitTest {
  private static final double VISCOSITY = 100;

  private static Map<Figure, Double> figures(double flow, double ground) {
    DuctSection duct =
        new DuctSection(
            "flat lip in a channel",
            new DuctSection.Channel(-10, 20, 8),
            List.of(
                new Outline(
                    List.of(
                        new Vertex(0, 8), new Vertex(0, 1), new Vertex(4, 1), new Vertex(4, 8)))),
            new FluidState(1, VISCOSITY),
            new DuctSection.Inflow(new Drive.LeakFlow(flow), DuctSection.Inlet.DEVELOPED),
            new DuctSection.Walls(
                new DuctSection.Wall(ground, 0, false), new DuctSection.Wall(0, 0, false), null),
            new DuctSection.Measures(null, 1),
            "laminar");
    DuctSetup setup = new DuctSetup(duct);
    GridDesign design = GridDesign.of(setup.domain(), 1, MeshLevel.COARSE);
    FlowSolution solution =
        SequencedSolver.solve(
                g -> setup.problem(design.lines(2), Closure.LAMINAR),
                1,
                0,
                flow,
                new StoppingLimits(600, 600, 30, 1e-7, 1e-6, 1e-6),
                new CancelToken(),
                ProgressListener.NONE)
            .get(0);
    assertThat(solution.outcome().status()).isEqualTo(SolveStatus.CONVERGED);
    return SectionMeter.measure(setup, solution).figures().scalars();
  }

  @Test
  void pressureDropAndForcesAreLinear() {
    Map<Figure, Double> still = figures(1, 0);
    Map<Figure, Double> twice = figures(2, 0);
    Map<Figure, Double> with = figures(1, 1);
    Map<Figure, Double> against = figures(1, -1);
    for (Figure f :
        List.of(
            Figure.PRESSURE_DROP,
            Figure.LIP_FORCE_X,
            Figure.LIP_FORCE_Y,
            Figure.LIP_MOMENT,
            Figure.GROUND_DRAG)) {
      double one = still.get(f);
      assertThat(twice.get(f)).as("%s, flow doubled", f).isCloseTo(2 * one, close(one));
      assertThat(with.get(f) + against.get(f))
          .as("%s, ground either way", f)
          .isCloseTo(2 * one, close(one));
    }
    // the gap alone takes 12 ν (q - U h / 2) L / h³ = 48 ν and 24 ν
    assertThat(still.get(Figure.PRESSURE_DROP)).isBetween(48 * VISCOSITY, 80 * VISCOSITY);
    assertThat(still.get(Figure.PRESSURE_DROP) - with.get(Figure.PRESSURE_DROP))
        .isGreaterThan(24 * VISCOSITY);
  }

  private static org.assertj.core.data.Offset<Double> close(double value) {
    return within(1e-3 * Math.abs(value));
  }
}
