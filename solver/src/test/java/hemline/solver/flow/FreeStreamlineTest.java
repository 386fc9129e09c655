package hemline.solver.flow;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import hemline.shared.fluid.FluidState;
import hemline.shared.geometry.Outline;
import hemline.shared.geometry.Vertex;
import hemline.shared.result.SolveStatus;
import hemline.shared.section.Drive;
import hemline.shared.section.DuctSection;
import hemline.solver.grid.GridDesign;
import hemline.solver.grid.Mesh;
import hemline.solver.grid.MeshLevel;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Jet under a sharp fin over frictionless ground at a high Reynolds number against the free
 * streamline.
 *
 * <p>Slot b in a channel B with the fin normal to the ground: C_c = π / (π + 2 (1/k - k) arctan k)
 * with k = approach over jet speed and b/B = k / C_c; on the static pressure drop C_d = C_c / √(1 -
 * k²). Limit of small b/B: π / (π + 2) = 0.611. Sources: Kirchhoff 1869, J. reine angew. Math. 70,
 * 289; von Mises 1917, VDI-Z. 61, 447 (both from memory; the formula was checked by hodograph
 * integration).
 */
class FreeStreamlineTest {

  /** C_c and C_d at a ratio of slot to channel. */
  private static double[] coefficients(double ratio) {
    double low = 0;
    double high = 1;
    double contraction = 1;
    double k = 0;
    for (int i = 0; i < 60; i++) {
      k = 0.5 * (low + high);
      contraction = Math.PI / (Math.PI + 2 * (1 / k - k) * Math.atan(k));
      if (k / contraction < ratio) {
        low = k;
      } else {
        high = k;
      }
    }
    return new double[] {contraction, contraction / Math.sqrt(1 - k * k)};
  }

  @Test
  void referenceTendsToTheFreeLimit() {
    assertThat(coefficients(1e-6)[1]).isCloseTo(Math.PI / (Math.PI + 2), within(1e-6));
    // von Mises's table at b/B = 0.5
    assertThat(coefficients(0.5)[0]).isCloseTo(0.644, within(1e-3));
  }

  @ParameterizedTest(name = "channel {0} gaps high, Re {1}")
  @CsvSource({"8, 1e4", "8, 1e5", "12, 3e4"})
  void dischargeIsThatOfTheFreeStreamline(double height, double reynolds) {
    DuctSection.Wall frictionless = new DuctSection.Wall(0, 0, true);
    double tip = 0.05;
    double back = 1;
    DuctSection duct =
        new DuctSection(
            "sharp fin",
            new DuctSection.Channel(-3 * height, 6 * height, height),
            List.of(
                new Outline(
                    List.of(
                        new Vertex(0, height),
                        new Vertex(0, 1),
                        new Vertex(tip, 1),
                        new Vertex(back, 3),
                        new Vertex(back, height)))),
            new FluidState(1, 1 / reynolds),
            new DuctSection.Inflow(new Drive.LeakFlow(1), DuctSection.Inlet.UNIFORM),
            new DuctSection.Walls(frictionless, frictionless, null),
            new DuctSection.Measures(null, 1),
            "sst");
    DuctSetup setup = new DuctSetup(duct);
    GridDesign design = GridDesign.of(setup.domain(), 1, MeshLevel.COARSE);
    List<FlowSolution> flows =
        SequencedSolver.solve(
            g -> setup.problem(design.lines(2 + g), Closure.SST),
            2,
            0,
            1,
            StoppingLimits.FIELD,
            new CancelToken(),
            ProgressListener.NONE);
    FlowSolution flow = flows.get(1);
    assertThat(flow.outcome().status()).isEqualTo(SolveStatus.CONVERGED);
    Mesh mesh = flow.problem().geometry().mesh;
    double[] p = flow.state().p;
    // section mean upstream against the back pressure beside the jet
    double drop =
        PressureTap.station(mesh, -1.5 * height).read(p)
            - PressureTap.rightOf(mesh, back, 3, 6).read(p);
    double discharge = 1 / Math.sqrt(2 * drop);
    double exact = coefficients(1 / height)[1];
    assertThat(discharge).isCloseTo(exact, within(0.01 * exact));
  }
}
