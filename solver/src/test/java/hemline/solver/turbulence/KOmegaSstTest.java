package hemline.solver.turbulence;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import hemline.solver.field.FlowState;
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
 * <p>Constants and equations: Menter, Kuntz & Langtry 2003, Turbulence, Heat and Mass Transfer 4,
 * 625–632, eqs. 1 to 6.
 */
class KOmegaSstTest {
  private static final double NU = 1e-5;
  private static final double STEP = 1e-3;
  private static final double K = 0.3;
  private static final double OMEGA = 40;

  /** So far from walls that F₁ = F₂ = 0; so near that both are 1. */
  private static final double FAR = 1e6;

  private static final double NEAR = 1e-4;

  private static KOmegaSst closure(ClosureMeshes m, double distance) {
    return closure(m, m.everywhere(distance), false);
  }

  private static KOmegaSst closure(ClosureMeshes m, double[] distance, boolean spanwise) {
    return new KOmegaSst(m.geometry, m.boundary, NU, distance, 0.02, 0.004, 1e-3, spanwise);
  }

  private static ClosureMeshes box() {
    ClosureMeshes m = ClosureMeshes.unit(3, 3, Boundary.SLIP);
    fill(m.state, K, OMEGA);
    return m;
  }

  private static void fill(FlowState s, double k, double omega) {
    Arrays.fill(s.k, k);
    Arrays.fill(s.omega, omega);
    Arrays.fill(s.eddyViscosity, k / omega);
  }

  private static VelocityGradients gradients(ClosureMeshes m, boolean spanwise) {
    return new VelocityGradients(m.geometry, m.boundary, spanwise);
  }

  /** Advances by one step with the whole of each equation. */
  private static void advance(ClosureMeshes m, KOmegaSst closure, VelocityGradients g) {
    closure.inTime(m.step(STEP));
    closure.update(m.state, g, 1);
  }

  /** Turbulence at rest dies as ω' = −β ω², k' = −β* k ω, with β of the outer or the inner set. */
  @ParameterizedTest
  @CsvSource({FAR + ", 0.0828", NEAR + ", 0.075"})
  void decays(double distance, double beta) {
    ClosureMeshes m = box();
    advance(m, closure(m, distance), gradients(m, false));
    // destruction is linearised as β ω_old ω_new
    double omega = OMEGA / (1 + beta * OMEGA * STEP);
    double k = K / (1 + 0.09 * omega * STEP);
    for (int c = 0; c < m.mesh.cells; c++) {
      assertThat(m.state.omega[c]).isCloseTo(omega, within(1e-9 * omega));
      assertThat(m.state.k[c]).isCloseTo(k, within(1e-9 * k));
      assertThat(m.state.eddyViscosity[c]).isCloseTo(k / omega, within(1e-9));
    }
  }

  /** Far from walls: γ₂ S² in ω, ν_t S² in k; S² = 2 S_ij S_ij whatever the gradient. */
  @ParameterizedTest
  @CsvSource({
    "6, 0, 0, 0, 0, 0, 36", // u_y
    "0, 6, 0, 0, 0, 0, 36", // v_x
    "2, 3, 0, 0, 0, 0, 25", // both: (u_y + v_x)²
    "4, -4, 0, 0, 0, 0, 0", // turning alone
    "0, 0, 3, -4, 0, 0, 50", // 2 (u_x² + v_y²)
    "0, 0, 0, 0, 3, 4, 25", // along the span
  })
  void produces(double uy, double vx, double ux, double vy, double wx, double wy, double s2) {
    ClosureMeshes m = box();
    KOmegaSst closure = closure(m, m.everywhere(FAR), true);
    VelocityGradients g = gradients(m, true);
    Arrays.fill(g.uy, uy);
    Arrays.fill(g.vx, vx);
    Arrays.fill(g.ux, ux);
    Arrays.fill(g.vy, vy);
    Arrays.fill(g.wx, wx);
    Arrays.fill(g.wy, wy);
    advance(m, closure, g);
    double omega = (OMEGA + STEP * 0.44 * s2) / (1 + 0.0828 * OMEGA * STEP);
    double k = (K + STEP * K / OMEGA * s2) / (1 + 0.09 * omega * STEP);
    assertThat(m.state.omega[4]).isCloseTo(omega, within(1e-9 * omega));
    assertThat(m.state.k[4]).isCloseTo(k, within(1e-9 * k));
    assertThat(m.state.eddyViscosity[4]).isCloseTo(k / omega, within(1e-9));
  }

