package hemline.solver.flow;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import hemline.shared.result.SolveStatus;
import hemline.solver.field.FlowState;
import hemline.solver.grid.GridLines;
import hemline.solver.grid.Mesh;
import hemline.solver.grid.Patch;
import hemline.solver.scheme.Boundary;
import hemline.solver.scheme.TimeDifference;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;

/** The march in time against exact unsteady flows and against the steady solve. */
class TimeMarchTest {
  private static final FlowProblem.Scales UNIT = new FlowProblem.Scales(1, 1, 1);

  private static final int CELLS = 160;

  private static TimeMarch.Settings tight(double step) {
    return new TimeMarch.Settings(step, 60, 1e-6, 1e-12, TimeMarch.Settings.PASS);
  }

  /**
   * Stokes' second problem between walls 1 apart: the upper one moves with cos ωt. u = Re (sinh λy
   * / sinh λ e^iωt), λ = (1 + i) √(ω / 2ν); textbook (Landau & Lifshitz, Fluid Mechanics, § 24).
   * The real and imaginary parts below follow from sinh(a + ib) = sinh a cos b + i cosh a sin b.
   */
  private static double oscillating(double y, double omega, double nu, double t) {
    double a = Math.sqrt(omega / (2 * nu));
    double re = Math.sinh(a * y) * Math.cos(a * y);
    double im = Math.cosh(a * y) * Math.sin(a * y);
    double dre = Math.sinh(a) * Math.cos(a);
    double dim = Math.cosh(a) * Math.sin(a);
    double norm = dre * dre + dim * dim;
    double real = (re * dre + im * dim) / norm;
    double imaginary = (im * dre - re * dim) / norm;
    return real * Math.cos(omega * t) - imaginary * Math.sin(omega * t);
  }

  /** Profile after one period from the exact start, one column of cells. */
  private static double[] stokesLayer(int cells, int steps, double[] exact) {
    double omega = 2 * Math.PI;
    double nu = 0.3;
    Mesh mesh =
        Flows.mesh(
            new GridLines(new double[] {0, 0.1}, Flows.even(0, 1, cells)), List.of(), Patch.LEFT);
    Boundary boundary = new Boundary(mesh);
    for (int b = 0; b < mesh.boundaryFaces; b++) {
      if (mesh.bPatch[b] == Patch.LEFT || mesh.bPatch[b] == Patch.RIGHT) {
        boundary.kind[b] = Boundary.NONE;
      }
    }
    FlowProblem problem = Flows.problem(mesh, boundary, nu, Closure.LAMINAR, 0, false, UNIT);
    FlowState state = Flows.rest(mesh);
    for (int c = 0; c < cells; c++) {
      state.u[c] = oscillating(mesh.cy[c], omega, nu, 0);
      exact[c] = oscillating(mesh.cy[c], omega, nu, 1);
    }
    TimeMarch march =
        new TimeMarch(
            problem,
            state,
            new TimeMarch.Settings(
                1.0 / steps, 400, 1e-8, 1e-13, new IterationSettings(1, 1, 1, 20, 1e-2)));
    for (int i = 1; i <= steps; i++) {
      for (int b = 0; b < mesh.boundaryFaces; b++) {
        if (mesh.bPatch[b] == Patch.TOP) {
          boundary.u[b] = Math.cos(omega * i / steps);
        }
      }
      march.advance();
    }
    return state.u;
  }

  private static double distance(double[] a, double[] b) {
    double sum = 0;
    for (int c = 0; c < a.length; c++) {
      sum += (a[c] - b[c]) * (a[c] - b[c]);
    }
    return Math.sqrt(sum / a.length);
  }

  @Test
  void oscillatingWallIsSecondOrderInTime() {
    double[] exact = new double[CELLS];
    double coarse = distance(stokesLayer(CELLS, 20, exact), exact);
    double medium = distance(stokesLayer(CELLS, 40, exact), exact);
    double fine = distance(stokesLayer(CELLS, 80, exact), exact);
    String all = String.format(Locale.ROOT, "%.2e %.2e %.2e", coarse, medium, fine);
    assertThat(Flows.order(coarse, medium)).as(all).isGreaterThan(1.8);
    assertThat(Flows.order(medium, fine)).as(all).isGreaterThan(1.8);
    assertThat(fine).as(all).isLessThan(2e-3);
  }

