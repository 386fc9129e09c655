package hemline.solver.flow;

import hemline.shared.geometry.Ring;
import hemline.shared.geometry.Vertex;
import hemline.shared.section.SealSection;
import hemline.solver.grid.GridDesign.Domain;
import hemline.solver.grid.GridLines;
import hemline.solver.grid.Mesh;
import hemline.solver.grid.MeshBuilder;
import hemline.solver.grid.Patch;
import hemline.solver.grid.WallDistance;
import hemline.solver.scheme.Boundary;
import hemline.solver.scheme.FaceGeometry;
import hemline.solver.turbulence.SpalartAllmaras;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;

/**
 * An open section as a flow problem: ambient reservoir left and above on the left, lip and skirt,
 * plenum right with the floor as ceiling.
 *
 * <p>Frame: x = 0 at the lip's ambient edge, y = 0 the mean ground, metres. The reservoirs are open
 * with total pressure where air enters; the ambient one is at zero, the plenum's follows the
 * suction measured on the plenum side of the skirt between 2 h and 6 h above the ground.
 */
public final class SectionSetup implements FlowSetup {
  /** Length of the ambient side in gaps: the discharge coefficient no longer depends on it. */
  private static final double AMBIENT_LENGTH = 12;

  /** Length of the plenum side in gaps. */
  private static final double PLENUM_LENGTH = 15;

  /** Least height of the domain in gaps. */
  private static final double HEIGHT = 10;

  /** Behind the lip the convection scheme fades to first order from this many gaps on … */
  private static final double FADE_FROM = 1;

  /** … over this many gaps: the plenum's rolling eddies carry no figure. */
  private static final double FADE_OVER = 3;

  /**
   * Inflow turbulence: k over twice the suction over density, and eddy over molecular viscosity:
   * fluctuations of 2.6 % of the jet's speed. Judged, no source.
   */
  private static final double INFLOW_K = 1e-3;

  private static final double INFLOW_RATIO = 10;

  private final SealSection drawn;
  private final SealSection section;
  private final Domain domain;
  private final List<Ring> solids;
  private final double width;
  private final double height;
  private final double mountLeft;

  public SectionSetup(SealSection drawn) {
    this.drawn = drawn;
    section = GridSection.of(drawn).section();
    double h = section.gap();
    Ring lip = section.profile().outline().flatten();
    width = max(lip.x());
    height = max(lip.y());
    double yMax = Math.max(HEIGHT * h, 1.25 * (height + h));
    solids = new ArrayList<>();
    Ring body = withSkirt(lip, section, yMax + 0.1 * yMax);
    solids.add(body);
    section.profile().detached().forEach(o -> solids.add(raised(o.flatten(), h)));
    section.groundBumps().forEach(o -> solids.add(o.flatten()));
    int m = section.profile().mountEdge();
    List<Vertex> v = section.profile().outline().vertices();
    mountLeft = Math.min(v.get(m).x(), v.get((m + 1) % v.size()).x());
    domain =
        new Domain(-AMBIENT_LENGTH * h, width + PLENUM_LENGTH * h, 0, yMax, List.copyOf(solids));
  }

  @Override
  public SealSection drawn() {
    return drawn;
  }

  @Override
  public Domain domain() {
    return domain;
  }

  @Override
  public double startPressure() {
    return -section.suction() / section.fluid().density();
  }

  @Override
  public double startFlow() {
    return 0;
  }

  /** The ambient air's. */
  @Override
  public double referencePressure(FlowSolution flow) {
    return 0;
  }

  /** Width of the lip, m. */
  public double width() {
    return width;
  }

  /** Ends of the domain and of the lip along x, increasing, m. */
  double[] stationsX() {
    return new double[] {domain.xMin(), 0, width, domain.xMax()};
  }

  /** Ground, lowest point of the lip, its top and the end of the domain, increasing, m. */
  double[] stationsY() {
    return new double[] {0, section.gap(), section.gap() + height, domain.yMax()};
  }

  /** True unless the suctions of the two have opposite signs. */
  boolean sameDirection(SectionSetup other) {
    return Math.signum(section.suction()) * Math.signum(other.section.suction()) >= 0;
  }

  /** Difference of the ground velocities of the two, m/s. */
  double groundDistance(SectionSetup other) {
    return Math.hypot(
        section.ground().speed() - other.section.ground().speed(),
        section.ground().spanwiseSpeed() - other.section.ground().spanwiseSpeed());
  }

  /** Number of solids that are the lip: its body first, then the detached parts. */
  public int lipSolids() {
    return 1 + section.profile().detached().size();
  }

  private static Ring raised(Ring r, double by) {
    double[] y = r.y().clone();
    for (int i = 0; i < y.length; i++) {
      y[i] += by;
    }
    return new Ring(r.x(), y);
  }

