package hemline.solver.turbulence;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import hemline.solver.grid.Patch;
import hemline.solver.scheme.Boundary;
import hemline.solver.scheme.VelocityGradients;
import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * The closure term by term, each from the published equation by hand: one implicit step in time
 * from a known state, in which everything but the term looked at is zero or uniform.
 *
 * <p>Constants and equations: Spalart & Allmaras 1994, Rech. Aérosp. 1, 5–21; the bound of the
 * modified vorticity: Allmaras, Johnson & Spalart 2012, ICCFD7-1902, eqs. 11 and 12.
 */
class SpalartAllmarasTest {
  private static final double NU = 1e-5;
  private static final double STEP = 1e-3;

  /** So far from walls that only production by the vorticity is left. */
  private static final double FAR = 1e6;

  private static SpalartAllmaras closure(ClosureMeshes m, double distance, boolean spanwise) {
    return new SpalartAllmaras(
        m.geometry, m.boundary, NU, m.everywhere(distance), 4 * NU, spanwise);
  }

  private static ClosureMeshes box(double chi) {
    ClosureMeshes m = ClosureMeshes.unit(3, 3, Boundary.SLIP);
    Arrays.fill(m.state.nuTilde, chi * NU);
    return m;
  }

  private static VelocityGradients gradients(ClosureMeshes m, boolean spanwise) {
    return new VelocityGradients(m.geometry, m.boundary, spanwise);
  }

  private static void advance(
      ClosureMeshes m, SpalartAllmaras closure, VelocityGradients g, double step) {
    closure.inTime(m.step(step));
    closure.update(m.state, g, 1);
  }

  /** ν_t = ν̃ χ³ / (χ³ + 7.1³): at χ = 7.1 one half of ν̃. */
  @ParameterizedTest
  @CsvSource({"7.1, 3.55", "1, 0.00278620605108", "71, 70.9290709291", "0.5, 1.7456345172e-4"})
  void eddyViscosity(double chi, double ratio) {
    ClosureMeshes m = box(chi);
    advance(m, closure(m, FAR, false), gradients(m, false), STEP);
    assertThat(m.state.nuTilde[4]).isCloseTo(chi * NU, within(1e-9 * chi * NU));
    assertThat(m.state.eddyViscosity[4]).isCloseTo(ratio * NU, within(1e-9 * ratio * NU));
  }

  /** Far from walls: c_b1 Ω ν̃ with Ω the magnitude of the vorticity, whatever the strain. */
  @ParameterizedTest
  @CsvSource({
    "6, 0, 0, 0, 0, 0, 6", // u_y
    "0, 6, 0, 0, 0, 0, 6", // v_x
    "2, 5, 0, 0, 0, 0, 3", // v_x - u_y
    "4, 4, 0, 0, 0, 0, 0", // strain alone
    "0, 0, 3, -3, 0, 0, 0",
    "0, 0, 0, 0, 3, 4, 5", // along the span
    "12, 0, 0, 0, 3, 4, 13",
  })
  void produces(
      double uy, double vx, double ux, double vy, double wx, double wy, double vorticity) {
    ClosureMeshes m = box(10);
    VelocityGradients g = gradients(m, true);
    Arrays.fill(g.uy, uy);
    Arrays.fill(g.vx, vx);
    Arrays.fill(g.ux, ux);
    Arrays.fill(g.vy, vy);
    Arrays.fill(g.wx, wx);
    Arrays.fill(g.wy, wy);
    advance(m, closure(m, FAR, true), g, STEP);
    double expected = 10 * NU * (1 + 0.1355 * vorticity * STEP);
    for (int c = 0; c < m.mesh.cells; c++) {
      assertThat(m.state.nuTilde[c]).isCloseTo(expected, within(1e-10 * expected));
    }
  }

  @Test
  void withoutSpanwiseFlowItsGradientsDoNotCount() {
    ClosureMeshes m = box(10);
    VelocityGradients g = gradients(m, false);
    Arrays.fill(g.wx, 3);
    advance(m, closure(m, FAR, false), g, STEP);
    assertThat(m.state.nuTilde[4]).isCloseTo(10 * NU, within(1e-10 * NU));
  }

