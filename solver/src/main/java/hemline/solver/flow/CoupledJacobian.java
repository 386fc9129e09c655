package hemline.solver.flow;

import hemline.solver.field.FlowState;
import hemline.solver.grid.Mesh;
import hemline.solver.linear.BlockLu;
import hemline.solver.scheme.Boundary;
import hemline.solver.scheme.FaceGeometry;

/**
 * Minus the derivative of the residuals of u, v and mass with respect to u, v and p of a cell and
 * its neighbours, and its direct solution.
 *
 * <p>Convection counts as upwind with Newton's term for the flux; the bounded correction, the cross
 * terms and the mean pressure gradient in the face flux are left out, so that only face neighbours
 * are coupled.
 */
final class CoupledJacobian {
  private static final int U = 0;
  private static final int V = 1;
  private static final int P = 2;

  private final FlowProblem problem;
  private final FaceGeometry geometry;
  private final Mesh mesh;
  private final double[] diagonal;
  private final double[] entry;
  private final BlockLu lu;

  /**
   * Reserves the factors.
   *
   * @param problem the flow
   * @param checkpoint run again and again, here and later; what it throws ends the work
   */
  CoupledJacobian(FlowProblem problem, Runnable checkpoint) {
    this.problem = problem;
    geometry = problem.geometry();
    mesh = geometry.mesh;
    diagonal = new double[9 * mesh.cells];
    entry = new double[9 * geometry.pattern.column.length];
    lu = directSolver(geometry, 3, checkpoint);
  }

  /** Direct solver over the cells of a mesh, ordered by their place on the grid. */
  static BlockLu directSolver(FaceGeometry geometry, int block, Runnable checkpoint) {
    Mesh mesh = geometry.mesh;
    int nx = mesh.lines.nx();
    double[] column = new double[mesh.cells];
    double[] row = new double[mesh.cells];
    for (int k = 0; k < mesh.cellAt.length; k++) {
      if (mesh.cellAt[k] >= 0) {
        column[mesh.cellAt[k]] = k % nx;
        row[mesh.cellAt[k]] = k / nx;
      }
    }
    return new BlockLu(geometry.pattern, column, row, block, checkpoint);
  }

  /** Solves for the step: {@code x} holds the residuals, then the step. */
  void solve(double[] x) {
    lu.solve(x);
  }

  /**
   * Fills and factorises.
   *
   * @param s state the residuals were taken at
   * @param momentum assembled, not relaxed
   * @param correction with coefficients D set
   * @param pressure of the state
   * @param inertia extra diagonal of momentum as a share of a_P
   * @return false when the factorisation failed
   */
  boolean factor(
      FlowState s,
      Momentum momentum,
      PressureCorrection correction,
      PressureField pressure,
      double inertia) {
    java.util.Arrays.fill(diagonal, 0);
    java.util.Arrays.fill(entry, 0);
    double[] aP = momentum.diagonal();
    for (int c = 0; c < mesh.cells; c++) {
      diagonal[9 * c] = aP[c] * (1 + inertia);
      diagonal[9 * c + 4] = aP[c] * (1 + inertia);
    }
    double[] nb = momentum.neighbours();
    for (int e = 0; e < nb.length; e++) {
      entry[9 * e] = -nb[e];
      entry[9 * e + 4] = -nb[e];
    }
    interior(s, correction.prediction.interpolation());
    boundary(s, correction, pressure);
    return lu.factor(diagonal, entry);
  }

