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
 * k-ω shear stress transport closure with automatic near-wall treatment.
 *
 * <p>Source: Menter, Kuntz and Langtry 2003, Turbulence, Heat and Mass Transfer 4, 625–632, with
 * the production of ω as corrected by its authors. Convection is first order, near slanted walls
 * second. Wall cells take ω, the wall stress and the mean production of k from {@link WallLaw},
 * with no flux of k into the wall. Near walls, where ω falls like 1/d², diffusion and destruction
 * of ω are weighted so that this profile is exact on any spacing.
 */
public final class KOmegaSst extends EddyViscosity {
  private static final double BETA_STAR = 0.09;
  private static final double A1 = 0.31;
  private static final double SIGMA_K1 = 0.85;
  private static final double SIGMA_W1 = 0.5;
  private static final double BETA_1 = 0.075;
  private static final double GAMMA_1 = 5.0 / 9.0;
  private static final double SIGMA_K2 = 1.0;
  private static final double SIGMA_W2 = 0.856;
  private static final double BETA_2 = 0.0828;
  private static final double GAMMA_2 = 0.44;

  /** k never falls below this share of the inflow's. */
  private static final double FLOOR = 1e-12;

  /**
   * Sweeps of each equation and pass; as many forwards as backwards, so that no side is favoured.
   * Two do not settle a finely spaced channel.
   */
  private static final int SWEEPS = 4;

  private final FaceGeometry geometry;
  private final Mesh mesh;
  private final Boundary boundary;
  private final double nu;
  private final double[] wallDistance;
  private final double kIn;
  private final double omegaIn;
  private final double omegaFloor;
  private final boolean spanwise;
  private final Gradient gradient;
  private final SparseSystem kSystem;
  private final SparseSystem omegaSystem;
  private final double[] rhs;
  private final double[] kx;
  private final double[] ky;
  private final double[] wx;
  private final double[] wy;
  private final double[] strain;
  private final double[] f1;
  private final double[] f2;
  private final double[] cross;
  private final double[] sublayer;

  /** Wall length of each cell, and what the wall law says there. */
  private final double[] wallArea;

  private final double[] wallOmega;
  private final double[] wallProduction;
  private final WallStress walls;
  private final ScalarStream stream;
  private final double[] noBoundary;

  private final NearWallWeights weights;

  /**
   * Prepares the closure.
   *
   * @param geometry of the mesh
   * @param boundary conditions
   * @param viscosity kinematic, m²/s
   * @param wallDistance of cells, m
   * @param kIn turbulent kinetic energy of entering fluid, m²/s²
   * @param eddyIn eddy viscosity of entering fluid, m²/s
   * @param omegaFloor least ω, 1/s, about velocity over domain length (Menter 1994, AIAA J. 32,
   *     1598); without it the eddy viscosity of dead corners grows without bound
   * @param spanwise true when the third velocity component counts
   */
  public KOmegaSst(
      FaceGeometry geometry,
      Boundary boundary,
      double viscosity,
      double[] wallDistance,
      double kIn,
      double eddyIn,
      double omegaFloor,
      boolean spanwise) {
    super(geometry.mesh.boundaryFaces, geometry.mesh.faces, viscosity);
    this.geometry = geometry;
    this.boundary = boundary;
    mesh = geometry.mesh;
    nu = viscosity;
    walls = new WallStress(geometry, boundary, viscosity, spanwise, WallLaw.VELOCITY);
    this.wallDistance = walls.slanted.readDistances(wallDistance);
    stream = new ScalarStream(geometry, walls.slanted.facesNear(wallDistance), false);
    this.kIn = kIn;
    omegaIn = kIn / eddyIn;
    this.omegaFloor = Math.min(omegaFloor, omegaIn);
    this.spanwise = spanwise;
    gradient = new Gradient(geometry, new boolean[mesh.boundaryFaces]);
    kSystem = new SparseSystem(geometry.pattern);
    omegaSystem = new SparseSystem(geometry.pattern);
    int n = mesh.cells;
    rhs = new double[n];
    kx = new double[n];
    ky = new double[n];
    wx = new double[n];
    wy = new double[n];
    strain = new double[n];
    f1 = new double[n];
    f2 = new double[n];
    cross = new double[n];
    sublayer = new double[n];
    wallArea = new double[n];
    wallOmega = new double[n];
    wallProduction = new double[n];
    noBoundary = new double[mesh.boundaryFaces];
    weights = NearWallWeights.of(geometry, this.wallDistance);
  }