  private static Mesh square(int cells) {
    double[] even = Flows.even(0, 1, cells);
    return Flows.mesh(new GridLines(even, even), List.of());
  }

  /**
   * Decaying vortices carried by a uniform stream (1, 0.5): u = 1 + sin X cos Y e^(-2π²νt), X = π
   * (x - t), Y = π (y - t/2), v alike. In the stream's frame this is the exact flow of Taylor &
   * Green 1937, Proc. R. Soc. Lond. A 158, 499 (two-dimensional case).
   */
  private record Vortices(double nu) {
    static final double U = 1;
    static final double V = 0.5;

    double decay(double t) {
      return Math.exp(-2 * Math.PI * Math.PI * nu * t);
    }

    double u(double x, double y, double t) {
      return U + decay(t) * Math.sin(Math.PI * (x - U * t)) * Math.cos(Math.PI * (y - V * t));
    }

    double v(double x, double y, double t) {
      return V - decay(t) * Math.cos(Math.PI * (x - U * t)) * Math.sin(Math.PI * (y - V * t));
    }

    double p(double x, double y, double t) {
      double d = decay(t);
      double cos = Math.cos(2 * Math.PI * (x - U * t)) + Math.cos(2 * Math.PI * (y - V * t));
      return 0.25 * d * d * cos;
    }

    double psi(double x, double y, double t) {
      double sines = Math.sin(Math.PI * (x - U * t)) * Math.sin(Math.PI * (y - V * t));
      return U * y - V * x + decay(t) / Math.PI * sines;
    }

    /** Sets the sides to the exact velocity, normal to them with the exact flux. */
    void onSides(Mesh mesh, Boundary boundary, double half, double t) {
      for (int b = 0; b < mesh.boundaryFaces; b++) {
        double x = mesh.bx[b];
        double y = mesh.by[b];
        boundary.kind[b] = Boundary.VELOCITY;
        if (mesh.bnx[b] != 0) {
          boundary.u[b] = (psi(x, y + half, t) - psi(x, y - half, t)) / (2 * half);
          boundary.v[b] = v(x, y, t);
        } else {
          boundary.u[b] = u(x, y, t);
          boundary.v[b] = (psi(x - half, y, t) - psi(x + half, y, t)) / (2 * half);
        }
      }
    }

    /** The flow after a time of 0.5 in a square whose sides the stream crosses. */
    FlowState march(int cells, int steps) {
      Mesh mesh = square(cells);
      double half = 0.5 / cells;
      Boundary boundary = new Boundary(mesh);
      onSides(mesh, boundary, half, 0);
      FlowProblem problem = Flows.problem(mesh, boundary, nu, Closure.LAMINAR, 0, false, UNIT);
      FlowState state = Flows.rest(mesh);
      for (int c = 0; c < mesh.cells; c++) {
        state.u[c] = u(mesh.cx[c], mesh.cy[c], 0);
        state.v[c] = v(mesh.cx[c], mesh.cy[c], 0);
        state.p[c] = p(mesh.cx[c], mesh.cy[c], 0);
      }
      for (int f = 0; f < mesh.faces; f++) {
        double x = mesh.fx[f];
        double y = mesh.fy[f];
        state.flux[f] =
            mesh.vertical[f]
                ? psi(x, y + half, 0) - psi(x, y - half, 0)
                : psi(x - half, y, 0) - psi(x + half, y, 0);
      }
      TimeMarch march = new TimeMarch(problem, state, tight(0.5 / steps));
      for (int i = 1; i <= steps; i++) {
        onSides(mesh, boundary, half, 0.5 * i / steps);
        march.advance();
      }
      return state;
    }
  }

