package hemline.solver.flow;

import hemline.solver.field.FlowState;
import hemline.solver.grid.Mesh;
import hemline.solver.linear.LineMultigrid;
import hemline.solver.linear.PlaceGrid;
import hemline.solver.scheme.Boundary;
import hemline.solver.scheme.FaceGeometry;
import hemline.solver.scheme.TimeDifference;
import hemline.solver.scheme.VelocityGradients;
import org.jspecify.annotations.Nullable;

/**
 * Face fluxes from the predicted velocity, and the correction that makes them conserve mass.
 *
 * <p>Predicted flux: interpolated velocity minus D (Δp - mean gradient · d), with D = α V / a_P,
 * plus (1 - α) times the last iterate's difference between flux and interpolated velocity, so that
 * the settled flow does not depend on α (Rhie and Chow 1983, AIAA J. 21, 1525; Majumdar 1988,
 * Numer. Heat Transfer 13, 125). The correction uses D' = V / (a_P/α - Σ a_nb) (van Doormaal and
 * Raithby 1984, Numer. Heat Transfer 7, 147).
 */
final class PressureCorrection {
  /**
   * Least share of a_P left in a_P/α - Σ a_nb: where neighbours take nearly all of it, D' would
   * grow without bound. Judged, no source; the settled flow does not depend on it.
   */
  private static final double LEAST_REST = 0.02;

  /** Cycles of the multigrid in one correction; what is left is for the next pass. */
  private static final int CYCLES = 12;

  /** Reduction and cycles with which mass is closed: to round-off. */
  private static final double CLOSED = 1e-13;

  private static final int CLOSING_CYCLES = 60;

  private final FlowProblem problem;
  private final FaceGeometry geometry;
  private final Mesh mesh;
  private final LineMultigrid multigrid;

  /** Flux minus interpolated velocity of the last iterate. */
  private final double[] history;

  private final double[] boundaryHistory;
  private final double[] conductance;
  private final double[] boundaryConductance;
  private final double[] grounding;
  private final double[] imbalance;
  private final double[] correction;
  private final double[] consistent;
  private final double[] interpolation;
  private final PressureField correctionField;
  private final boolean closed;

  private int cycles;

  /** Null when the flow is taken as steady. */
  private @Nullable TimeDifference time;

  PressureCorrection(FlowProblem problem, Runnable checkpoint) {
    this.problem = problem;
    geometry = problem.geometry();
    mesh = geometry.mesh;
    multigrid = new LineMultigrid(places(mesh), geometry.conductance, checkpoint);
    checkpoint.run();
    history = new double[mesh.faces];
    boundaryHistory = new double[mesh.boundaryFaces];
    conductance = new double[mesh.faces];
    boundaryConductance = new double[mesh.boundaryFaces];
    grounding = new double[mesh.cells];
    imbalance = new double[mesh.cells];
    correction = new double[mesh.cells];
    consistent = new double[mesh.cells];
    interpolation = new double[mesh.cells];
    correctionField = PressureField.ofCorrections(geometry, problem.boundary());
    boolean open = false;
    for (int b = 0; b < mesh.boundaryFaces; b++) {
      open |= problem.boundary().isOpen(b);
    }
    closed = !open;
  }

  /** Cells and faces on the rectangles of the grid. */
  private static PlaceGrid places(Mesh mesh) {
    int nx = mesh.lines.nx();
    int[] lower = new int[mesh.faces];
    for (int f = 0; f < mesh.faces; f++) {
      int at = mesh.gridFace[f];
      lower[f] = mesh.vertical[f] ? at / (nx + 1) * nx + at % (nx + 1) - 1 : at - nx;
    }
    return new PlaceGrid(
        mesh.cells,
        nx,
        mesh.lines.ny(),
        mesh.cellAt,
        mesh.owner,
        mesh.neighbour,
        mesh.vertical,
        lower);
  }

  /** Cycles of the pressure multigrid so far. */
  int cycles() {
    return cycles;
  }

