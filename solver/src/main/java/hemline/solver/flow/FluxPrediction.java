package hemline.solver.flow;

import hemline.solver.field.FlowState;
import hemline.solver.grid.Mesh;
import hemline.solver.scheme.Boundary;
import hemline.solver.scheme.FaceGeometry;
import hemline.solver.scheme.TimeDifference;
import hemline.solver.scheme.VelocityGradients;
import java.util.Arrays;
import org.jspecify.annotations.Nullable;

/**
 * Face fluxes from the predicted velocity: interpolated velocity minus D (Δp - mean gradient · d),
 * with D = α V / a_P, plus (1 - α) times the last iterate's difference between flux and
 * interpolated velocity, so that the settled flow does not depend on α (Rhie and Chow 1983, AIAA J.
 * 21, 1525; Majumdar 1988, Numer. Heat Transfer 13, 125).
 */
final class FluxPrediction {
  private final FlowProblem problem;
  private final FaceGeometry geometry;
  private final Mesh mesh;

  /** Flux minus interpolated velocity of the last iterate. */
  private final double[] history;

  private final double[] boundaryHistory;

  /** D by cell. */
  private final double[] interpolation;

  /** Null when the flow is taken as steady. */
  private @Nullable TimeDifference time;

  FluxPrediction(FlowProblem problem) {
    this.problem = problem;
    geometry = problem.geometry();
    mesh = geometry.mesh;
    history = new double[mesh.faces];
    boundaryHistory = new double[mesh.boundaryFaces];
    interpolation = new double[mesh.cells];
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
   * Sets D = α V / a_P, in time without its share of a_P.
   *
   * @param diagonal a_P of the momentum equations
   */
  void coefficients(double[] diagonal, double alpha) {
    double rate = time == null ? 0 : time.now();
    for (int c = 0; c < mesh.cells; c++) {
      interpolation[c] = alpha * mesh.volume[c] / (diagonal[c] - rate * mesh.volume[c]);
    }
  }

  /** Makes the next prediction independent of the last iterate's fluxes. */
  void forget() {
    Arrays.fill(history, 0);
    Arrays.fill(boundaryHistory, 0);
  }

  /** V α / a_P of the last call of {@link #coefficients}. */
  double[] interpolation() {
    return interpolation;
  }

  /**
   * Sets the fluxes through open faces on which the dynamic head of what enters depends, together
   * with that head: F = E - D' (p_b - p_b,0) with p_b = p_0 - ½ (F / A)² where fluid enters.
   *
   * @param pressure holds values p_b,0 of open faces, with which E is predicted
   */
  void settleOpenFluxes(FlowState s, PressureField pressure) {
    Boundary boundary = problem.boundary();
    for (int b = 0; b < mesh.boundaryFaces; b++) {
      if (boundary.kind[b] == Boundary.OPEN) {
        int c = mesh.bCell[b];
        double d = interpolation[c] * geometry.bConductance[b];
        double level = boundary.atOutletPressure[b] ? s.outletPressure : 0;
        // the mean gradient of the cell has its share of p_b too
        double share =
            1
                - (mesh.bnx[b] * (mesh.bx[b] - mesh.cx[c])
                        + mesh.bny[b] * (mesh.by[b] - mesh.cy[c]))
                    / mesh.volume[c];
        double atLevel =
            s.u[c] * mesh.bnx[b]
                + s.v[c] * mesh.bny[b]
                - d * boundaryStep(s, pressure, b)
                - d * share * (level - pressure.onBoundary[b]);
        double a = geometry.bArea[b];
        s.boundaryFlux[b] =
            atLevel >= 0
                ? atLevel
                : 2 * atLevel / (1 + Math.sqrt(1 - 2 * d * share * atLevel / (a * a)));
      }
    }
  }

  /** F = A u_f + (1 - α) (F - A u_f)_last - D A/|d| (p_n - p_o - ∇p_f · d). */
  void predict(FlowState s, VelocityGradients g, PressureField pressure, double alpha) {
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
        double d = interpolation[c];
        if (t != null) {
          d = t.faceCoefficient(d, alpha);
        }
        s.boundaryFlux[b] =
            s.u[c] * mesh.bnx[b]
                + s.v[c] * mesh.bny[b]
                + (1 - alpha) * boundaryHistory[b]
                - d * geometry.bConductance[b] * boundaryStep(s, pressure, b);
        if (t != null) {
          s.boundaryFlux[b] += d * t.past(t.lastBoundarySurplus[b], t.beforeLastBoundarySurplus[b]);
        }
      } else if (boundary.kind[b] == Boundary.VELOCITY) {
        s.boundaryFlux[b] = g.bu[b] * mesh.bnx[b] + g.bv[b] * mesh.bny[b];
      }
    }
  }

  /** p_b - p_c - ∇p · d: what the step of pressure to a boundary face is over the mean one. */
  private double boundaryStep(FlowState s, PressureField pressure, int b) {
    int c = mesh.bCell[b];
    double mean =
        pressure.gx[c] * (mesh.bx[b] - mesh.cx[c]) + pressure.gy[c] * (mesh.by[b] - mesh.cy[c]);
    return pressure.onBoundary[b] - s.p[c] - mean;
  }
}
