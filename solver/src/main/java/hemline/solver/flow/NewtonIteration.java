package hemline.solver.flow;

import hemline.solver.field.FlowState;
import hemline.solver.grid.Mesh;
import hemline.solver.linear.FlexibleGmres;
import hemline.solver.scheme.FaceGeometry;

/**
 * Newton's method for velocity and pressure together, with pseudo-time steps.
 *
 * <p>The linear systems are solved by GMRES on differences of the full residual, preconditioned by
 * the direct solution of a compact Jacobian; eddy viscosity stays as it is during a step. A step
 * that raises the residual is taken back and tried with new factors, then with more inertia.
 * Sources: Knoll and Keyes 2004, J. Comput. Phys. 193, 357–397; Kelley and Keyes 1998, SIAM J.
 * Numer. Anal. 35, 508–523.
 */
final class NewtonIteration {
  private static final double LINEAR_REDUCTION = 0.05;
  private static final int KRYLOV = 40;
  private static final double DIFFERENCE = 1e-6;

  /** Growth of the residual that a step may bring. */
  private static final double TOLERATED = 1.5;

  /** Residual below which it may grow more: what is gained there and lost comes back. */
  private static final double NEARLY = 1e-3;

  /** First steps that are not judged: they lead away from a start that is no flow. */
  private static final int FREE_STEPS = 2;

  private static final double LEAST_INERTIA = 1e-5;

  /**
   * The factors of the compact Jacobian serve the next step too where they brought the residual
   * down to this share within so many Krylov steps.
   */
  private static final double KEPT_GAIN = 0.25;

  private static final int KEPT_KRYLOV = 12;

  private final FlowEquations equations;
  private final FlowState state;
  private final Mesh mesh;
  private final int cells;
  private final double velocity;
  private final double momentumUnit;
  private final double massUnit;
  private final double pressureUnit;
  private final CoupledJacobian jacobian;
  private final FlexibleGmres gmres;
  private final double[] base;
  private final double[] trial;
  private final double[] residual;
  private final double[] moved;
  private final double[] step;
  private final double[] ru;
  private final double[] rv;
  private final double[] rp;
  private final double[] boundaryFlux;
  private final double[] inertiaTerm;
  private double inertia;
  private boolean kept;
  private int taken;
  private double norm = Double.NaN;
  private double massResidual = Double.MAX_VALUE;

  /**
   * Prepares steps from the state of the equations.
   *
   * @param inertia of the first step: what a pseudo-time step adds to the diagonal, of the diagonal
   */
  NewtonIteration(FlowEquations equations, double inertia) {
    this.equations = equations;
    this.inertia = inertia;
    state = equations.state;
    FaceGeometry geometry = equations.problem.geometry();
    mesh = geometry.mesh;
    cells = mesh.cells;
    FlowProblem.Scales scales = equations.problem.scales();
    velocity = scales.velocity();
    pressureUnit = scales.pressure();
    momentumUnit = scales.length() * scales.pressure();
    massUnit = scales.length() * scales.velocity();
    jacobian = new CoupledJacobian(equations.problem, equations.checkpoint);
    equations.checkpoint.run();
    gmres = new FlexibleGmres(3 * cells, KRYLOV);
    base = new double[3 * cells];
    trial = new double[3 * cells];
    residual = new double[3 * cells];
    moved = new double[3 * cells];
    step = new double[3 * cells];
    ru = new double[cells];
    rv = new double[cells];
    rp = new double[cells];
    boundaryFlux = new double[mesh.boundaryFaces];
    inertiaTerm = new double[cells];
    equations.gradients.update(state);
    updatePressure();
    equations.momentum.assemble(state, equations.gradients, equations.pressure);
  }

  private void updatePressure() {
    equations.correction.openPressures(state, equations.pressure);
    equations.pressure.update(state.p);
  }

  /** Residuals of the state in units of gap times reference pressure and gap times velocity. */
  private void evaluate(double[] out) {
    equations.checkpoint.run();
    updatePressure();
    equations.correction.prediction.settleOpenFluxes(state, equations.pressure);
    updatePressure();
    equations.gradients.update(state);
    equations.correction.prediction.forget();
    equations.correction.massResiduals(state, equations.gradients, equations.pressure, 1, rp);
    equations.momentum.assemble(state, equations.gradients, equations.pressure);
    equations.momentum.residuals(state, ru, rv);
    for (int c = 0; c < cells; c++) {
      out[3 * c] = ru[c] / momentumUnit;
      out[3 * c + 1] = rv[c] / momentumUnit;
      out[3 * c + 2] = rp[c] / massUnit;
    }
  }

