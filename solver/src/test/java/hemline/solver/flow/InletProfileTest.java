package hemline.solver.flow;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import hemline.shared.fluid.FluidState;
import hemline.shared.geometry.Outline;
import hemline.shared.geometry.Vertex;
import hemline.shared.section.Drive;
import hemline.shared.section.DuctSection;
import hemline.solver.grid.GridDesign;
import hemline.solver.grid.Mesh;
import hemline.solver.grid.MeshLevel;
import hemline.solver.grid.Patch;
import hemline.solver.scheme.Boundary;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The inlet of a duct carries the flow asked for, whatever stands in it. */
class InletProfileTest {
  /** A channel of height 4 from x = -10; blocks stand in its inlet, from and to heights. */
  private static FlowProblem problem(
      DuctSection.Inlet inlet, double ground, boolean frictionless, double... blocks) {
    List<Outline> obstacles = new ArrayList<>();
    for (int k = 0; k < blocks.length; k += 2) {
      obstacles.add(
          new Outline(
              List.of(
                  new Vertex(-10, blocks[k]),
                  new Vertex(-4, blocks[k]),
                  new Vertex(-4, blocks[k + 1]),
                  new Vertex(-10, blocks[k + 1]))));
    }
    DuctSection duct =
        new DuctSection(
            "blocked inlet",
            new DuctSection.Channel(-10, 10, 4),
            obstacles,
            new FluidState(1, 0.05),
            new DuctSection.Inflow(new Drive.LeakFlow(1), inlet),
            new DuctSection.Walls(
                new DuctSection.Wall(ground, 0, false),
                new DuctSection.Wall(0, 0, frictionless),
                null),
            new DuctSection.Measures(null, 1),
            "laminar");
    DuctSetup setup = new DuctSetup(duct);
    return setup.problem(
        GridDesign.ofDuct(setup.domain(), 1, MeshLevel.COARSE).lines(2), Closure.LAMINAR);
  }

  /** Flow through the inlet between two heights when the asked flow is q. */
  private static double flow(FlowProblem problem, double q, double from, double to) {
    Mesh mesh = problem.geometry().mesh;
    Boundary boundary = problem.boundary();
    double sum = 0;
    for (int b = 0; b < mesh.boundaryFaces; b++) {
      if (mesh.bPatch[b] == Patch.LEFT && mesh.by[b] > from && mesh.by[b] < to) {
        sum += (boundary.u[b] + q * boundary.uPerFlow[b]) * problem.geometry().bArea[b];
      }
    }
    return sum;
  }

  @ParameterizedTest
  @CsvSource({
    "DEVELOPED, 0, false",
    "DEVELOPED, 3, false",
    "DEVELOPED, 3, true",
    "UNIFORM, 3, false"
  })
  void blockedInletCarriesTheAskedFlow(
      DuctSection.Inlet inlet, double ground, boolean frictionless) {
    double[][] blocks = {{}, {2, 4}, {0, 2}, {1, 2.5}, {0, 0.5, 3, 4}};
    for (double[] block : blocks) {
      FlowProblem problem = problem(inlet, ground, frictionless, block);
      for (double q : new double[] {1, 0, -2}) {
        assertThat(flow(problem, q, 0, 4)).as("%s, %s", block, q).isCloseTo(q, within(1e-12));
      }
    }
  }

  @Test
  void openingsShareTheFlowAsOnePressureGradientDrivesIt() {
    // heights 1 and 1.5: 1 : 1.5³
    FlowProblem developed = problem(DuctSection.Inlet.DEVELOPED, 0, false, 1, 2.5);
    assertThat(flow(developed, 1, 0, 1)).isCloseTo(1 / (1 + 1.5 * 1.5 * 1.5), within(1e-12));
    FlowProblem uniform = problem(DuctSection.Inlet.UNIFORM, 0, false, 1, 2.5);
    assertThat(flow(uniform, 1, 0, 1)).isCloseTo(1 / 2.5, within(1e-12));
  }
}