  /**
   * Production c_b1 S̃ ν̃ and destruction c_w1 f_w (ν̃ / d)² beside a wall. S̃ and f_w were worked
   * out from the equations apart from this code, in decimals of 30 digits; r = ν̃ / (S̃ κ² d²), at
   * most 10. In a layer of constant stress r = f_w = 1.
   */
  @ParameterizedTest
  @CsvSource({
    "20, 0.002, 295.322475665, 297.44199881, 1", // r = 1
    "200.0, 0.01, 20.0, 20.5866543211, 2.00517474515", // r = 5.779
    "30.0, 0.002, 300.0, 308.855816794, 1.9974315872", // r = 1.445
    "1.0, 0.001, 50.0, 50.1652864174, 1.59077335698", // r = 1.186
    "5.0, 0.0005, 100.0, 10.2955990762, 2.00517474515", // r = 10.0, bounded
    "10.0, 0.0003, 60.0, 6.11404643808, 2.00517474515", // r = 10.0, bounded
    "100.0, 0.02, 0.01, 0.152030526517, 2.00517474515", // r = 10.0
    "0.3, 0.01, 2.0, 2.12492685105, 0.0589427786215", // r = 0.08399
  })
  void producesAndDestroysBesideWalls(
      double chi, double d, double vorticity, double modified, double fw) {
    ClosureMeshes m = box(chi);
    VelocityGradients g = gradients(m, false);
    Arrays.fill(g.uy, vorticity);
    double nuTilde = chi * NU;
    double cw1 = 0.1355 / (0.41 * 0.41) + 1.622 * 1.5;
    double destroyed = cw1 * fw * nuTilde * nuTilde / (d * d);
    double produced = 0.1355 * modified * nuTilde;
    // a step so short that either changes the state by a hundredth at most
    double step = 1e-2 * nuTilde / Math.max(produced, destroyed);
    advance(m, closure(m, d, false), g, step);
    // destruction in Newton's form: (ν̃/d)² at the new state, linearised about the old one
    double expected =
        (nuTilde + step * (produced + destroyed)) / (1 + 2 * step * destroyed / nuTilde);
    assertThat((m.state.nuTilde[4] - nuTilde) / nuTilde)
        .isCloseTo((expected - nuTilde) / nuTilde, within(2e-8));
  }

  /** ∇·((ν + ν̃) ∇ν̃) + c_b2 |∇ν̃|², over σ: (1 + c_b2) b² / σ where ν̃ = a + b·x. */
  @Test
  void diffusesALinearField() {
    ClosureMeshes m = ClosureMeshes.unit(5, 5, Boundary.SLIP);
    double bx = 0.03;
    double by = -0.04;
    for (int c = 0; c < m.mesh.cells; c++) {
      m.state.nuTilde[c] = 1 + bx * m.mesh.cx[c] + by * m.mesh.cy[c];
    }
    double before = m.state.nuTilde[12];
    double step = 1e-6;
    advance(m, closure(m, FAR, false), gradients(m, false), step);
    double expected = 1.622 * (bx * bx + by * by) * 1.5;
    assertThat((m.state.nuTilde[12] - before) / step).isCloseTo(expected, within(1e-6));
  }

  /** The same between two unlike cells: each end takes its own c_b2 (ν + ν̃) off. */
  @Test
  void diffusesBetweenTwoCells() {
    ClosureMeshes m = ClosureMeshes.of(new double[] {0, 1, 4}, new double[] {0, 2}, Boundary.SLIP);
    m.state.nuTilde[0] = 0.1;
    m.state.nuTilde[1] = 0.2;
    double step = 1e-7;
    advance(m, closure(m, FAR, false), gradients(m, false), step);
    // centres 2 apart, face 0.5 from the first: a quarter of the way; face 2 long
    double mean = 1.622 * (NU + 0.75 * 0.1 + 0.25 * 0.2);
    double first = (mean - 0.622 * (NU + 0.1)) * 1.5 * 2 / 2 * 0.1;
    double second = -(mean - 0.622 * (NU + 0.2)) * 1.5 * 2 / 2 * 0.1;
    assertThat((m.state.nuTilde[0] - 0.1) / step).isCloseTo(first / 2, within(1e-7));
    assertThat((m.state.nuTilde[1] - 0.2) / step).isCloseTo(second / 6, within(1e-7));
  }

  /** Where c_b2 would make a wide cell rise towards a lower neighbour, nothing flows. */
  @Test
  void neverDiffusesUphill() {
    ClosureMeshes m = ClosureMeshes.of(new double[] {0, 1, 10}, new double[] {0, 1}, Boundary.SLIP);
    m.state.nuTilde[0] = 1e-3;
    m.state.nuTilde[1] = 1;
    advance(m, closure(m, FAR, false), gradients(m, false), 1e-3);
    assertThat(m.state.nuTilde[1]).isCloseTo(1, within(1e-12));
    assertThat(m.state.nuTilde[0]).isGreaterThan(1.01e-3);
    m = ClosureMeshes.of(new double[] {0, 9, 10}, new double[] {0, 1}, Boundary.SLIP);
    m.state.nuTilde[0] = 1;
    m.state.nuTilde[1] = 1e-3;
    advance(m, closure(m, FAR, false), gradients(m, false), 1e-3);
    assertThat(m.state.nuTilde[0]).isCloseTo(1, within(1e-12));
    assertThat(m.state.nuTilde[1]).isGreaterThan(1.01e-3);
  }