  @Test
  void withoutSpanwiseFlowItsGradientsDoNotCount() {
    ClosureMeshes m = box();
    VelocityGradients g = gradients(m, false);
    Arrays.fill(g.wx, 3);
    advance(m, closure(m, FAR), g);
    assertThat(m.state.omega[4])
        .isCloseTo(OMEGA / (1 + 0.0828 * OMEGA * STEP), within(1e-9 * OMEGA));
  }

  /**
   * Strong strain: the production of k is at most 10 β* k ω, that of ω at most γ 10 β* ω max(ω, S
   * F₂ / a₁), and near walls the eddy viscosity is a₁ k / (S F₂) (Bradshaw's relation).
   */
  @ParameterizedTest
  @ValueSource(doubles = {FAR, NEAR})
  void isLimitedInStrongStrain(double distance) {
    double s = 1000;
    double inner = distance == NEAR ? 1 : 0;
    ClosureMeshes m = box();
    VelocityGradients g = gradients(m, false);
    Arrays.fill(g.uy, s);
    advance(m, closure(m, distance), g);
    double gamma = inner == 1 ? 5.0 / 9 : 0.44;
    double beta = inner == 1 ? 0.075 : 0.0828;
    double most = 10 * 0.09 * OMEGA * Math.max(OMEGA, s * inner / 0.31);
    double omega = (OMEGA + STEP * gamma * most) / (1 + beta * OMEGA * STEP);
    double k = (K + STEP * 10 * 0.09 * K * omega) / (1 + 0.09 * omega * STEP);
    assertThat(m.state.omega[4]).isCloseTo(omega, within(1e-9 * omega));
    assertThat(m.state.k[4]).isCloseTo(k, within(1e-9 * k));
    assertThat(m.state.eddyViscosity[4])
        .isCloseTo(0.31 * k / Math.max(0.31 * omega, s * inner), within(1e-9));
  }

  /** 2 (1 − F₁) σ_ω2 ∇k·∇ω / ω, added where it makes ω grow and on the diagonal where not. */
  @ParameterizedTest
  @ValueSource(doubles = {0.02, -0.02})
  void crossDiffusion(double slope) {
    ClosureMeshes m = ClosureMeshes.unit(5, 5, Boundary.SLIP);
    for (int c = 0; c < m.mesh.cells; c++) {
      m.state.k[c] = K + slope * m.mesh.cx[c] + 0.5 * slope * m.mesh.cy[c];
      m.state.omega[c] = OMEGA + 3 * m.mesh.cx[c] - m.mesh.cy[c];
      // no diffusion to speak of
      m.state.eddyViscosity[c] = 0;
    }
    int c = 12;
    double omega = m.state.omega[c];
    advance(m, closure(m, FAR), gradients(m, false));
    double cross = 2 * 0.856 / omega * (3 * slope - 0.5 * slope);
    double expected =
        (omega + STEP * Math.max(cross, 0))
            / (1 + STEP * (0.0828 * omega + Math.max(-cross, 0) / omega));
    // the molecular diffusion of a linear field is nothing either
    assertThat(m.state.omega[c]).isCloseTo(expected, within(1e-11 * omega));
    assertThat(Math.abs(cross) * STEP).isGreaterThan(1e-8 * omega);
  }