  /** Remembers flux minus interpolated velocity; call before the momentum solve. */
  void remember(FlowState s, VelocityGradients g) {
    surplus(s, g, history, boundaryHistory);
  }

  /** Lets fluxes obey a difference in time from now on. */
  void inTime(TimeDifference difference) {
    time = difference;
  }

  /**
   * Flux minus interpolated velocity.
   *
   * @param inside answer by face
   * @param outside answer by boundary face, where open
   */
  void surplus(FlowState s, VelocityGradients g, double[] inside, double[] outside) {
    System.arraycopy(s.flux, 0, inside, 0, inside.length);
    subtractInterpolated(s, g, inside);
    for (int b = 0; b < mesh.boundaryFaces; b++) {
      if (problem.boundary().isOpen(b)) {
        int c = mesh.bCell[b];
        outside[b] = s.boundaryFlux[b] - (s.u[c] * mesh.bnx[b] + s.v[c] * mesh.bny[b]);
      }
    }
  }

  /** F - A (w_o q_o + w_n q_n), on irregular faces with the slope times their skewness added. */
  private void subtractInterpolated(FlowState s, VelocityGradients g, double[] out) {
    for (int f = 0; f < mesh.faces; f++) {
      double[] q = mesh.vertical[f] ? s.u : s.v;
      double wo = geometry.ownerWeight[f];
      out[f] -= mesh.area[f] * (wo * q[mesh.owner[f]] + (1 - wo) * q[mesh.neighbour[f]]);
    }
    for (int i = 0; i < geometry.irregular.length; i++) {
      int f = geometry.irregular[i];
      double[] t = mesh.vertical[f] ? g.uy : g.vx;
      double wo = geometry.ownerWeight[f];
      out[f] -=
          mesh.area[f]
              * geometry.skew[i]
              * (wo * t[mesh.owner[f]] + (1 - wo) * t[mesh.neighbour[f]]);
    }
  }

  /**
   * Sets the coefficients D of this iteration; call after assembling momentum and before solving
   * it.
   */
  void coefficients(Momentum momentum, double alpha) {
    double[] diagonal = momentum.diagonal();
    double rate = time == null ? 0 : time.now();
    // D = α V / a_P, in time without its share of a_P; D' = V / (a_P/α - Σ a_nb)
    for (int c = 0; c < mesh.cells; c++) {
      interpolation[c] = alpha * mesh.volume[c] / (diagonal[c] - rate * mesh.volume[c]);
      double rest = diagonal[c] / alpha - momentum.neighbourSum(c);
      consistent[c] = mesh.volume[c] / Math.max(rest, LEAST_REST * diagonal[c]);
    }
  }

  /**
   * Predicts fluxes, solves for the correction and applies it to fluxes, velocity and pressure.
   *
   * @return largest mass defect of a cell before correction, m²/s
   */
  double apply(
      FlowState s,
      VelocityGradients g,
      PressureField pressure,
      double alpha,
      double pressureFactor,
      double reduction) {
    predict(s, g, pressure, alpha);
    double worst = 0;
    conductances(s);
    imbalanceOf(s, imbalance);
    java.util.Arrays.fill(grounding, 0);
    for (int b = 0; b < mesh.boundaryFaces; b++) {
      if (problem.boundary().isOpen(b)) {
        grounding[mesh.bCell[b]] += boundaryConductance[b];
      }
    }
    for (int c = 0; c < mesh.cells; c++) {
      worst = Math.max(worst, Math.abs(imbalance[c]));
      correction[c] = 0;
    }
    if (closed) {
      grounding[0] = conductance[0];
    }
    if (multigrid.setCoefficients(conductance, grounding)) {
      cycles += multigrid.solve(imbalance, correction, reduction, CYCLES);
    } else {
      // numbers that far apart come from a flow that runs away: the attempt ends as lost
      java.util.Arrays.fill(correction, Double.NaN);
    }
    correct(s, pressure, pressureFactor);
    return worst;
  }