  @Override
  public void initialise(FlowState s) {
    for (int c = 0; c < mesh.cells; c++) {
      if (!(s.omega[c] > 0)) {
        // another model's eddy viscosity is kept at the time scale of the inflow
        double more = Math.max(1, s.eddyViscosity[c] * omegaIn / kIn);
        s.k[c] = more * kIn;
        s.omega[c] = omegaIn;
        s.eddyViscosity[c] = more * kIn / omegaIn;
      }
    }
  }

  @Override
  public void update(FlowState s, VelocityGradients g, double factor) {
    strainRate(g);
    wallCells(s, g);
    gradient.of(s.k, noBoundary, kx, ky);
    gradient.of(s.omega, noBoundary, wx, wy);
    blending(s);
    transport(s.flux, s.eddyViscosity);
    solveOmega(s, factor);
    solveK(s, factor);
    for (int c = 0; c < mesh.cells; c++) {
      // in wall cells the discrete strain rate is not the profile's: no limit by it there
      double limit = wallArea[c] > 0 ? 0 : strain[c] * f2[c];
      s.eddyViscosity[c] = A1 * s.k[c] / Math.max(A1 * s.omega[c], limit);
    }
  }

  // S² = 2 S_ij S_ij
  private void strainRate(VelocityGradients g) {
    for (int c = 0; c < mesh.cells; c++) {
      double shear = g.uy[c] + g.vx[c];
      double s2 = 2 * (g.ux[c] * g.ux[c] + g.vy[c] * g.vy[c]) + shear * shear;
      if (spanwise) {
        s2 += g.wx[c] * g.wx[c] + g.wy[c] * g.wy[c];
      }
      strain[c] = Math.sqrt(s2);
    }
  }

  private void wallCells(FlowState s, VelocityGradients g) {
    java.util.Arrays.fill(wallArea, 0);
    java.util.Arrays.fill(wallOmega, 0);
    java.util.Arrays.fill(wallProduction, 0);
    walls.update(s, g, wallViscosity());
    for (int b = 0; b < mesh.boundaryFaces; b++) {
      if (!walls.isWall(b)) {
        continue;
      }
      int c = mesh.bCell[b];
      double d = walls.slanted.distance[b];
      double y = walls.yPlus[b];
      double friction = walls.frictionVelocity(b);
      double area = geometry.bArea[b];
      wallArea[c] += area;
      // 80 = 6 / β₁, see the wall law
      double omega = y > 0 ? friction * friction / nu * WallLaw.omega(y) : 80 * nu / (d * d);
      wallOmega[c] = Math.max(wallOmega[c], omega);
      double square = friction * friction;
      wallProduction[c] += area * square * square / nu * WallLaw.production(y);
    }
    for (int c = 0; c < mesh.cells; c++) {
      if (wallArea[c] > 0) {
        wallProduction[c] /= wallArea[c];
      }
    }
  }

  private void blending(FlowState s) {
    for (int c = 0; c < mesh.cells; c++) {
      double k = s.k[c];
      double omega = s.omega[c];
      double d = wallDistance[c];
      double cd = 2 * SIGMA_W2 / omega * (kx[c] * wx[c] + ky[c] * wy[c]);
      double turbulent = Math.sqrt(k) / (BETA_STAR * omega * d);
      double viscous = 500 * nu / (d * d * omega);
      double positive = Math.max(cd, 1e-10);
      double arg1 = Math.min(Math.max(turbulent, viscous), 4 * SIGMA_W2 * k / (positive * d * d));
      double arg2 = Math.max(2 * turbulent, viscous);
      f1[c] = arg1 > 2 ? 1 : tanh(arg1 * arg1 * arg1 * arg1);
      f2[c] = arg2 > 5 ? 1 : tanh(arg2 * arg2);
      cross[c] = cd;
      double share = Math.min(1, 6 * nu / (BETA_1 * d * d * omega));
      sublayer[c] = share * share * Math.sqrt(share);
    }
  }

  /** tanh x for x ≥ 0 to an absolute 2e-16, several times as fast as the library's. */
  private static double tanh(double x) {
    return 1 - 2 / (Math.exp(2 * x) + 1);
  }

