package hemline.solver.scheme;

import hemline.solver.field.FlowState;
import hemline.solver.grid.Mesh;

/**
 * Backward difference in time of second order on equal steps: (3 φ - 4 φ' + φ'') / (2 Δt), with φ'
 * and φ'' one and two steps before φ.
 *
 * <p>The first step, which has no φ'', takes (φ - φ') / Δt. Source: Gear 1971, Numerical Initial
 * Value Problems in Ordinary Differential Equations, backward differentiation formulas of order 1
 * and 2.
 *
 * <p>For face fluxes it keeps the difference to the interpolated velocity of both earlier times:
 * with it the interpolation on faces obeys the same difference in time as the cells, so that the
 * flow depends neither on relaxation nor, once steady, on the step (Choi 1999, Numer. Heat Transfer
 * B 36, 545; Cubero and Fueyo 2007, Numer. Heat Transfer B 52, 507).
 */
public final class TimeDifference {
  private final double step;
  private int steps;
  private double now;
  private double one;
  private double two;

  /** The flow one step before. */
  public final FlowState last;

  /** The flow two steps before. */
  public final FlowState beforeLast;

  /** Flux minus interpolated velocity one step before, by face. */
  public final double[] lastSurplus;

  public final double[] beforeLastSurplus;

  /** The same on open boundary faces. */
  public final double[] lastBoundarySurplus;

  public final double[] beforeLastBoundarySurplus;

  /**
   * Makes the difference.
   *
   * @param mesh of the flow
   * @param step Δt, s, positive
   */
  public TimeDifference(Mesh mesh, double step) {
    if (!(step > 0) || !Double.isFinite(step)) {
      throw new IllegalArgumentException("a time step must be positive, got " + step + " s");
    }
    this.step = step;
    last = new FlowState(mesh.cells, mesh.faces, mesh.boundaryFaces);
    beforeLast = new FlowState(mesh.cells, mesh.faces, mesh.boundaryFaces);
    lastSurplus = new double[mesh.faces];
    beforeLastSurplus = new double[mesh.faces];
    lastBoundarySurplus = new double[mesh.boundaryFaces];
    beforeLastBoundarySurplus = new double[mesh.boundaryFaces];
  }

  /**
   * Moves on by one step: the state becomes the last one. The surplus of its fluxes must be written
   * to {@link #lastSurplus} and {@link #lastBoundarySurplus} afterwards.
   *
   * @param s the finished flow, not modified
   */
  public void begin(FlowState s) {
    beforeLast.set(last);
    last.set(s);
    System.arraycopy(lastSurplus, 0, beforeLastSurplus, 0, lastSurplus.length);
    System.arraycopy(
        lastBoundarySurplus, 0, beforeLastBoundarySurplus, 0, lastBoundarySurplus.length);
    steps++;
    now = (steps > 1 ? 1.5 : 1) / step;
    one = (steps > 1 ? 2 : 1) / step;
    two = (steps > 1 ? 0.5 : 0) / step;
  }

  /** Steps begun. */
  public int steps() {
    return steps;
  }

  /** Weight of φ, 1/s. */
  public double now() {
    return now;
  }

  /** What is taken from the weighted φ: 4 φ' / (2 Δt) - φ'' / (2 Δt), of a cell or a face. */
  public double past(double lastValue, double beforeLastValue) {
    return one * lastValue - two * beforeLastValue;
  }

  /**
   * Share of a pressure difference in a face flux: D_t = D / (1 + D now / α), with which a steady
   * flow does not depend on the step.
   *
   * @param d α V / a_P without the term in time, s
   * @param alpha relaxation, 0 to 1
   */
  public double faceCoefficient(double d, double alpha) {
    return d / (1 + d * now / alpha);
  }

  /**
   * Adds the difference to a transport equation.
   *
   * @param volume of cells; not modified
   * @param lastValues of the unknown one step before; not modified
   * @param beforeLastValues two steps before; not modified
   * @param diagonal of the equation; modified
   * @param rhs right-hand side; modified
   */
  public void addTo(
      double[] volume,
      double[] lastValues,
      double[] beforeLastValues,
      double[] diagonal,
      double[] rhs) {
    for (int c = 0; c < volume.length; c++) {
      diagonal[c] += volume[c] * now;
      rhs[c] += volume[c] * past(lastValues[c], beforeLastValues[c]);
    }
  }
}