  private void interior(FlowState s, double[] interpolation) {
    for (int f = 0; f < mesh.faces; f++) {
      int o = mesh.owner[f];
      int n = mesh.neighbour[f];
      int oo = 9 * o;
      int nn = 9 * n;
      int on = 9 * geometry.pattern.firstEntry[f];
      int no = 9 * geometry.pattern.secondEntry[f];
      int axis = mesh.vertical[f] ? U : V;
      double area = mesh.area[f];
      double ao = area * geometry.ownerWeight[f];
      double an = area - ao;
      double d =
          (geometry.ownerWeight[f] * interpolation[o]
                  + (1 - geometry.ownerWeight[f]) * interpolation[n])
              * geometry.conductance[f];
      // pressure force ± p_f A
      diagonal[oo + 3 * axis + P] += ao;
      entry[on + 3 * axis + P] += an;
      diagonal[nn + 3 * axis + P] -= an;
      entry[no + 3 * axis + P] -= ao;
      // flux = A q_f - D (p_N - p_O)
      diagonal[oo + 3 * P + axis] += ao;
      diagonal[oo + 3 * P + P] += d;
      entry[on + 3 * P + axis] += an;
      entry[on + 3 * P + P] -= d;
      diagonal[nn + 3 * P + axis] -= an;
      diagonal[nn + 3 * P + P] += d;
      entry[no + 3 * P + axis] -= ao;
      entry[no + 3 * P + P] -= d;
      // Newton: change of flux times (φ_f - φ_P)
      double wn = 1 - geometry.ownerWeight[f];
      double wo = geometry.ownerWeight[f];
      newton(oo, on, U, axis, wn * (s.u[n] - s.u[o]), ao, an, d);
      newton(oo, on, V, axis, wn * (s.v[n] - s.v[o]), ao, an, d);
      newton(no, nn, U, axis, s.u[n] - s.u[o], ao, an, d, wo);
      newton(no, nn, V, axis, s.v[n] - s.v[o], ao, an, d, wo);
    }
  }

  /** Owner's row: + δF (φ_f - φ_O). */
  private void newton(
      int own, int other, int row, int axis, double jump, double ao, double an, double d) {
    diagonal[own + 3 * row + axis] += jump * ao;
    diagonal[own + 3 * row + P] += jump * d;
    entry[other + 3 * row + axis] += jump * an;
    entry[other + 3 * row + P] -= jump * d;
  }

  /** Neighbour's row: - δF (φ_f - φ_N) = + δF w_O (φ_N - φ_O). */
  private void newton(
      int other,
      int own,
      int row,
      int axis,
      double jump,
      double ao,
      double an,
      double d,
      double wo) {
    entry[other + 3 * row + axis] += wo * jump * ao;
    entry[other + 3 * row + P] += wo * jump * d;
    diagonal[own + 3 * row + axis] += wo * jump * an;
    diagonal[own + 3 * row + P] -= wo * jump * d;
  }

  private void boundary(FlowState s, PressureCorrection correction, PressureField pressure) {
    Boundary boundary = problem.boundary();
    boolean open = false;
    for (int b = 0; b < mesh.boundaryFaces; b++) {
      if (boundary.kind[b] == Boundary.NONE) {
        continue;
      }
      int c = mesh.bCell[b];
      double sx = mesh.bnx[b];
      double sy = mesh.bny[b];
      if (boundary.isOpen(b)) {
        open = true;
        double slope = correction.headSlope(s, b);
        double d = correction.prediction.interpolation()[c] * geometry.bConductance[b];
        double share = 1 / (1 + d * slope);
        // δφ_b = share (S·δu + D δp), δp_b = slope δφ_b
        row(c, P, sx * share, sy * share, d * share);
        row(c, U, sx * slope * share * sx, sx * slope * share * sy, sx * slope * share * d);
        row(c, V, sy * slope * share * sx, sy * slope * share * sy, sy * slope * share * d);
      } else {
        wallPressure(b, c, sx, sy, pressure);
      }
    }
    if (!open) {
      diagonal[3 * P + P] *= 2;
    }
  }

  private void row(int c, int row, double u, double v, double p) {
    diagonal[9 * c + 3 * row + U] += u;
    diagonal[9 * c + 3 * row + V] += v;
    diagonal[9 * c + 3 * row + P] += p;
  }

  // p_b = p_P + Σ G_k·r (p_k - p_P)
  private void wallPressure(int b, int c, double sx, double sy, PressureField pressure) {
    double rx = mesh.bx[b] - mesh.cx[c];
    double ry = mesh.by[b] - mesh.cy[c];
    double centre = 1;
    for (int e = geometry.pattern.rowStart[c]; e < geometry.pattern.rowStart[c + 1]; e++) {
      double g = pressure.leastSquares().entryX(e) * rx + pressure.leastSquares().entryY(e) * ry;
      entry[9 * e + 3 * U + P] += sx * g;
      entry[9 * e + 3 * V + P] += sy * g;
      centre -= g;
    }
    diagonal[9 * c + 3 * U + P] += sx * centre;
    diagonal[9 * c + 3 * V + P] += sy * centre;
  }
}
