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
 * Between the inner and the outer set of constants, by hand: blending functions of Menter, Kuntz &
 * Langtry 2003, Turbulence, Heat and Mass Transfer 4, 625–632, and the cells of corners.
 */
class KOmegaSstBlendingTest {
  private static final double NU = 1e-5;
  private static final double STEP = 1e-3;

  private static KOmegaSst closure(ClosureMeshes m, double distance) {
    return new KOmegaSst(
        m.geometry, m.boundary, NU, m.everywhere(distance), 0.02, 0.004, 1e-9, false);
  }

  private static ClosureMeshes box(double k, double omega) {
    ClosureMeshes m = ClosureMeshes.unit(3, 3, Boundary.SLIP);
    Arrays.fill(m.state.k, k);
    Arrays.fill(m.state.omega, omega);
    return m;
  }

  private static VelocityGradients shear(ClosureMeshes m, double uy) {
    VelocityGradients g = new VelocityGradients(m.geometry, m.boundary, false);
    Arrays.fill(g.uy, uy);
    return g;
  }

  private static void advance(
      ClosureMeshes m, KOmegaSst closure, VelocityGradients g, double step) {
    closure.inTime(m.step(step));
    closure.update(m.state, g, 1);
  }

  /**
   * F₁ = tanh(arg⁴) with arg = √k / (β* ω d) or 500 ν / (d² ω), whichever is larger: β, γ and with
   * them ω after a step.
   */
  @ParameterizedTest
  @CsvSource({"0.3, 0.8", "0.3, 1", "1e-8, 0.8", "1e-8, 1"})
  void blendsTheConstants(double k, double arg) {
    double omega = 40;
    double d = distance(k, arg);
    double f1 = Math.tanh(Math.pow(arg, 4));
    ClosureMeshes m = box(k, omega);
    advance(m, closure(m, d), shear(m, 30), STEP);
    double beta = f1 * 0.075 + (1 - f1) * 0.0828;
    double gamma = f1 * 5 / 9 + (1 - f1) * 0.44;
    // the share of the sublayer has no part in destruction where all distances are one
    double expected = (omega + STEP * gamma * 900) / (1 + STEP * beta * omega);
    assertThat(m.state.omega[4]).isCloseTo(expected, within(1e-6 * STEP * omega * omega * 0.0078));
  }

  /** Where the argument has a value at ω = 40: by turbulence, or for a faint k by viscosity. */
  private static double distance(double k, double arg) {
    return k > 1e-3 ? Math.sqrt(k) / (0.09 * 40 * arg) : Math.sqrt(500 * NU / (40 * arg));
  }

  /**
   * Where k and ω fall together, arg is at most 4 σ_ω2 k / (CD d²): cross-diffusion CD = 2 σ_ω2 / ω
   * ∇k·∇ω then counts with the rest 1 − F₁.
   */
  @Test
  void crossDiffusionUndoesTheInnerSet() {
    ClosureMeshes m = ClosureMeshes.unit(5, 5, Boundary.SLIP);
    for (int c = 0; c < m.mesh.cells; c++) {
      m.state.k[c] = 0.3 + 0.02 * m.mesh.cx[c];
      m.state.omega[c] = 40 + 3 * m.mesh.cx[c];
    }
    int c = 12;
    double k = m.state.k[c];
    double omega = m.state.omega[c];
    double cd = 2 * 0.856 / omega * 0.02 * 3;
    // arg = 0.9, where √k / (β* ω d) is above 1
    double wanted = 0.9;
    double d = Math.sqrt(4 * 0.856 * k / (cd * wanted));
    double turbulent = Math.sqrt(k) / (0.09 * omega * d);
    assertThat(turbulent).isLessThan(wanted);
    // so it is not reached at this distance; nearer by 200 it is far beyond both
    advance(m, closure(m, d), shear(m, 0), STEP);
    double f1 = Math.tanh(Math.pow(turbulent, 4));
    double beta = f1 * 0.075 + (1 - f1) * 0.0828;
    double expected = (omega + STEP * (1 - f1) * cd) / (1 + STEP * beta * omega);
    assertThat(m.state.omega[c]).isCloseTo(expected, within(1e-9));
  }

