package hemline.solver.flow;

import hemline.solver.field.FlowState;
import hemline.solver.grid.Mesh;
import hemline.solver.linear.LineMultigrid;
import hemline.solver.linear.PlaceGrid;
import hemline.solver.scheme.Boundary;
import hemline.solver.scheme.FaceGeometry;
import hemline.solver.scheme.VelocityGradients;
import java.util.Arrays;

/**
 * Correction that makes predicted fluxes conserve mass, with D' = V / (a_P/α - Σ a_nb) (van
 * Doormaal and Raithby 1984, Numer. Heat Transfer 7, 147).
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

  /** Fluxes before the correction. */
  final FluxPrediction prediction;

  private final double[] conductance;
  private final double[] boundaryConductance;
  private final double[] grounding;
  private final double[] imbalance;
  private final double[] correction;
  private final double[] consistent;
  private final PressureField correctionField;
  private final boolean closed;

  private int cycles;

  PressureCorrection(FlowProblem problem, Runnable checkpoint) {
    this.problem = problem;
    geometry = problem.geometry();
    prediction = new FluxPrediction(problem);
    mesh = geometry.mesh;
    multigrid = new LineMultigrid(places(mesh), geometry.conductance, checkpoint);
    checkpoint.run();
    conductance = new double[mesh.faces];
    boundaryConductance = new double[mesh.boundaryFaces];
    grounding = new double[mesh.cells];
    imbalance = new double[mesh.cells];
    correction = new double[mesh.cells];
    consistent = new double[mesh.cells];
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

  /**
   * Sets the coefficients D and D' of this iteration; call after assembling momentum and before
   * solving it.
   */
  void coefficients(Momentum momentum, double alpha) {
    double[] diagonal = momentum.diagonal();
    prediction.coefficients(diagonal, alpha);
    // D' = V / (a_P/α - Σ a_nb)
    for (int c = 0; c < mesh.cells; c++) {
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
    prediction.predict(s, g, pressure, alpha);
    conductances(s);
    imbalanceOf(s, imbalance);
    final double worst = worstImbalance();
    ground();
    if (multigrid.setCoefficients(conductance, grounding)) {
      cycles += multigrid.solve(imbalance, correction, reduction, CYCLES);
    } else {
      // numbers that far apart come from a flow that runs away: the attempt ends as lost
      Arrays.fill(correction, Double.NaN);
    }
    correct(s, pressure, pressureFactor);
    return worst;
  }

  /**
   * Predicts fluxes and gives the mass defect of every cell.
   *
   * @param out answer: flux into the cell, m²/s
   */
  void massResiduals(
      FlowState s, VelocityGradients g, PressureField pressure, double alpha, double[] out) {
    prediction.predict(s, g, pressure, alpha);
    imbalanceOf(s, out);
  }

  private double worstImbalance() {
    double worst = 0;
    for (int c = 0; c < mesh.cells; c++) {
      worst = Math.max(worst, Math.abs(imbalance[c]));
    }
    return worst;
  }

  /** Starts a correction from nothing, tied to a level at open faces, else at the first cell. */
  private void ground() {
    Arrays.fill(correction, 0);
    Arrays.fill(grounding, 0);
    for (int b = 0; b < mesh.boundaryFaces; b++) {
      if (problem.boundary().isOpen(b)) {
        grounding[mesh.bCell[b]] += boundaryConductance[b];
      }
    }
    if (closed) {
      grounding[0] = conductance[0];
    }
  }

  /** Flux into each cell: -Σ F over its faces. */
  private void imbalanceOf(FlowState s, double[] out) {
    Arrays.fill(out, 0);
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
      ground();
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
    return worstImbalance();
  }
}