  /** Upwind convection between cells; fluid that enters brings 4 ν. */
  @ParameterizedTest
  @ValueSource(doubles = {0.5, -0.5})
  void convects(double flux) {
    ClosureMeshes m = ClosureMeshes.unit(2, 1, Boundary.SLIP);
    int left = m.face(0, Patch.LEFT);
    int right = m.face(1, Patch.RIGHT);
    m.boundary.kind[left] = Boundary.OPEN;
    m.boundary.kind[right] = Boundary.VELOCITY;
    double[] before = {20 * NU, 50 * NU};
    m.state.nuTilde[0] = before[0];
    m.state.nuTilde[1] = before[1];
    m.state.flux[0] = flux;
    m.state.boundaryFlux[left] = -flux;
    m.state.boundaryFlux[right] = flux;
    double step = 1e-6;
    advance(m, closure(m, FAR, false), gradients(m, false), step);
    double[] upstream =
        flux > 0 ? new double[] {4 * NU, before[0]} : new double[] {before[1], 4 * NU};
    double mean = 1.622 * (NU + 35 * NU);
    double[] diffused = {
      (mean - 0.622 * 21 * NU) * 1.5 * 30 * NU, -(mean - 0.622 * 51 * NU) * 1.5 * 30 * NU
    };
    for (int c = 0; c < 2; c++) {
      assertThat((m.state.nuTilde[c] - before[c]) / step)
          .isCloseTo(0.5 * (upstream[c] - before[c]) + diffused[c], within(1e-9));
    }
  }

  /** Fluid that comes in through a slip face or an outlet brings nothing of its own. */
  @Test
  void onlyInflowBringsTurbulence() {
    ClosureMeshes m = box(10);
    for (int b = 0; b < m.mesh.boundaryFaces; b++) {
      m.boundary.kind[b] = b % 2 == 0 ? Boundary.SLIP : Boundary.OUTLET;
      m.state.boundaryFlux[b] = -1;
    }
    advance(m, closure(m, FAR, false), gradients(m, false), STEP);
    assertThat(m.state.nuTilde[0]).isCloseTo(10 * NU, within(1e-10 * NU));
  }

  /**
   * A wall cell: ν̃ = 0 on the wall, diffusion ((1 + c_b2) ν - c_b2 (ν + ν̃)) / σ ν̃ / d through
   * it, S̃ = u_τ / (κ d) whatever the velocity gradient.
   */
  @ParameterizedTest
  @CsvSource({"0.5, 3", "20, 3", "20, 0"})
  void wallCells(double chi, double u) {
    ClosureMeshes m =
        ClosureMeshes.of(new double[] {0, 0.5}, new double[] {0, 4e-3, 8e-3}, Boundary.SLIP);
    int wall = m.face(0, Patch.BOTTOM);
    m.boundary.kind[wall] = Boundary.WALL;
    double nuTilde = chi * NU;
    Arrays.fill(m.state.nuTilde, nuTilde);
    m.state.u[0] = u;
    double d = 2e-3;
    SpalartAllmaras closure =
        new SpalartAllmaras(m.geometry, m.boundary, NU, m.mesh.cy.clone(), 4 * NU, false);
    VelocityGradients g = gradients(m, false);
    Arrays.fill(g.uy, 1e6);
    double step = 1e-8;
    advance(m, closure, g, step);
    double yPlus = SpalartAllmaras.LAW.distance(u * d / NU, 100);
    double friction = yPlus * NU / d;
    assertThat(closure.wallViscosity()[wall])
        .isCloseTo(u > 0 ? friction * friction * d / u : NU, within(1e-4 * NU));
    double modified = friction / (0.41 * d);
    double r = u > 0 ? Math.min(10, nuTilde / (modified * 0.41 * 0.41 * d * d)) : 10;
    double cut = r + 0.3 * (Math.pow(r, 6) - r);
    double fw = cut * Math.pow(65 / (Math.pow(cut, 6) + 64), 1.0 / 6);
    double cw1 = 0.1355 / (0.41 * 0.41) + 1.622 * 1.5;
    double wallArea = 0.5;
    double volume = 0.5 * 4e-3;
    double through = (1.622 * NU - 0.622 * (NU + nuTilde)) * 1.5 * wallArea / d * nuTilde / volume;
    double rate = 0.1355 * modified * nuTilde - cw1 * fw * nuTilde * nuTilde / (d * d) - through;
    double measured = (m.state.nuTilde[0] - nuTilde) / step;
    assertThat(measured / rate).isCloseTo(1, within(2e-4));
    // beyond, the vorticity counts
    assertThat(m.state.nuTilde[1] / nuTilde - 1)
        .isCloseTo(0.1355 * 1e6 * step, within(2e-3 * 0.1355 * 1e6 * step));
  }

