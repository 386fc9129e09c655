package hemline.solver.flow;

import hemline.solver.field.FlowState;
import hemline.solver.grid.Mesh;
import hemline.solver.linear.SparseSystem;
import hemline.solver.scheme.Boundary;
import hemline.solver.scheme.FaceGeometry;
import hemline.solver.scheme.Limiter;
import hemline.solver.scheme.SlitCells;
import hemline.solver.scheme.TimeDifference;
import hemline.solver.scheme.VelocityGradients;
import org.jspecify.annotations.Nullable;

/**
 * Discrete momentum equations of all velocity components, one matrix for all.
 *
 * <p>Σ_f F φ_f - Σ_f ν A ∂φ/∂n = -V ∂p/∂x + V f, with upwind convection and two-point diffusion in
 * the matrix and the rest (bounded second-order convection, cross diffusion, transposed gradient)
 * on the right-hand side from the last iterate. Relaxed by a_P / α (Patankar 1980, Numerical Heat
 * Transfer and Fluid Flow, eq. 4.55).
 */
final class Momentum {
  private final FlowProblem problem;
  private final FaceGeometry geometry;
  private final Mesh mesh;
  private final SparseSystem system;
  private final double[] bu;
  private final double[] bv;
  private final double[] bw;
  private final double[] faceViscosity;
  private final double[] faceRatio;

  /** Effective viscosity over distance law at walls, kinematic, by boundary face. */
  private final double[] wallViscosity;

  /** False in laminar flow: bounds have kinks, on which Newton's method makes no way. */
  private final boolean bounded;

  /**
   * Cells in which the velocity into the walls keeps its friction: nothing else would hold it back.
   */
  private final boolean[] slit;

  private final IrregularFaces irregular;

  /** Null when the flow is taken as steady. */
  private @Nullable TimeDifference time;

  Momentum(FlowProblem problem, double[] wallViscosity, double[] faceRatio) {
    this.faceRatio = faceRatio;
    bounded = problem.closure() != Closure.LAMINAR;
    this.problem = problem;
    this.wallViscosity = wallViscosity;
    geometry = problem.geometry();
    mesh = geometry.mesh;
    slit = SlitCells.of(geometry);
    system = new SparseSystem(geometry.pattern);
    bu = new double[mesh.cells];
    bv = new double[mesh.cells];
    bw = new double[mesh.cells];
    faceViscosity = new double[mesh.faces];
    irregular = new IrregularFaces(problem, faceViscosity, bu, bv, bw);
  }

  /** Bounds what convection adds at off-centre faces more narrowly from now on. */
  void narrowOffsets() {
    irregular.narrow();
  }

  /** Adds a difference in time to all equations from now on. */
  void inTime(TimeDifference difference) {
    time = difference;
  }

  /**
   * Residual of w of all cells before relaxation.
   *
   * @param rw answer
   */
  void spanwiseResidual(FlowState s, double[] rw) {
    system.residuals(bw, s.w, rw);
  }

  /** Coefficients of the neighbours, by entry of the pattern. */
  double[] neighbours() {
    return system.neighbour;
  }

  /**
   * Residuals of all cells before relaxation: b + Σ a_nb φ_nb - a_P φ_P.
   *
   * @param ru answer for u
   * @param rv answer for v
   */
  void residuals(FlowState s, double[] ru, double[] rv) {
    system.residuals(bu, s.u, ru);
    system.residuals(bv, s.v, rv);
  }

  /** Diagonal before relaxation, a_P. */
  double[] diagonal() {
    return system.diagonal;
  }

  /** Sum of absolute residuals of u and v over the judged cells, m³/s² per metre. */
  double residual(FlowState s) {
    return system.residual(bu, s.u, problem.momentum().judged())
        + system.residual(bv, s.v, problem.momentum().judged());
  }

  /** Sum of the neighbour coefficients of a cell. */
  double neighbourSum(int c) {
    double sum = 0;
    for (int e = geometry.pattern.rowStart[c]; e < geometry.pattern.rowStart[c + 1]; e++) {
      sum += system.neighbour[e];
    }
    return sum;
  }