  @Test
  void carriedVorticesAreSecondOrderInTime() {
    Vortices vortices = new Vortices(0.05);
    int cells = 20;
    FlowState coarse = vortices.march(cells, 10);
    FlowState medium = vortices.march(cells, 20);
    FlowState fine = vortices.march(cells, 40);
    double first = distance(coarse.u, medium.u);
    double second = distance(medium.u, fine.u);
    double firstPressure = distance(centred(coarse.p), centred(medium.p));
    double secondPressure = distance(centred(medium.p), centred(fine.p));
    String all =
        String.format(
            Locale.ROOT,
            "changes of u %.2e %.2e, of p %.2e %.2e",
            first,
            second,
            firstPressure,
            secondPressure);
    assertThat(Flows.order(first, second)).as(all).isGreaterThan(1.8);
    assertThat(Flows.order(firstPressure, secondPressure)).as(all).isGreaterThan(1.8);
    Mesh mesh = square(cells);
    double[] exact = new double[mesh.cells];
    for (int c = 0; c < mesh.cells; c++) {
      exact[c] = vortices.u(mesh.cx[c], mesh.cy[c], 0.5);
    }
    assertThat(distance(fine.u, exact)).as(all).isLessThan(1e-3);
  }

  private static double[] centred(double[] p) {
    double mean = java.util.Arrays.stream(p).average().orElse(0);
    return java.util.Arrays.stream(p).map(x -> x - mean).toArray();
  }

  private static FlowProblem cavity(Mesh mesh) {
    Boundary boundary = new Boundary(mesh);
    for (int b = 0; b < mesh.boundaryFaces; b++) {
      if (mesh.bPatch[b] == Patch.TOP) {
        boundary.u[b] = 1;
      }
    }
    return Flows.problem(mesh, boundary, 0.01, Closure.LAMINAR, 0, false, UNIT);
  }

  @Test
  void steadyFlowIsSteadyWhateverTheStep() {
    Mesh mesh = square(16);
    FlowProblem problem = cavity(mesh);
    FlowState start = Flows.rest(mesh);
    FlowSolution steady =
        new SteadyFlowSolver(
                problem,
                start,
                new StoppingLimits(3000, 100, 30, 1e-9, 1e-8, 1e-6),
                new CancelToken())
            .solve();
    assertThat(steady.outcome().status()).isEqualTo(SolveStatus.CONVERGED);
    for (double step : new double[] {0.5, 0.05, 0.001}) {
      FlowState state = Flows.rest(mesh);
      state.set(steady.state());
      TimeMarch march = new TimeMarch(problem, state, tight(step));
      for (int i = 0; i < 10; i++) {
        march.advance();
      }
      assertThat(distance(state.u, steady.state().u)).as("step %s", step).isLessThan(1e-11);
      assertThat(distance(state.flux, steady.state().flux)).as("step %s", step).isLessThan(1e-12);
    }
  }

  @Test
  void flowSetInMotionComesToTheSteadyOne() {
    Mesh mesh = square(16);
    FlowProblem problem = cavity(mesh);
    FlowSolution steady = Flows.solve(problem, Flows.rest(mesh));
    FlowState state = Flows.rest(mesh);
    TimeMarch march = new TimeMarch(problem, state, TimeMarch.Settings.of(0.5));
    TimeMarch.Step last = march.advance();
    for (int i = 0; i < 80; i++) {
      last = march.advance();
    }
    assertThat(last.time()).isCloseTo(40.5, within(1e-9));
    assertThat(march.figure()).isCloseTo(steady.outcome().figure(), within(1e-5));
    assertThat(distance(state.u, steady.state().u)).isLessThan(1e-4);
  }

  @Test
  void differenceIsExactForParabolasAndRefusesNoStep() {
    Mesh mesh = square(1);
    TimeDifference time = new TimeDifference(mesh, 0.2);
    FlowState state = Flows.rest(mesh);
    // φ = 1 + t + t² at 0, 0.2, 0.4
    for (double t : new double[] {0, 0.2}) {
      state.u[0] = 1 + t + t * t;
      time.begin(state);
    }
    double slope = time.now() * (1 + 0.4 + 0.16) - time.past(time.last.u[0], time.beforeLast.u[0]);
    assertThat(slope).isCloseTo(1.8, within(1e-12));
    org.assertj.core.api.Assertions.assertThatThrownBy(() -> new TimeDifference(mesh, 0))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("time step");
  }
}