  /** The lip raised to its gap, its mount edge carried up to the given height as the skirt. */
  private static Ring withSkirt(Ring lip, SealSection section, double up) {
    List<Vertex> v = section.profile().outline().vertices();
    Vertex a = v.get(section.profile().mountEdge());
    Vertex b = v.get((section.profile().mountEdge() + 1) % v.size());
    double right = Math.max(a.x(), b.x());
    double left = Math.min(a.x(), b.x());
    List<double[]> points = new ArrayList<>();
    int n = lip.size();
    for (int i = 0; i < n; i++) {
      double x = lip.x()[i];
      double y = lip.y()[i];
      points.add(new double[] {x, y + section.gap()});
      double nx = lip.x()[(i + 1) % n];
      double ny = lip.y()[(i + 1) % n];
      // counter-clockwise: the top edge runs from right to left
      if (x == right && nx == left && y == a.y() && ny == b.y()) {
        points.add(new double[] {right, up});
        points.add(new double[] {left, up});
      }
    }
    if (points.size() != n + 2) {
      throw new IllegalArgumentException("the mount edge is not an edge of the lip's outline");
    }
    return new Ring(
        points.stream().mapToDouble(p -> p[0]).toArray(),
        points.stream().mapToDouble(p -> p[1]).toArray());
  }

  private static double max(double[] a) {
    double m = Double.NEGATIVE_INFINITY;
    for (double x : a) {
      m = Math.max(m, x);
    }
    return m;
  }

  @Override
  public FlowProblem problem(GridLines lines, Closure closure, CancelToken cancel) {
    Mesh mesh = MeshBuilder.build(lines, solids, Set.of(Patch.LEFT, Patch.RIGHT), cancel::check);
    FaceGeometry geometry = new FaceGeometry(mesh);
    cancel.check();
    double h = section.gap();
    double nu = section.fluid().kinematicViscosity();
    double drive = section.suction() / section.fluid().density();
    double ug = section.ground().speed();
    double wg = section.ground().spanwiseSpeed();
    Boundary boundary = boundary(mesh, ug, wg);
    double wallSpeed = Math.max(Math.abs(ug), Math.abs(wg));
    double jet = Math.sqrt(2 * Math.abs(drive));
    // creeping flow through the gap is slower than the jet
    double creeping = Math.abs(drive) * h * h / (12 * nu * Math.min(width, 2 * h));
    double velocity = Math.max(Math.min(jet, creeping), wallSpeed);
    if (velocity == 0) {
      velocity = nu / h;
    }
    double pressure = Math.max(Math.abs(drive), 0.5 * velocity * velocity);
    PressureTap tap =
        PressureTap.rightOf(
            mesh, width, Math.min(2 * h, 0.5 * domain.yMax()), Math.min(6 * h, domain.yMax()));
    double[] distance = new double[0];
    if (closure != Closure.LAMINAR) {
      distance = WallDistance.of(mesh, boundary.walls(), cancel::check);
    }
    double kIn = INFLOW_K * 2 * Math.max(pressure, 0.5 * wallSpeed * wallSpeed);
    return new FlowProblem(
        geometry,
        boundary,
        closure,
        new FlowProblem.Momentum(nu, 0, wg != 0, secondOrderShare(mesh), judged(mesh)),
        new FlowProblem.Turbulence(
            distance,
            new FlowProblem.InflowTurbulence(
                kIn, INFLOW_RATIO * nu, SpalartAllmaras.INFLOW_RATIO * nu)),
        new SuctionDrive(mesh, tap, drive, pressure),
        new FlowProblem.Scales(h, velocity, pressure));
  }

  private Boundary boundary(Mesh mesh, double ug, double wg) {
    Boundary boundary = new Boundary(mesh);
    for (int b = 0; b < mesh.boundaryFaces; b++) {
      switch (mesh.bPatch[b]) {
        case Patch.LEFT -> boundary.kind[b] = Boundary.OPEN;
        case Patch.RIGHT -> {
          boundary.kind[b] = Boundary.OPEN;
          boundary.atOutletPressure[b] = true;
        }
        case Patch.TOP -> boundary.kind[b] = mesh.bx[b] < mountLeft ? Boundary.OPEN : Boundary.WALL;
        case Patch.BOTTOM -> {
          boundary.kind[b] = Boundary.WALL;
          boundary.u[b] = ug;
          boundary.w[b] = wg;
        }
        default -> boundary.kind[b] = Boundary.WALL;
      }
    }
    return boundary;
  }

  private double[] secondOrderShare(Mesh mesh) {
    double[] share = new double[mesh.faces];
    for (int f = 0; f < mesh.faces; f++) {
      double t = (behindLip(mesh.fx[f]) - FADE_FROM) / FADE_OVER;
      share[f] = 1 - Math.max(0, Math.min(1, t));
    }
    return share;
  }

  /** Residuals count up to where the scheme has faded: what rolls beyond carries no figure. */
  private boolean[] judged(Mesh mesh) {
    boolean[] judged = new boolean[mesh.cells];
    for (int c = 0; c < mesh.cells; c++) {
      judged[c] = behindLip(mesh.cx[c]) < FADE_FROM + FADE_OVER;
    }
    return judged;
  }

  /** Distance behind the lip in gaps, on the side the jet goes to. */
  private double behindLip(double x) {
    return (section.suction() < 0 ? -x : x - width) / section.gap();
  }
}
