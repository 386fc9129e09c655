package hemline.solver.field;

/**
 * The unknowns of a flow on one mesh; pressure is over density.
 *
 * <p>Mutable: the solver works on it in place. Arrays of closures that are not in use are zero.
 */
public final class FlowState {
  public final double[] u;
  public final double[] v;
  public final double[] w;

  /** Static pressure over density, m²/s². */
  public final double[] p;

  /** Turbulent kinetic energy, m²/s². */
  public final double[] k;

  /** Specific dissipation rate, 1/s. */
  public final double[] omega;

  /** Working variable of the one-equation closure, m²/s. */
  public final double[] nuTilde;

  /** Eddy viscosity, m²/s. */
  public final double[] eddyViscosity;

  /** Volume flux from owner to neighbour, m²/s. */
  public final double[] flux;

  /** Volume flux out of boundary faces, m²/s. */
  public final double[] boundaryFlux;

  /** Pressure over density behind the open faces that the drive controls, m²/s². */
  public double outletPressure;

  /** Flow rate of the prescribed inlet profile, m²/s. */
  public double inletFlow;

  public FlowState(int cells, int faces, int boundaryFaces) {
    u = new double[cells];
    v = new double[cells];
    w = new double[cells];
    p = new double[cells];
    k = new double[cells];
    omega = new double[cells];
    nuTilde = new double[cells];
    eddyViscosity = new double[cells];
    flux = new double[faces];
    boundaryFlux = new double[boundaryFaces];
  }

  /** Copies every value of another state of the same size. */
  public void set(FlowState other) {
    copy(other.u, u);
    copy(other.v, v);
    copy(other.w, w);
    copy(other.p, p);
    copy(other.k, k);
    copy(other.omega, omega);
    copy(other.nuTilde, nuTilde);
    copy(other.eddyViscosity, eddyViscosity);
    copy(other.flux, flux);
    copy(other.boundaryFlux, boundaryFlux);
    outletPressure = other.outletPressure;
    inletFlow = other.inletFlow;
  }

  private static void copy(double[] from, double[] to) {
    System.arraycopy(from, 0, to, 0, from.length);
  }
}