  /** Diffusion between two cells: (ν + σ ν_t) of the outer or inner set. */
  @ParameterizedTest
  @CsvSource({FAR + ", 1, 0.856", NEAR + ", 0.85, 0.5"})
  void diffuses(double distance, double sigmaK, double sigmaOmega) {
    ClosureMeshes m = ClosureMeshes.unit(2, 1, Boundary.SLIP);
    double step = 1e-6;
    m.state.k[0] = K;
    m.state.k[1] = 2 * K;
    m.state.omega[0] = OMEGA;
    m.state.omega[1] = OMEGA;
    m.state.eddyViscosity[0] = 2;
    m.state.eddyViscosity[1] = 4;
    KOmegaSst closure = closure(m, distance);
    closure.inTime(m.step(step));
    closure.update(m.state, gradients(m, false), 1);
    // to first order in the step
    double decay = 0.09 * OMEGA * K;
    assertThat((m.state.k[0] - K) / step).isCloseTo((NU + sigmaK * 3) * K - decay, within(1e-4));
    m.state.k[0] = K;
    m.state.k[1] = K;
    m.state.omega[0] = OMEGA;
    m.state.omega[1] = 1.5 * OMEGA;
    m.state.eddyViscosity[0] = 2;
    m.state.eddyViscosity[1] = 4;
    closure.inTime(m.step(step));
    closure.update(m.state, gradients(m, false), 1);
    double beta = distance == NEAR ? 0.075 : 0.0828;
    assertThat((m.state.omega[0] - OMEGA) / step)
        .isCloseTo((NU + sigmaOmega * 3) * 0.5 * OMEGA - beta * OMEGA * OMEGA, within(1e-2));
  }

  /** Upwind convection between cells, the inflow's values where fluid enters. */
  @ParameterizedTest
  @ValueSource(doubles = {0.5, -0.5})
  void convects(double flux) {
    ClosureMeshes m = ClosureMeshes.unit(2, 1, Boundary.SLIP);
    int left = m.face(0, Patch.LEFT);
    int right = m.face(1, Patch.RIGHT);
    m.boundary.kind[left] = Boundary.OPEN;
    m.boundary.kind[right] = Boundary.OPEN;
    fill(m.state, K, OMEGA);
    m.state.k[1] = 2 * K;
    Arrays.fill(m.state.eddyViscosity, 0);
    m.state.flux[0] = flux;
    m.state.boundaryFlux[left] = -flux;
    m.state.boundaryFlux[right] = flux;
    double step = 1e-6;
    KOmegaSst closure = closure(m, FAR);
    closure.inTime(m.step(step));
    closure.update(m.state, gradients(m, false), 1);
    double[] decay = {0.09 * OMEGA * K, 0.09 * OMEGA * 2 * K};
    double[] before = flux > 0 ? new double[] {0.02, K} : new double[] {2 * K, 0.02};
    for (int c = 0; c < 2; c++) {
      double here = (c + 1) * K;
      assertThat((m.state.k[c] - here) / step)
          .isCloseTo(0.5 * (before[c] - here) - decay[c], within(1e-4));
    }
    int entered = flux > 0 ? 0 : 1;
    // ω of the inflow is 0.02 / 0.004
    assertThat((m.state.omega[entered] - OMEGA) / step)
        .isCloseTo(0.5 * (5 - OMEGA) - 0.0828 * OMEGA * OMEGA, within(1e-2));
  }

  /** In the sublayer ω = 6 ν / (β₁ d²) solves the equation on an even grid without error. */
  @Test
  void keepsTheSublayer() {
    int n = 40;
    double[] y = new double[n + 1];
    for (int j = 0; j <= n; j++) {
      y[j] = 1e-6 * j;
    }
    ClosureMeshes m = ClosureMeshes.of(new double[] {0, 1e-6}, y, Boundary.SLIP);
    int wall = m.face(0, Patch.BOTTOM);
    m.boundary.kind[wall] = Boundary.WALL;
    double[] distance = m.mesh.cy.clone();
    double[] omega = new double[n];
    for (int c = 0; c < n; c++) {
      omega[c] = 6 * NU / (0.075 * distance[c] * distance[c]);
      m.state.omega[c] = omega[c];
      m.state.k[c] = 1e-15;
    }
    KOmegaSst closure = closure(m, distance, false);
    // so short that the end of the grid does not reach down
    closure.inTime(m.step(1e-9));
    closure.update(m.state, gradients(m, false), 1);
    double rate = 0.075 * omega[5] * 1e-9;
    assertThat(rate).isGreaterThan(1e-4);
    for (int c = 0; c < 20; c++) {
      assertThat(m.state.omega[c] / omega[c]).as("cell %d", c).isCloseTo(1, within(1e-10));
    }
  }

