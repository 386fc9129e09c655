package hemline.solver.flow;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import hemline.shared.result.SolveStatus;
import hemline.shared.section.SealSection;
import hemline.solver.grid.GridDesign;
import hemline.solver.grid.Mesh;
import hemline.solver.grid.MeshLevel;
import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The one-equation closure in open sections, whose plenum has a wall above. */
class OneEquationTest {

  private static SealSection section(String lip) {
    return Lips.section(Lips.shipped(lip), 2, 600, 0, 0);
  }

  @ParameterizedTest
  @ValueSource(strings = {"plain-flat-8", "knife-fin", "teeth-into-leak"})
  void settlesFromRest(String lip) {
    SectionSetup setup = new SectionSetup(section(lip));
    GridDesign design = GridDesign.of(setup.domain(), 0.002, MeshLevel.MEDIUM);
    List<FlowSolution> flows =
        SequencedSolver.solve(
            g -> setup.problem(design.lines(2), Closure.SA),
            1,
            -600 / 1.2,
            0,
            StoppingLimits.FIELD,
            new CancelToken(),
            (share, what) -> {});
    assertThat(flows.get(0).outcome().status()).isEqualTo(SolveStatus.CONVERGED);
  }

  @ParameterizedTest
  @ValueSource(strings = {"plain-flat-8"})
  void ceilingOfThePlenumCountsAsWall(String lip) {
    SectionSetup setup = new SectionSetup(section(lip));
    GridDesign design = GridDesign.of(setup.domain(), 0.002, MeshLevel.MEDIUM);
    FlowProblem problem = setup.problem(design.lines(2), Closure.SA);
    Mesh mesh = problem.geometry().mesh;
    double top = setup.domain().yMax();
    for (int b = 0; b < mesh.boundaryFaces; b++) {
      int c = mesh.bCell[b];
      if (mesh.by[b] == top && mesh.cx[c] > 2 * setup.width()) {
        assertThat(problem.turbulence().wallDistance()[c])
            .isCloseTo(top - mesh.cy[c], within(1e-12));
      }
    }
  }
}