  /** The bound by cross-diffusion itself: steep k and ω, so that it is the least. */
  @Test
  void steepCrossDiffusionBoundsTheBlending() {
    ClosureMeshes m = ClosureMeshes.of(row(5), row(5), Boundary.SLIP);
    for (int c = 0; c < m.mesh.cells; c++) {
      m.state.k[c] = 0.3 + 20 * m.mesh.cx[c];
      m.state.omega[c] = 40 + 3000 * m.mesh.cx[c];
    }
    int c = 12;
    double k = m.state.k[c];
    double omega = m.state.omega[c];
    double cd = 2 * 0.856 / omega * 20 * 3000;
    double wanted = 0.7;
    double d = Math.sqrt(4 * 0.856 * k / (cd * wanted));
    assertThat(Math.sqrt(k) / (0.09 * omega * d)).isGreaterThan(wanted);
    double step = 1e-6;
    advance(m, closure(m, d), shear(m, 0), step);
    double f1 = Math.tanh(Math.pow(wanted, 4));
    double beta = f1 * 0.075 + (1 - f1) * 0.0828;
    double expected = (1 - f1) * cd - beta * omega * omega;
    assertThat((m.state.omega[c] - omega) / step).isCloseTo(expected, within(1e-3 * cd));
  }

  private static double[] row(int n) {
    double[] x = new double[n + 1];
    for (int i = 0; i <= n; i++) {
      x[i] = 1e-3 * i;
    }
    return x;
  }

  /** F₂ = tanh(arg²), arg = 2 √k / (β* ω d) or 500 ν / (d² ω): ν_t = a₁ k / (S F₂). */
  @ParameterizedTest
  @CsvSource({"0.3, 0.8", "0.3, 1", "1e-8, 0.8"})
  void blendsTheBoundOfTheEddyViscosity(double k, double arg) {
    double s = 300;
    double d = k > 1e-3 ? 2 * distance(k, arg) : distance(k, arg);
    ClosureMeshes m = box(k, 40);
    advance(m, closure(m, d), shear(m, s), 1e-9);
    double f2 = Math.tanh(arg * arg);
    assertThat(m.state.eddyViscosity[4])
        .isCloseTo(0.31 * k / (s * f2), within(2e-6 * 0.31 * k / (s * f2)));
  }

  /** Beyond arguments at which tanh is 1 to the last digit the functions are 1. */
  @Test
  void isTheInnerSetFarIn() {
    ClosureMeshes m = box(0.3, 40);
    advance(m, closure(m, 0.152145 / 2.5), shear(m, 300), 1e-9);
    assertThat(m.state.eddyViscosity[4]).isCloseTo(0.31 * 0.3 / 300, within(1e-11));
  }

  /** Diffusivities at a face: blending, eddy viscosity each weighed by distance. */
  @ParameterizedTest
  @ValueSource(booleans = {true, false})
  void weighsUnlikeCells(boolean inner) {
    // centroids at 0.5 and 2.5, face at 1: three quarters of the first cell
    ClosureMeshes m = ClosureMeshes.of(new double[] {0, 1, 4}, new double[] {0, 1}, Boundary.SLIP);
    double k = 0.3;
    double omega = 40;
    Arrays.fill(m.state.omega, omega);
    m.state.k[0] = k;
    m.state.k[1] = 2 * k;
    m.state.eddyViscosity[0] = 2;
    m.state.eddyViscosity[1] = 10;
    // the first cell in the inner or the outer set, the second in the other
    double[] distance = inner ? new double[] {1e-4, 1e6} : new double[] {1e6, 1e-4};
    double step = 1e-7;
    KOmegaSst closure =
        new KOmegaSst(m.geometry, m.boundary, NU, distance, 0.02, 0.004, 1e-9, false);
    advance(m, closure, shear(m, 0), step);
    double f1 = inner ? 0.75 : 0.25;
    double mean = 0.75 * 2 + 0.25 * 10;
    double conductance = (f1 * 0.85 + (1 - f1)) * mean / 2;
    assertThat((m.state.k[0] - k) / step)
        .isCloseTo(conductance * k - 0.09 * omega * k, within(1e-4));
    assertThat((m.state.k[1] - 2 * k) / step)
        .isCloseTo(-conductance * k / 3 - 0.09 * omega * 2 * k, within(1e-4));
  }