  /** A wall cell takes ω, stress and production of k from the wall law, without a strain limit. */
  @Test
  void wallCells() {
    double u = 12;
    ClosureMeshes m =
        ClosureMeshes.of(new double[] {0, 1}, new double[] {0, 4e-3, 1e-2}, Boundary.SLIP);
    int wall = m.face(0, Patch.BOTTOM);
    m.boundary.kind[wall] = Boundary.WALL;
    fill(m.state, 0.5, 2000);
    m.state.u[0] = u;
    m.state.eddyViscosity[0] = 0;
    m.state.eddyViscosity[1] = 0;
    double d = 2e-3;
    KOmegaSst closure = closure(m, m.mesh.cy.clone(), false);
    VelocityGradients g = gradients(m, false);
    Arrays.fill(g.uy, 1e6);
    double step = 1e-8;
    closure.inTime(m.step(step));
    closure.update(m.state, g, 1);
    double yPlus = WallLaw.VELOCITY.distance(u * d / NU, 100);
    double friction = yPlus * NU / d;
    assertThat(u / friction).isCloseTo(WallLaw.VELOCITY.velocity(yPlus), within(1e-3));
    assertThat(closure.wallViscosity()[wall] * u / d)
        .isCloseTo(friction * friction, within(1e-5 * friction * friction));
    double omega = friction * friction / NU * WallLaw.omega(yPlus);
    assertThat(m.state.omega[0]).isCloseTo(omega, within(1e-5 * omega));
    double production = Math.pow(friction, 4) / NU * WallLaw.production(yPlus);
    double k = (0.5 / step + production) / (1 / step + 0.09 * omega);
    assertThat((m.state.k[0] - 0.5) / (k - 0.5)).isCloseTo(1, within(1e-2));
    assertThat(m.state.eddyViscosity[0]).isCloseTo(m.state.k[0] / m.state.omega[0], within(1e-12));
    // at rest the sublayer's ω
    m.state.u[0] = 0;
    KOmegaSst still = closure(m, m.mesh.cy.clone(), false);
    still.update(m.state, g, 1);
    assertThat(m.state.omega[0]).isCloseTo(80 * NU / (d * d), within(1e-9 * 80 * NU / (d * d)));
  }

  /** Relaxation keeps the rest of the old value; bounds hold. */
  @Test
  void relaxesAndBounds() {
    ClosureMeshes m = box();
    // no diffusion to speak of: sweeps then solve to the end
    Arrays.fill(m.state.eddyViscosity, 0);
    KOmegaSst closure = closure(m, FAR);
    closure.update(m.state, gradients(m, false), 0.25);
    // without sources the whole step would lead to zero
    assertThat(m.state.omega[4]).isCloseTo(0.75 * OMEGA, within(1e-3));
    assertThat(m.state.k[4]).isCloseTo(0.75 * K, within(1e-5));
    Arrays.fill(m.state.omega, 1e-9);
    Arrays.fill(m.state.k, 1e-30);
    closure.update(m.state, gradients(m, false), 0.5);
    assertThat(m.state.omega[4]).isEqualTo(1e-3);
    assertThat(m.state.k[4]).isEqualTo(0.02e-12);
  }

  @Test
  void startsFromTheInflowWhereThereIsNothing() {
    ClosureMeshes m = box();
    m.state.omega[4] = 0;
    m.state.eddyViscosity[4] = 0;
    m.state.omega[2] = 0;
    closure(m, FAR).initialise(m.state);
    assertThat(m.state.k[4]).isEqualTo(0.02);
    assertThat(m.state.omega[4]).isCloseTo(5, within(1e-12));
    assertThat(m.state.eddyViscosity[4]).isCloseTo(0.004, within(1e-15));
    assertThat(m.state.k[3]).isEqualTo(K);
    // the eddy viscosity of another model stays, at the inflow's ω of 5
    assertThat(m.state.eddyViscosity[2]).isCloseTo(K / OMEGA, within(1e-15));
    assertThat(m.state.omega[2]).isCloseTo(5, within(1e-12));
    assertThat(m.state.k[2]).isCloseTo(5 * K / OMEGA, within(1e-15));
  }
}