  /**
   * Fills matrix and right-hand sides from the state.
   *
   * @param s not modified
   * @param g velocity gradients of the state
   * @param p pressure gradients of the state
   */
  void assemble(FlowState s, VelocityGradients g, PressureField p) {
    system.clear();
    double fx = problem.momentum().bodyForceX();
    for (int c = 0; c < mesh.cells; c++) {
      bu[c] = mesh.volume[c] * (fx - p.gx[c]);
      bv[c] = -mesh.volume[c] * p.gy[c];
      bw[c] = 0;
    }
    interiorFaces(s, g);
    if (problem.momentum().spanwise()) {
      convectSpanwise(s, g);
    }
    irregular.add(s, g);
    if (problem.closure() != Closure.LAMINAR) {
      transposedGradient(g);
    }
    boundaryFaces(s, g);
    if (time != null) {
      difference(time);
    }
  }

  // V (3 φ - 4 φ' + φ'') / (2 Δt)
  private void difference(TimeDifference t) {
    for (int c = 0; c < mesh.cells; c++) {
      double volume = mesh.volume[c];
      system.diagonal[c] += volume * t.now();
      bu[c] += volume * t.past(t.last.u[c], t.beforeLast.u[c]);
      bv[c] += volume * t.past(t.last.v[c], t.beforeLast.v[c]);
      bw[c] += volume * t.past(t.last.w[c], t.beforeLast.w[c]);
    }
  }

  // a_O = Γ + max(-F, 0), a_N = Γ + max(F, 0); b takes -F (φ_f - φ_upwind)
  private void interiorFaces(FlowState s, VelocityGradients g) {
    double nu = problem.momentum().viscosity();
    double[] share = problem.momentum().secondOrderShare();
    double[] u = s.u;
    double[] v = s.v;
    for (int f = 0; f < mesh.faces; f++) {
      int o = mesh.owner[f];
      int n = mesh.neighbour[f];
      double wo = geometry.ownerWeight[f];
      double flux = s.flux[f];
      double viscosity =
          (nu + wo * s.eddyViscosity[o] + (1 - wo) * s.eddyViscosity[n]) * faceRatio[f];
      faceViscosity[f] = viscosity;
      double diffusion = viscosity * geometry.conductance[f];
      double ao = diffusion + Math.max(-flux, 0);
      double an = diffusion + Math.max(flux, 0);
      system.neighbour[geometry.pattern.firstEntry[f]] += ao;
      system.neighbour[geometry.pattern.secondEntry[f]] += an;
      system.diagonal[o] += ao;
      system.diagonal[n] += an;
      int c = flux >= 0 ? o : n;
      int d = flux >= 0 ? n : o;
      double dx = flux >= 0 ? geometry.dx[f] : -geometry.dx[f];
      double dy = flux >= 0 ? geometry.dy[f] : -geometry.dy[f];
      // twice the distance share from the upwind centre to the face: 1 on an even grid
      double factor = flux * share[f] * (flux >= 0 ? 1 - wo : wo);
      double du = u[d] - u[c];
      double dv = v[d] - v[c];
      double cu = factor * step(2 * (g.ux[c] * dx + g.uy[c] * dy) - du, du);
      double cv = factor * step(2 * (g.vx[c] * dx + g.vy[c] * dy) - dv, dv);
      bu[o] -= cu;
      bu[n] += cu;
      bv[o] -= cv;
      bv[n] += cv;
    }
  }

  private double step(double behind, double ahead) {
    return bounded ? Limiter.step(behind, ahead) : Limiter.unbounded(behind, ahead);
  }

  private void convectSpanwise(FlowState s, VelocityGradients g) {
    double[] share = problem.momentum().secondOrderShare();
    double[] w = s.w;
    for (int f = 0; f < mesh.faces; f++) {
      double flux = s.flux[f];
      int c = flux >= 0 ? mesh.owner[f] : mesh.neighbour[f];
      int d = flux >= 0 ? mesh.neighbour[f] : mesh.owner[f];
      double dx = flux >= 0 ? geometry.dx[f] : -geometry.dx[f];
      double dy = flux >= 0 ? geometry.dy[f] : -geometry.dy[f];
      double wo = geometry.ownerWeight[f];
      double factor = flux * share[f] * (flux >= 0 ? 1 - wo : wo);
      double dw = w[d] - w[c];
      double cw = factor * step(2 * (g.wx[c] * dx + g.wy[c] * dy) - dw, dw);
      bw[mesh.owner[f]] -= cw;
      bw[mesh.neighbour[f]] += cw;
    }
  }