  /** Makes the next prediction independent of the last iterate's fluxes. */
  void forget() {
    java.util.Arrays.fill(history, 0);
    java.util.Arrays.fill(boundaryHistory, 0);
  }

  /** V α / a_P of the last call of {@link #coefficients}. */
  double[] interpolation() {
    return interpolation;
  }

  /**
   * Predicts fluxes and gives the mass defect of every cell.
   *
   * @param out answer: flux into the cell, m²/s
   */
  void massResiduals(
      FlowState s, VelocityGradients g, PressureField pressure, double alpha, double[] out) {
    predict(s, g, pressure, alpha);
    imbalanceOf(s, out);
  }

  /** Flux into each cell: -Σ F over its faces. */
  private void imbalanceOf(FlowState s, double[] out) {
    java.util.Arrays.fill(out, 0);
    for (int f = 0; f < mesh.faces; f++) {
      out[mesh.owner[f]] -= s.flux[f];
      out[mesh.neighbour[f]] += s.flux[f];
    }
    for (int b = 0; b < mesh.boundaryFaces; b++) {
      if (problem.boundary().kind[b] != Boundary.NONE) {
        out[mesh.bCell[b]] -= s.boundaryFlux[b];
      }
    }
  }

  /** F = A u_f + (1 - α) (F - A u_f)_last - D A/|d| (p_n - p_o - ∇p_f · d). */
  private void predict(FlowState s, VelocityGradients g, PressureField pressure, double alpha) {
    for (int f = 0; f < mesh.faces; f++) {
      s.flux[f] = (1 - alpha) * history[f];
      history[f] = 0;
    }
    subtractInterpolated(s, g, history);
    TimeDifference t = time;
    for (int f = 0; f < mesh.faces; f++) {
      int o = mesh.owner[f];
      int n = mesh.neighbour[f];
      double wo = geometry.ownerWeight[f];
      double wn = 1 - wo;
      double d = wo * interpolation[o] + wn * interpolation[n];
      if (t != null) {
        d = t.faceCoefficient(d, alpha);
        s.flux[f] += d * t.past(t.lastSurplus[f], t.beforeLastSurplus[f]);
      }
      d *= geometry.conductance[f];
      double mean =
          (wo * pressure.gx[o] + wn * pressure.gx[n]) * geometry.dx[f]
              + (wo * pressure.gy[o] + wn * pressure.gy[n]) * geometry.dy[f];
      s.flux[f] += -history[f] - d * (s.p[n] - s.p[o] - mean);
    }
    Boundary boundary = problem.boundary();
    for (int b = 0; b < mesh.boundaryFaces; b++) {
      int c = mesh.bCell[b];
      if (boundary.isOpen(b)) {
        double mean =
            pressure.gx[c] * (mesh.bx[b] - mesh.cx[c]) + pressure.gy[c] * (mesh.by[b] - mesh.cy[c]);
        double d = interpolation[c];
        if (t != null) {
          d = t.faceCoefficient(d, alpha);
        }
        s.boundaryFlux[b] =
            s.u[c] * mesh.bnx[b]
                + s.v[c] * mesh.bny[b]
                + (1 - alpha) * boundaryHistory[b]
                - d * geometry.bConductance[b] * (pressure.onBoundary[b] - s.p[c] - mean);
        if (t != null) {
          s.boundaryFlux[b] += d * t.past(t.lastBoundarySurplus[b], t.beforeLastBoundarySurplus[b]);
        }
      } else if (boundary.kind[b] == Boundary.VELOCITY) {
        s.boundaryFlux[b] = g.bu[b] * mesh.bnx[b] + g.bv[b] * mesh.bny[b];
      }
    }
  }

  /** Links of the correction at the coefficients last set and the state's boundary flux. */
  private void conductances(FlowState s) {
    for (int f = 0; f < mesh.faces; f++) {
      int o = mesh.owner[f];
      int n = mesh.neighbour[f];
      double wo = geometry.ownerWeight[f];
      conductance[f] = (wo * consistent[o] + (1 - wo) * consistent[n]) * geometry.conductance[f];
    }
    for (int b = 0; b < mesh.boundaryFaces; b++) {
      if (problem.boundary().isOpen(b)) {
        double d = consistent[mesh.bCell[b]] * geometry.bConductance[b];
        // p_b falls as inflow grows: F' = d (p_c' - p_b'), p_b' = slope F'
        boundaryConductance[b] = d / (1 + d * headSlope(s, b));
      }
    }
  }