  /** The cell in a corner takes the larger friction of its two walls. */
  @Test
  void cornersTakeTheLargerFriction() {
    ClosureMeshes m =
        ClosureMeshes.of(new double[] {0, 4e-3}, new double[] {0, 4e-3}, Boundary.SLIP);
    m.boundary.kind[m.face(0, Patch.BOTTOM)] = Boundary.WALL;
    m.boundary.kind[m.face(0, Patch.LEFT)] = Boundary.WALL;
    double nuTilde = 20 * NU;
    m.state.nuTilde[0] = nuTilde;
    m.state.u[0] = 3;
    m.state.v[0] = 0.5;
    double d = 2e-3;
    double step = 1e-8;
    advance(m, closure(m, d, false), gradients(m, false), step);
    double friction = SpalartAllmaras.LAW.distance(3 * d / NU, 100) * NU / d;
    double modified = friction / (0.41 * d);
    double r = nuTilde / (modified * 0.41 * 0.41 * d * d);
    double cut = r + 0.3 * (Math.pow(r, 6) - r);
    double fw = cut * Math.pow(65 / (Math.pow(cut, 6) + 64), 1.0 / 6);
    double cw1 = 0.1355 / (0.41 * 0.41) + 1.622 * 1.5;
    double through = 2 * (1.622 * NU - 0.622 * 21 * NU) * 1.5 * nuTilde / (d * 4e-3);
    double rate = 0.1355 * modified * nuTilde - cw1 * fw * nuTilde * nuTilde / (d * d) - through;
    assertThat((m.state.nuTilde[0] - nuTilde) / step / rate).isCloseTo(1, within(2e-4));
  }

  /** Relaxation keeps the rest of the old value; ν̃ never falls below a millionth of ν. */
  @Test
  void relaxesAndBounds() {
    // destruction alone, so fast that time does not matter: ν̃ halves (Newton's form)
    double d = 1e-4;
    ClosureMeshes m = box(2);
    closure(m, d, false).update(m.state, gradients(m, false), 1);
    double whole = m.state.nuTilde[4];
    ClosureMeshes half = box(2);
    closure(half, d, false).update(half.state, gradients(half, false), 0.25);
    assertThat(half.state.nuTilde[4]).isCloseTo(0.75 * 2 * NU + 0.25 * whole, within(1e-6 * NU));
    Arrays.fill(m.state.nuTilde, 1e-20);
    closure(m, FAR, false).update(m.state, gradients(m, false), 0.5);
    assertThat(m.state.nuTilde).containsOnly(1e-6 * NU);
  }

  /** Nothing is left over from the pass before. */
  @Test
  void eachPassStandsAlone() {
    ClosureMeshes m = box(10);
    SpalartAllmaras used = closure(m, 0.01, false);
    VelocityGradients g = gradients(m, false);
    Arrays.fill(g.uy, 7);
    used.update(m.state, g, 0.5);
    ClosureMeshes fresh = box(10);
    System.arraycopy(m.state.nuTilde, 0, fresh.state.nuTilde, 0, m.mesh.cells);
    used.update(m.state, g, 0.5);
    closure(fresh, 0.01, false).update(fresh.state, g, 0.5);
    assertThat(m.state.nuTilde).containsExactly(fresh.state.nuTilde);
  }

  @Test
  void startsFromTheInflowWhereThereIsNothing() {
    ClosureMeshes m = box(9);
    m.state.nuTilde[4] = 0;
    m.state.nuTilde[2] = 0;
    m.state.eddyViscosity[2] = 71 * NU;
    closure(m, FAR, false).initialise(m.state);
    assertThat(m.state.nuTilde[4]).isCloseTo(4 * NU, within(1e-18));
    // 4 · 64 / (64 + 357.911)
    assertThat(m.state.eddyViscosity[4]).isCloseTo(0.606763037702 * NU, within(1e-9 * NU));
    // what another model left, as working variable
    assertThat(m.state.nuTilde[2]).isCloseTo(71 * NU, within(1e-18));
    assertThat(m.state.eddyViscosity[2]).isCloseTo(70.929070929 * NU, within(1e-7 * NU));
    assertThat(m.state.nuTilde[3]).isEqualTo(9 * NU);
  }
}