  /** Convection and diffusion of both equations: they share all but their diffusivities. */
  private void transport(double[] flux, double[] eddy) {
    kSystem.clear();
    omegaSystem.clear();
    int[] first = geometry.pattern.firstEntry;
    int[] second = geometry.pattern.secondEntry;
    for (int f = 0; f < mesh.faces; f++) {
      int o = mesh.owner[f];
      int n = mesh.neighbour[f];
      double wo = geometry.ownerWeight[f];
      double wn = 1 - wo;
      double inner = wo * f1[o] + wn * f1[n];
      double mean = wo * eddy[o] + wn * eddy[n];
      double conductance = geometry.conductance[f];
      double share = wo * sublayer[o] + wn * sublayer[n];
      double k = (nu + (inner * SIGMA_K1 + (1 - inner) * SIGMA_K2) * mean) * conductance;
      double omega =
          (nu + (inner * SIGMA_W1 + (1 - inner) * SIGMA_W2) * mean)
              * conductance
              * (1 + share * (weights.fluxRatio()[f] - 1));
      double in = Math.max(-flux[f], 0);
      double out = Math.max(flux[f], 0);
      kSystem.neighbour[first[f]] += k + in;
      kSystem.neighbour[second[f]] += k + out;
      kSystem.diagonal[o] += k + in;
      kSystem.diagonal[n] += k + out;
      omegaSystem.neighbour[first[f]] += omega + in;
      omegaSystem.neighbour[second[f]] += omega + out;
      omegaSystem.diagonal[o] += omega + in;
      omegaSystem.diagonal[n] += omega + out;
    }
  }

  private void inflow(FlowState s, SparseSystem system, double value) {
    for (int b = 0; b < mesh.boundaryFaces; b++) {
      double in = -s.boundaryFlux[b];
      if (in > 0 && (boundary.kind[b] == Boundary.OPEN || boundary.kind[b] == Boundary.VELOCITY)) {
        system.diagonal[mesh.bCell[b]] += in;
        rhs[mesh.bCell[b]] += in * value;
      }
    }
  }

  private void solveOmega(FlowState s, double factor) {
    for (int c = 0; c < mesh.cells; c++) {
      double v = mesh.volume[c];
      double omega = s.omega[c];
      double inner = f1[c];
      double beta = inner * BETA_1 + (1 - inner) * BETA_2;
      double gamma = inner * GAMMA_1 + (1 - inner) * GAMMA_2;
      double s2 = strain[c] * strain[c];
      // γ P / ν_t with P = min(ν_t S², 10 β* k ω)
      double limit = 10 * BETA_STAR * omega * Math.max(omega, strain[c] * f2[c] / A1);
      double crossTerm = (1 - inner) * cross[c];
      rhs[c] = v * (gamma * Math.min(s2, limit) + Math.max(crossTerm, 0));
      double destroyed = 1 + sublayer[c] * (weights.destruction()[c] - 1);
      omegaSystem.diagonal[c] += v * (beta * omega * destroyed + Math.max(-crossTerm, 0) / omega);
    }
    stream.add(s.omega, wx, wy, s.flux, rhs);
    inflow(s, omegaSystem, omegaIn);
    TimeDifference t = time();
    if (t != null) {
      t.addTo(mesh.volume, t.last.omega, t.beforeLast.omega, omegaSystem.diagonal, rhs);
    }
    relaxAndSolve(omegaSystem, s.omega, factor, wallOmega);
    for (int c = 0; c < mesh.cells; c++) {
      s.omega[c] = Math.max(s.omega[c], omegaFloor);
    }
  }

  private void solveK(FlowState s, double factor) {
    for (int c = 0; c < mesh.cells; c++) {
      double v = mesh.volume[c];
      double production =
          wallArea[c] > 0
              ? wallProduction[c]
              : Math.min(
                  s.eddyViscosity[c] * strain[c] * strain[c], 10 * BETA_STAR * s.k[c] * s.omega[c]);
      rhs[c] = v * production;
      kSystem.diagonal[c] += v * BETA_STAR * s.omega[c];
    }
    stream.add(s.k, kx, ky, s.flux, rhs);
    inflow(s, kSystem, kIn);
    TimeDifference t = time();
    if (t != null) {
      t.addTo(mesh.volume, t.last.k, t.beforeLast.k, kSystem.diagonal, rhs);
    }
    relaxAndSolve(kSystem, s.k, factor, null);
    for (int c = 0; c < mesh.cells; c++) {
      s.k[c] = Math.max(s.k[c], FLOOR * kIn);
    }
  }

  /** Relaxes and sweeps; cells with a positive fixed value keep it. */
  private void relaxAndSolve(
      SparseSystem system,
      double[] x,
      double factor,
      double @org.jspecify.annotations.Nullable [] fixed) {
    double extra = (1 - factor) / factor;
    for (int c = 0; c < mesh.cells; c++) {
      double a = system.diagonal[c] * extra;
      rhs[c] += a * x[c];
      system.diagonal[c] += a;
      if (fixed != null && fixed[c] > 0) {
        // a coefficient that outweighs the rest: the value stands
        double heavy = 1e12 * system.diagonal[c];
        rhs[c] = heavy * fixed[c];
        system.diagonal[c] = heavy;
      }
    }
    system.relax(rhs, x, SWEEPS);
  }
}