  /** d p_b / d flux at a reservoir face with inflow: p_b = -½ U², U = -flux / A. */
  double headSlope(FlowState s, int b) {
    double out = s.boundaryFlux[b];
    if (problem.boundary().kind[b] != Boundary.OPEN || out >= 0) {
      return 0;
    }
    double a = geometry.bArea[b];
    return -out / (a * a);
  }

  /** F ← F - D' A/|d| (p'_n - p'_o), u ← u - D' ∇p', p ← p + ω p'. */
  private void correct(FlowState s, PressureField pressure, double pressureFactor) {
    Boundary boundary = problem.boundary();
    double[] onBoundary = correctionField.onBoundary;
    for (int f = 0; f < mesh.faces; f++) {
      s.flux[f] -= conductance[f] * (correction[mesh.neighbour[f]] - correction[mesh.owner[f]]);
    }
    for (int b = 0; b < mesh.boundaryFaces; b++) {
      if (boundary.isOpen(b)) {
        double change = boundaryConductance[b] * correction[mesh.bCell[b]];
        onBoundary[b] = headSlope(s, b) * change;
        s.boundaryFlux[b] += change;
      }
    }
    correctionField.update(correction);
    for (int c = 0; c < mesh.cells; c++) {
      s.p[c] += pressureFactor * correction[c];
      s.u[c] -= consistent[c] * correctionField.gx[c];
      s.v[c] -= consistent[c] * correctionField.gy[c];
    }
    openPressures(s, pressure);
  }

  /** Pressure behind open faces: outlet level, less the dynamic head where fluid enters. */
  void openPressures(FlowState s, PressureField pressure) {
    Boundary boundary = problem.boundary();
    for (int b = 0; b < mesh.boundaryFaces; b++) {
      if (boundary.isOpen(b)) {
        double level = boundary.atOutletPressure[b] ? s.outletPressure : 0;
        double speed = Math.min(s.boundaryFlux[b], 0) / geometry.bArea[b];
        pressure.onBoundary[b] =
            boundary.kind[b] == Boundary.OPEN ? level - 0.5 * speed * speed : level;
      }
    }
  }

  /**
   * Makes the fluxes conserve mass to round-off without touching velocity or pressure.
   *
   * @return largest defect left, m²/s
   */
  double closeMass(FlowState s) {
    conductances(s);
    for (int round = 0; round < 3; round++) {
      imbalanceOf(s, imbalance);
      java.util.Arrays.fill(grounding, 0);
      java.util.Arrays.fill(correction, 0);
      for (int b = 0; b < mesh.boundaryFaces; b++) {
        if (problem.boundary().isOpen(b)) {
          grounding[mesh.bCell[b]] += boundaryConductance[b];
        }
      }
      if (closed) {
        grounding[0] = conductance[0];
      }
      if (!multigrid.setCoefficients(conductance, grounding)) {
        break;
      }
      cycles += multigrid.solve(imbalance, correction, CLOSED, CLOSING_CYCLES);
      for (int f = 0; f < mesh.faces; f++) {
        s.flux[f] -= conductance[f] * (correction[mesh.neighbour[f]] - correction[mesh.owner[f]]);
      }
      for (int b = 0; b < mesh.boundaryFaces; b++) {
        if (problem.boundary().isOpen(b)) {
          s.boundaryFlux[b] += boundaryConductance[b] * correction[mesh.bCell[b]];
        }
      }
    }
    imbalanceOf(s, imbalance);
    double worst = 0;
    for (int c = 0; c < mesh.cells; c++) {
      worst = Math.max(worst, Math.abs(imbalance[c]));
    }
    return worst;
  }
}