  /** The same flux leaves one cell that enters the other, for both quantities, both ways. */
  @ParameterizedTest
  @ValueSource(doubles = {4, -4})
  void convectsBothQuantitiesUpwind(double flux) {
    ClosureMeshes m = ClosureMeshes.unit(2, 1, Boundary.SLIP);
    double[] k = {0.3, 0.7};
    double[] omega = {40, 55};
    System.arraycopy(k, 0, m.state.k, 0, 2);
    System.arraycopy(omega, 0, m.state.omega, 0, 2);
    m.state.flux[0] = flux;
    double step = 1e-7;
    advance(m, closure(m, 1e6), shear(m, 0), step);
    for (int c = 0; c < 2; c++) {
      int other = 1 - c;
      double in = c == 0 ? Math.max(-flux, 0) : Math.max(flux, 0);
      assertThat((m.state.k[c] - k[c]) / step)
          .isCloseTo(in * (k[other] - k[c]) - 0.09 * omega[c] * k[c], within(1e-3));
      assertThat((m.state.omega[c] - omega[c]) / step)
          .isCloseTo(
              in * (omega[other] - omega[c])
                  - 0.0828 * omega[c] * omega[c]
                  + 2 * 0.856 / omega[c] * 0.4 * 15,
              within(1e-2));
    }
  }

  /** Outlets and slip faces bring nothing in, prescribed velocities do. */
  @Test
  void inflowByKind() {
    double[] after = new double[4];
    byte[] kinds = {Boundary.SLIP, Boundary.OUTLET, Boundary.OPEN, Boundary.VELOCITY};
    for (int i = 0; i < kinds.length; i++) {
      ClosureMeshes m = ClosureMeshes.unit(1, 1, kinds[i]);
      m.state.k[0] = 0.3;
      m.state.omega[0] = 40;
      m.state.boundaryFlux[0] = -2;
      advance(m, closure(m, 1e6), shear(m, 0), 1e-7);
      after[i] = (m.state.k[0] - 0.3) / 1e-7;
    }
    double decay = -0.09 * 40 * 0.3;
    assertThat(after[0]).isCloseTo(decay, within(1e-4));
    assertThat(after[1]).isCloseTo(decay, within(1e-4));
    assertThat(after[2]).isCloseTo(decay + 2 * (0.02 - 0.3), within(1e-4));
    assertThat(after[3]).isCloseTo(decay + 2 * (0.02 - 0.3), within(1e-4));
  }

  /**
   * A corner cell between walls of different length: the larger ω of both, and the production
   * averaged over their lengths.
   */
  @Test
  void cornersWeighTheirWalls() {
    ClosureMeshes m =
        ClosureMeshes.of(new double[] {0, 3e-3}, new double[] {0, 4e-3}, Boundary.SLIP);
    m.boundary.kind[m.face(0, Patch.BOTTOM)] = Boundary.WALL;
    m.boundary.kind[m.face(0, Patch.LEFT)] = Boundary.WALL;
    m.state.u[0] = 12;
    m.state.v[0] = 5;
    m.state.k[0] = 0.5;
    m.state.omega[0] = 2000;
    KOmegaSst closure = closure(m, 1.5e-3);
    double step = 1e-8;
    advance(m, closure, shear(m, 1e6), step);
    double[] d = {2e-3, 1.5e-3};
    double[] speed = {12, 5};
    double[] length = {3e-3, 4e-3};
    double omega = 0;
    double production = 0;
    for (int i = 0; i < 2; i++) {
      double y = WallLaw.VELOCITY.distance(speed[i] * d[i] / NU, 100);
      double friction = y * NU / d[i];
      omega = Math.max(omega, friction * friction / NU * WallLaw.omega(y));
      production += length[i] * Math.pow(friction, 4) / NU * WallLaw.production(y) / 7e-3;
    }
    assertThat(m.state.omega[0]).isCloseTo(omega, within(1e-4 * omega));
    double k = (0.5 + step * production) / (1 + step * 0.09 * omega);
    assertThat((m.state.k[0] - 0.5) / (k - 0.5)).isCloseTo(1, within(1e-3));
  }