  // Σ ν A n_j ∂u_j/∂x_i, which does not vanish where the eddy viscosity varies
  private void transposedGradient(VelocityGradients g) {
    for (int f = 0; f < mesh.faces; f++) {
      int o = mesh.owner[f];
      int n = mesh.neighbour[f];
      double wo = geometry.ownerWeight[f];
      double wn = 1 - wo;
      double strength = faceViscosity[f] * mesh.area[f];
      double cu;
      double cv;
      if (mesh.vertical[f]) {
        cu = strength * (wo * g.ux[o] + wn * g.ux[n]);
        cv = strength * (wo * g.uy[o] + wn * g.uy[n]);
      } else {
        cu = strength * (wo * g.vx[o] + wn * g.vx[n]);
        cv = strength * (wo * g.vy[o] + wn * g.vy[n]);
      }
      bu[o] += cu;
      bu[n] -= cu;
      bv[o] += cv;
      bv[n] -= cv;
    }
  }

  private void boundaryFaces(FlowState s, VelocityGradients g) {
    Boundary boundary = problem.boundary();
    boolean turbulent = problem.closure() != Closure.LAMINAR;
    for (int b = 0; b < mesh.boundaryFaces; b++) {
      int c = mesh.bCell[b];
      double flux = s.boundaryFlux[b];
      switch (boundary.kind[b]) {
        case Boundary.WALL -> {
          double a = wallViscosity[b] * geometry.bConductance[b];
          system.diagonal[c] += a;
          bu[c] += a * g.bu[b];
          bv[c] += a * g.bv[b];
          bw[c] += a * g.bw[b];
          if (turbulent && !slit[c]) {
            // the wall law holds along the wall only: give the normal part back
            double nx = geometry.bux[b];
            double ny = geometry.buy[b];
            double normal = a * ((s.u[c] - g.bu[b]) * nx + (s.v[c] - g.bv[b]) * ny);
            bu[c] += normal * nx;
            bv[c] += normal * ny;
          }
        }
        case Boundary.VELOCITY -> {
          double a = problem.momentum().viscosity() * geometry.bConductance[b] + Math.max(-flux, 0);
          double out = Math.max(flux, 0);
          system.diagonal[c] += a;
          bu[c] += a * g.bu[b] - out * (g.bu[b] - s.u[c]);
          bv[c] += a * g.bv[b] - out * (g.bv[b] - s.v[c]);
          bw[c] += a * g.bw[b] - out * (g.bw[b] - s.w[c]);
        }
        case Boundary.OPEN -> {
          if (flux < 0) {
            system.diagonal[c] -= flux;
            bu[c] -= flux * g.bu[b];
            bv[c] -= flux * g.bv[b];
            bw[c] -= flux * g.bw[b];
          }
        }
        case Boundary.SLIP -> {
          // no shear, but the stress along the normal stays: the boundary value has no such part
          double a =
              (problem.momentum().viscosity() + s.eddyViscosity[c]) * geometry.bConductance[b];
          system.diagonal[c] += a;
          bu[c] += a * g.bu[b];
          bv[c] += a * g.bv[b];
          bw[c] += a * g.bw[b];
        }
        default -> {}
      }
    }
  }

  /**
   * Relaxes and solves; the state's velocity becomes the predicted one.
   *
   * @param s modified: u, v, w
   * @param alpha relaxation factor, 0 to 1
   * @param sweeps Gauss–Seidel sweeps
   */
  void solve(FlowState s, double alpha, int sweeps) {
    double extra = (1 - alpha) / alpha;
    for (int c = 0; c < mesh.cells; c++) {
      double a = extra * system.diagonal[c];
      bu[c] += a * s.u[c];
      bv[c] += a * s.v[c];
      bw[c] += a * s.w[c];
      system.diagonal[c] += a;
    }
    system.relax(bu, s.u, bv, s.v, sweeps);
    if (problem.momentum().spanwise()) {
      system.relax(bw, s.w, sweeps);
    }
  }
}
