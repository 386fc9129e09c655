package hemline.solver.turbulence;

import hemline.solver.field.FlowState;
import hemline.solver.grid.Mesh;
import hemline.solver.linear.SparseSystem;
import hemline.solver.scheme.Boundary;
import hemline.solver.scheme.FaceGeometry;
import hemline.solver.scheme.Gradient;
import hemline.solver.scheme.TimeDifference;
import hemline.solver.scheme.VelocityGradients;

/**
 * One-equation eddy viscosity closure, fully turbulent form without the trip terms.
 *
 * <p>Source: Spalart and Allmaras 1994, Rech. Aérosp. 1, 5–21; modified vorticity bounded as by
 * Allmaras, Johnson and Spalart 2012, ICCFD7-1902, eqs. 11 and 12. Convection is first order, near
 * slanted walls second. In wall cells, where the profile is linear whatever the spacing, the
 * modified vorticity is u_τ / (κ d) with u_τ from the closure's own law of the wall ({@link
 * VelocityLaw}); the viscosity between them and their neighbours follows that law too ({@link
 * LayerFaces}).
 */
public final class SpalartAllmaras extends EddyViscosity {
  private static final double CB1 = 0.1355;
  private static final double CB2 = 0.622;
  private static final double SIGMA = 2.0 / 3.0;
  private static final double KAPPA = 0.41;
  private static final double CW1 = CB1 / (KAPPA * KAPPA) + (1 + CB2) / SIGMA;
  private static final double CW2 = 0.3;
  private static final double CW3 = 2;
  private static final double CV1 = 7.1;
  private static final double C2 = 0.7;
  private static final double C3 = 0.9;

  /** Largest r, as in the paper of 1994. */
  private static final double R_MOST = 10;

  /** Sweeps of each pass; as many forwards as backwards, so that no side is favoured. */
  private static final int SWEEPS = 4;

  /**
   * Usual working variable of entering fluid over viscosity: 3 to 5, Spalart and Rumsey 2007, AIAA
   * J. 45, 2544 (from memory).
   */
  public static final double INFLOW_RATIO = 4;

  /** Of the layer of constant stress, in which ν̃ = κ u_τ d. */
  static final VelocityLaw LAW = VelocityLaw.of(y -> eddyRatio(KAPPA * y));

  private final FaceGeometry geometry;
  private final Mesh mesh;
  private final Boundary boundary;
  private final double nu;
  private final double[] wallDistance;
  private final boolean spanwise;
  private final Gradient gradient;
  private final SparseSystem system;
  private final WallStress walls;
  private final ScalarStream stream;
  private final double[] rhs;
  private final double[] gx;
  private final double[] gy;
  private final double[] atWall;
  private final double nuTildeIn;
  private final LayerFaces layerFaces;
  private final double[] wallFriction;

  /**
   * Prepares the closure.
   *
   * @param geometry of the mesh
   * @param boundary conditions
   * @param viscosity kinematic, m²/s
   * @param wallDistance of cells, m
   * @param inflow working variable of entering fluid, m²/s
   * @param spanwise true when the third velocity component counts
   */
  public SpalartAllmaras(
      FaceGeometry geometry,
      Boundary boundary,
      double viscosity,
      double[] wallDistance,
      double inflow,
      boolean spanwise) {
    super(geometry.mesh.boundaryFaces, geometry.mesh.faces, viscosity);
    this.geometry = geometry;
    this.boundary = boundary;
    mesh = geometry.mesh;
    nu = viscosity;
    walls = new WallStress(geometry, boundary, viscosity, spanwise, LAW);
    this.wallDistance = wallDistance.clone();
    nuTildeIn = inflow;
    stream = new ScalarStream(geometry, walls.slanted.facesNear(wallDistance), true);
    this.spanwise = spanwise;
    layerFaces = new LayerFaces(geometry, boundary.walls(), viscosity, this::eddyViscosity);
    gradient = new Gradient(geometry, boundary.walls());
    system = new SparseSystem(geometry.pattern);
    rhs = new double[mesh.cells];
    gx = new double[mesh.cells];
    gy = new double[mesh.cells];
    atWall = new double[mesh.boundaryFaces];
    wallFriction = new double[mesh.cells];
  }

  @Override
  public void initialise(FlowState s) {
    for (int c = 0; c < mesh.cells; c++) {
      if (!(s.nuTilde[c] > 0)) {
        // nearly the eddy viscosity itself where another model has left one
        s.nuTilde[c] = Math.max(s.eddyViscosity[c], nuTildeIn);
        s.eddyViscosity[c] = eddyViscosity(s.nuTilde[c]);
      }
    }
  }

  private double eddyViscosity(double nuTilde) {
    return nu * eddyRatio(nuTilde / nu);
  }

  /** Eddy viscosity over viscosity of χ. */
  private static double eddyRatio(double chi) {
    double cube = chi * chi * chi;
    return chi * cube / (cube + CV1 * CV1 * CV1);
  }