  /** Nothing is left over from the pass before. */
  @Test
  void eachPassStandsAlone() {
    ClosureMeshes m = walled();
    KOmegaSst used = closure(m, 2e-3);
    used.update(m.state, shear(m, 50), 0.5);
    ClosureMeshes fresh = walled();
    fresh.state.set(m.state);
    // so slow that what was left of the first pass would be larger
    m.state.u[0] = 1;
    fresh.state.u[0] = 1;
    used.update(m.state, shear(m, 50), 0.5);
    closure(fresh, 2e-3).update(fresh.state, shear(fresh, 50), 0.5);
    for (int c = 0; c < 2; c++) {
      assertThat(m.state.k[c]).isCloseTo(fresh.state.k[c], within(1e-5 * fresh.state.k[c]));
      assertThat(m.state.omega[c])
          .isCloseTo(fresh.state.omega[c], within(1e-5 * fresh.state.omega[c]));
    }
  }

  private static ClosureMeshes walled() {
    ClosureMeshes m =
        ClosureMeshes.of(new double[] {0, 1}, new double[] {0, 4e-3, 8e-3}, Boundary.SLIP);
    m.boundary.kind[m.face(0, Patch.BOTTOM)] = Boundary.WALL;
    m.state.u[0] = 12;
    Arrays.fill(m.state.k, 0.5);
    Arrays.fill(m.state.omega, 2000);
    Arrays.fill(m.state.eddyViscosity, 0.5 / 2000);
    return m;
  }

  @Test
  void laminarFlowDropsTheEddyViscosity() {
    ClosureMeshes m = box(0.3, 40);
    Arrays.fill(m.state.eddyViscosity, 0.1);
    new Laminar(m.mesh.boundaryFaces, m.mesh.faces, NU).initialise(m.state);
    assertThat(m.state.eddyViscosity).containsOnly(0);
  }

  /**
   * Half way out of the sublayer: the mean of d⁻⁴ over a cell from 1.5 to 2.5 mm counts with the
   * share (6 ν / (β₁ d² ω))^2.5 of 1/2.
   */
  @Test
  void destructionBesideAWallFades() {
    ClosureMeshes m =
        ClosureMeshes.of(new double[] {0, 1}, new double[] {0, 1, 2, 3}, Boundary.SLIP);
    double d = 2e-3;
    double omega = 6 * NU / (0.075 * d * d * 0.5);
    Arrays.fill(m.state.k, 1e-12);
    Arrays.fill(m.state.omega, omega);
    KOmegaSst closure =
        new KOmegaSst(
            m.geometry, m.boundary, NU, new double[] {1e-3, d, 3e-3}, 0.02, 0.004, 1e-9, false);
    double step = 1e-7;
    advance(m, closure, shear(m, 0), step);
    double a = 1.5e-3;
    double b = 2.5e-3;
    double mean = (Math.pow(a, -3) - Math.pow(b, -3)) / (3 * (b - a));
    double destroyed = 1 + Math.pow(0.5, 2.5) * (Math.pow(d, 4) * mean - 1);
    assertThat(destroyed).isGreaterThan(1.04);
    double expected = omega / (1 + step * 0.075 * omega * destroyed);
    assertThat((m.state.omega[1] - omega) / (expected - omega)).isCloseTo(1, within(1e-6));
  }
}