  private void read(double[] x) {
    for (int c = 0; c < cells; c++) {
      x[3 * c] = state.u[c];
      x[3 * c + 1] = state.v[c];
      x[3 * c + 2] = state.p[c];
    }
  }

  private void write(double[] x) {
    for (int c = 0; c < cells; c++) {
      state.u[c] = x[3 * c];
      state.v[c] = x[3 * c + 1];
      state.p[c] = x[3 * c + 2];
    }
    System.arraycopy(boundaryFlux, 0, state.boundaryFlux, 0, boundaryFlux.length);
  }

  /** Takes the residuals of the state, which the next step begins from. */
  void look() {
    equations.correction.coefficients(equations.momentum, 1);
    System.arraycopy(state.boundaryFlux, 0, boundaryFlux, 0, boundaryFlux.length);
    evaluate(residual);
    norm = norm(residual);
    note();
    read(base);
  }

  /**
   * One Newton step after a {@link #look}; the state is left as it was when the step is refused.
   *
   * @return false when the linear solution failed
   */
  boolean step() {
    double[] aP = equations.momentum.diagonal();
    for (int c = 0; c < cells; c++) {
      inertiaTerm[c] = inertia * aP[c] / momentumUnit;
    }
    if (!Double.isFinite(norm)
        || !kept
            && !jacobian.factor(
                state, equations.momentum, equations.correction, equations.pressure, inertia)) {
      return false;
    }
    int krylov =
        gmres.solve(this::derivative, this::precondition, residual, step, LINEAR_REDUCTION);
    equations.krylovSteps += krylov;
    for (int i = 0; i < base.length; i++) {
      trial[i] = base[i] + step[i];
    }
    write(trial);
    evaluate(moved);
    double after = norm(moved);
    if (taken >= FREE_STEPS
        ? !(after < Math.max(TOLERATED * norm, NEARLY))
        : !Double.isFinite(after)) {
      write(base);
      evaluate(moved);
      if (!kept) {
        inertia = Math.min(10, Math.max(4 * inertia, 0.02));
      }
      kept = false;
      return Double.isFinite(norm(moved));
    }
    taken++;
    kept = krylov <= KEPT_KRYLOV && after < KEPT_GAIN * norm;
    inertia *= Math.max(0.1, Math.min(1.5, after / norm));
    if (inertia < LEAST_INERTIA) {
      inertia = 0;
    }
    return true;
  }

  /** Minus the directional derivative of the residual, with the inertia of the pseudo-time step. */
  private void derivative(double[] direction, double[] out) {
    double size = 0;
    for (int c = 0; c < cells; c++) {
      size =
          Math.max(
              size,
              Math.max(
                  Math.max(Math.abs(direction[3 * c]), Math.abs(direction[3 * c + 1])) / velocity,
                  Math.abs(direction[3 * c + 2]) / pressureUnit));
    }
    double epsilon = DIFFERENCE / Math.max(size, Double.MIN_NORMAL);
    for (int i = 0; i < base.length; i++) {
      trial[i] = base[i] + epsilon * direction[i];
    }
    write(trial);
    evaluate(out);
    for (int i = 0; i < out.length; i++) {
      out[i] = (residual[i] - out[i]) / epsilon;
    }
    for (int c = 0; c < cells; c++) {
      out[3 * c] += inertiaTerm[c] * direction[3 * c];
      out[3 * c + 1] += inertiaTerm[c] * direction[3 * c + 1];
    }
  }

  private void precondition(double[] from, double[] to) {
    for (int c = 0; c < cells; c++) {
      to[3 * c] = from[3 * c] * momentumUnit;
      to[3 * c + 1] = from[3 * c + 1] * momentumUnit;
      to[3 * c + 2] = from[3 * c + 2] * massUnit;
    }
    jacobian.solve(to);
  }

  private void note() {
    double sum = 0;
    double mass = 0;
    for (int c = 0; c < cells; c++) {
      sum += Math.abs(residual[3 * c]) + Math.abs(residual[3 * c + 1]);
      mass += Math.abs(residual[3 * c + 2]);
    }
    equations.momentumResidual = sum;
    massResidual = mass;
  }

  /** Sum of the mass defects at the last {@link #look} over gap times velocity scale. */
  double massResidual() {
    return massResidual;
  }

  private static double norm(double[] a) {
    double sum = 0;
    for (double v : a) {
      sum += v * v;
    }
    return Math.sqrt(sum);
  }
}
