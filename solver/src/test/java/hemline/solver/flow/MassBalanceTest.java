package hemline.solver.flow;

import static org.assertj.core.api.Assertions.assertThat;

import hemline.shared.geometry.Ring;
import hemline.shared.result.Figure;
import hemline.shared.result.GridRun;
import hemline.shared.section.SealSection;
import hemline.solver.grid.GridDesign;
import hemline.solver.grid.Mesh;
import hemline.solver.grid.MeshLevel;
import hemline.solver.grid.Patch;
import hemline.solver.measure.SectionMeter;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Named;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** Mass closes to round-off, so that the streamfunction is one value on each body. */
class MassBalanceTest {

  static Stream<Arguments> sections() {
    SealSection pockets = Lips.section(Lips.shipped("vortex-trap-two-pockets"), 2, 600, 15, 3);
    SealSection slow = Lips.section(Lips.leaningTeeth(), 2, 30, -2, 0);
    SealSection round = Lips.section(Lips.shipped("round-nose"), 1, 40, 0, 1);
    SealSection bump =
        Lips.withBumps(
            Lips.section(Lips.shipped("undercut-hook"), 2, 600, 0, 0),
            new double[] {3, -1, 5, -1, 4, 0.7});
    return Stream.of(
        Arguments.of(Named.of("two pockets, turbulent, moving ground", pockets), Closure.SST),
        Arguments.of(Named.of("leaning teeth, laminar", slow), Closure.LAMINAR),
        Arguments.of(Named.of("round nose through cut cells, laminar", round), Closure.LAMINAR),
        Arguments.of(Named.of("hook over a bump, turbulent", bump), Closure.SST));
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("sections")
  void streamfunctionIsTheLeakOnTheLipAndZeroOnTheGround(SealSection section, Closure closure) {
    SectionSetup setup = new SectionSetup(section);
    GridDesign design = GridDesign.of(setup.domain(), section.gap(), MeshLevel.COARSE);
    FlowSolution flow =
        SequencedSolver.solve(
                g -> setup.problem(design.lines(2), closure),
                1,
                -section.suction() / section.fluid().density(),
                0,
                StoppingLimits.FIELD,
                new CancelToken(),
                ProgressListener.NONE)
            .get(0);
    GridRun run = SectionMeter.measure(setup, flow);
    double leak = run.figures().scalars().get(Figure.LEAK_FLOW);
    assertThat(leak).isPositive();
    assertThat(run.massResidual()).isLessThan(1e-12);
    assertThat(worstDefect(flow)).isLessThan(1e-12 * leak);
    Mesh mesh = flow.problem().geometry().mesh;
    int nx = mesh.lines.nx();
    double[] psi = flow.streamfunction();
    List<Ring> solids = setup.domain().solids();
    int onLip = 0;
    for (int j = 0; j <= mesh.lines.ny(); j++) {
      for (int i = 0; i <= nx; i++) {
        double x = mesh.lines.x()[i];
        double y = mesh.lines.y()[j];
        double value = psi[j * (nx + 1) + i];
        if (j == 0 || solids.stream().skip(1).anyMatch(bump -> inside(bump, x, y))) {
          assertThat(Math.abs(value)).as("ground at %s, %s", x, y).isLessThan(1e-11 * leak);
        } else if (inside(solids.get(0), x, y)) {
          assertThat(Math.abs(value - leak)).as("lip at %s, %s", x, y).isLessThan(1e-11 * leak);
          onLip++;
        }
      }
    }
    assertThat(onLip).isGreaterThan(40);
  }

  private static double worstDefect(FlowSolution flow) {
    Mesh mesh = flow.problem().geometry().mesh;
    double[] defect = new double[mesh.cells];
    for (int f = 0; f < mesh.faces; f++) {
      defect[mesh.owner[f]] += flow.state().flux[f];
      defect[mesh.neighbour[f]] -= flow.state().flux[f];
    }
    for (int b = 0; b < mesh.boundaryFaces; b++) {
      defect[mesh.bCell[b]] += flow.state().boundaryFlux[b];
      if (mesh.bPatch[b] >= Patch.FIRST_SOLID) {
        assertThat(flow.state().boundaryFlux[b]).as("flux through a solid").isZero();
      }
    }
    double worst = 0;
    for (double d : defect) {
      worst = Math.max(worst, Math.abs(d));
    }
    return worst;
  }

  /** Inside or on the boundary, to a nanometre. */
  private static boolean inside(Ring r, double x, double y) {
    double e = 1e-9;
    boolean in = false;
    int n = r.size();
    for (int i = 0; i < n; i++) {
      double ax = r.x()[i];
      double ay = r.y()[i];
      double bx = r.x()[(i + 1) % n];
      double by = r.y()[(i + 1) % n];
      double length = Math.hypot(bx - ax, by - ay);
      double t = ((x - ax) * (bx - ax) + (y - ay) * (by - ay)) / (length * length);
      double s = Math.max(0, Math.min(1, t));
      if (Math.hypot(x - ax - s * (bx - ax), y - ay - s * (by - ay)) < e) {
        return true;
      }
      if ((ay > y) != (by > y) && x < ax + (y - ay) / (by - ay) * (bx - ax)) {
        in = !in;
      }
    }
    return in;
  }
}
