package hemline.solver.flow;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import hemline.shared.section.SealSection;
import hemline.solver.field.FlowState;
import hemline.solver.grid.GridDesign;
import hemline.solver.grid.Mesh;
import hemline.solver.grid.MeshLevel;
import hemline.solver.scheme.Boundary;
import java.util.Arrays;
import java.util.SplittableRandom;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Fluxes through open faces and the dynamic head of what enters are found together. */
class OpenFluxesTest {

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3})
  void predictionFromTheSettledHeadGivesTheSettledFluxes(long seed) {
    SealSection section = Lips.section(Lips.shipped("plain-flat-8"), 2, 20, -1, 0);
    SectionSetup setup = new SectionSetup(section);
    GridDesign design = GridDesign.of(setup.domain(), section.gap(), MeshLevel.COARSE);
    FlowProblem problem = setup.problem(design.lines(2), Closure.LAMINAR);
    Mesh mesh = problem.geometry().mesh;
    FlowState state = new FlowState(mesh.cells, mesh.faces, mesh.boundaryFaces);
    SplittableRandom random = new SplittableRandom(seed);
    state.outletPressure = -8;
    for (int c = 0; c < mesh.cells; c++) {
      state.u[c] = random.nextDouble(-2, 2);
      state.v[c] = random.nextDouble(-2, 2);
      state.p[c] = random.nextDouble(-8, 1);
    }
    FlowEquations equations = new FlowEquations(problem, state, () -> {});
    equations.gradients.update(state);
    equations.pressure.update(state.p);
    equations.momentum.assemble(state, equations.gradients, equations.pressure);
    equations.correction.coefficients(equations.momentum, 1);
    final double[] fromRest = settle(equations).clone();
    Arrays.setAll(
        state.boundaryFlux, b -> -0.1 * random.nextDouble() * problem.geometry().bArea[b]);
    double[] settled = settle(equations).clone();
    equations.correction.prediction.forget();
    equations.correction.prediction.predict(state, equations.gradients, equations.pressure, 1);
    int in = 0;
    int out = 0;
    for (int b = 0; b < mesh.boundaryFaces; b++) {
      if (problem.boundary().kind[b] == Boundary.OPEN) {
        double flux = settled[b];
        assertThat(flux).as("whatever it was").isCloseTo(fromRest[b], within(1e-9));
        assertThat(state.boundaryFlux[b]).as("as predicted").isCloseTo(flux, within(1e-12));
        in += flux < 0 ? 1 : 0;
        out += flux > 0 ? 1 : 0;
      }
    }
    assertThat(in).isGreaterThan(5);
    assertThat(out).isGreaterThan(5);
  }

  private static double[] settle(FlowEquations equations) {
    FlowState state = equations.state;
    equations.correction.openPressures(state, equations.pressure);
    equations.pressure.update(state.p);
    equations.correction.prediction.settleOpenFluxes(state, equations.pressure);
    equations.correction.openPressures(state, equations.pressure);
    equations.pressure.update(state.p);
    return state.boundaryFlux;
  }
}