  @Override
  public void update(FlowState s, VelocityGradients g, double factor) {
    walls.update(s, g, wallViscosity());
    java.util.Arrays.fill(wallFriction, -1);
    for (int b = 0; b < mesh.boundaryFaces; b++) {
      if (walls.isWall(b)) {
        int c = mesh.bCell[b];
        wallFriction[c] = Math.max(wallFriction[c], walls.frictionVelocity(b));
      }
    }
    gradient.of(s.nuTilde, atWall, gx, gy);
    transport(s);
    for (int c = 0; c < mesh.cells; c++) {
      sources(s, g, c);
    }
    stream.add(s.nuTilde, gx, gy, s.flux, rhs);
    for (int b = 0; b < mesh.boundaryFaces; b++) {
      int c = mesh.bCell[b];
      double in = -s.boundaryFlux[b];
      if (walls.isWall(b)) {
        double conductance = geometry.bConductance[b] / SIGMA;
        double a = ((1 + CB2) * nu - CB2 * (nu + s.nuTilde[c])) * conductance;
        system.diagonal[c] += Math.max(a, 0);
        rhs[c] -= Math.min(a, 0) * s.nuTilde[c];
      } else if (in > 0
          && (boundary.kind[b] == Boundary.OPEN || boundary.kind[b] == Boundary.VELOCITY)) {
        system.diagonal[c] += in;
        rhs[c] += in * nuTildeIn;
      }
    }
    TimeDifference t = time();
    if (t != null) {
      t.addTo(mesh.volume, t.last.nuTilde, t.beforeLast.nuTilde, system.diagonal, rhs);
    }
    double extra = (1 - factor) / factor;
    for (int c = 0; c < mesh.cells; c++) {
      double a = system.diagonal[c] * extra;
      rhs[c] += a * s.nuTilde[c];
      system.diagonal[c] += a;
    }
    system.relax(rhs, s.nuTilde, SWEEPS);
    for (int c = 0; c < mesh.cells; c++) {
      s.nuTilde[c] = Math.max(s.nuTilde[c], 1e-6 * nu);
      s.eddyViscosity[c] = eddyViscosity(s.nuTilde[c]);
    }
    layerFaces.update(s.nuTilde, faceRatio());
  }

  /**
   * F ν̃ - ((1 + cb2) (ν + ν̃)_face - cb2 (ν + ν̃)_cell) / σ ∂ν̃/∂n A: the diffusion with cb2
   * |∇ν̃|² in it, since ∇·((ν + ν̃) ∇ν̃) = (ν + ν̃) ∇²ν̃ + |∇ν̃|².
   */
  private void transport(FlowState s) {
    system.clear();
    double[] nuTilde = s.nuTilde;
    for (int f = 0; f < mesh.faces; f++) {
      int o = mesh.owner[f];
      int n = mesh.neighbour[f];
      double wo = geometry.ownerWeight[f];
      double no = nu + nuTilde[o];
      double nn = nu + nuTilde[n];
      double mean = (1 + CB2) * (wo * no + (1 - wo) * nn);
      double conductance = geometry.conductance[f] / SIGMA;
      double ao = Math.max(mean - CB2 * no, 0) * conductance + Math.max(-s.flux[f], 0);
      double an = Math.max(mean - CB2 * nn, 0) * conductance + Math.max(s.flux[f], 0);
      system.neighbour[geometry.pattern.firstEntry[f]] += ao;
      system.neighbour[geometry.pattern.secondEntry[f]] += an;
      system.diagonal[o] += ao;
      system.diagonal[n] += an;
    }
  }

  // cb1 S̃ ν̃ - cw1 fw (ν̃/d)²
  private void sources(FlowState s, VelocityGradients g, int c) {
    double nuTilde = s.nuTilde[c];
    double d = wallDistance[c];
    double kd2 = KAPPA * KAPPA * d * d;
    double modified =
        wallFriction[c] >= 0
            ? wallFriction[c] / (KAPPA * d)
            : modified(vorticity(g, c), nuTilde, kd2);
    double r = modified * kd2 * R_MOST > nuTilde ? nuTilde / (modified * kd2) : R_MOST;
    double fw = destruction(r);
    double v = mesh.volume[c];
    double rate = CW1 * fw * nuTilde / (d * d);
    rhs[c] = v * (CB1 * modified * nuTilde + rate * nuTilde);
    // Newton form of the destruction: 2 cw1 fw ν̃/d² on the diagonal
    system.diagonal[c] += v * 2 * rate;
  }

  private double vorticity(VelocityGradients g, int c) {
    double curl = g.vx[c] - g.uy[c];
    double omega2 = curl * curl;
    if (spanwise) {
      omega2 += g.wx[c] * g.wx[c] + g.wy[c] * g.wy[c];
    }
    return Math.sqrt(omega2);
  }

  /** S̃ with its smooth lower bound: Ω + S̄, or less of S̄ where that would come near zero. */
  private double modified(double omega, double nuTilde, double kd2) {
    double chi = nuTilde / nu;
    double cube = chi * chi * chi;
    double fv1 = cube / (cube + CV1 * CV1 * CV1);
    double bar = nuTilde / kd2 * (1 - chi / (1 + chi * fv1));
    return bar >= -C2 * omega
        ? omega + bar
        : omega + omega * (C2 * C2 * omega + C3 * bar) / ((C3 - 2 * C2) * omega - bar);
  }

  private static double destruction(double r) {
    double r2 = r * r;
    double g = r + CW2 * (r2 * r2 * r2 - r);
    double g2 = g * g;
    double c2 = CW3 * CW3;
    double c6 = c2 * c2 * c2;
    return g * Math.pow((1 + c6) / (g2 * g2 * g2 + c6), 1.0 / 6.0);
  }
}
