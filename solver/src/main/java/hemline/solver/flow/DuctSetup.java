package hemline.solver.flow;

import hemline.shared.geometry.Ring;
import hemline.shared.section.Drive;
import hemline.shared.section.DuctSection;
import hemline.solver.field.FlowState;
import hemline.solver.grid.GridDesign.Domain;
import hemline.solver.grid.GridLines;
import hemline.solver.grid.Mesh;
import hemline.solver.grid.MeshBuilder;
import hemline.solver.grid.Patch;
import hemline.solver.grid.WallDistance;
import hemline.solver.scheme.Boundary;
import hemline.solver.scheme.FaceGeometry;
import hemline.solver.turbulence.SpalartAllmaras;
import java.util.List;
import java.util.Set;

/** A duct section or closed cavity as a flow problem. */
public final class DuctSetup implements FlowSetup {
  private final DuctSection drawn;
  private final DuctSection duct;
  private final List<Ring> solids;
  private final Domain domain;

  public DuctSetup(DuctSection drawn) {
    this.drawn = drawn;
    duct = GridSection.of(drawn).section();
    solids = duct.obstacles().stream().map(o -> o.flatten()).toList();
    domain =
        new Domain(duct.channel().from(), duct.channel().to(), 0, duct.channel().height(), solids);
  }

  @Override
  public DuctSection drawn() {
    return drawn;
  }

  @Override
  public Domain domain() {
    return domain;
  }

  /** The downstream station's. */
  @Override
  public double referencePressure(FlowSolution flow) {
    return duct.walls().cavity() != null
        ? 0
        : downstreamTap(flow.problem().geometry().mesh).read(flow.state().p);
  }

  @Override
  public double startPressure() {
    return 0;
  }

  @Override
  public double startFlow() {
    if (duct.drive() instanceof Drive.LeakFlow flow) {
      return flow.value();
    }
    if (duct.drive() instanceof Drive.PressureDrop drop) {
      double h = duct.gap();
      double p = drop.value() / duct.fluid().density();
      double jet = h * Math.sqrt(2 * Math.abs(p));
      double creeping = Math.abs(p) * h * h * h / (12 * duct.fluid().kinematicViscosity() * 4 * h);
      return Math.signum(p) * 0.7 * Math.min(jet, creeping);
    }
    return 0;
  }

  @Override
  public FlowProblem problem(GridLines lines, Closure closure, CancelToken cancel) {
    boolean cavity = duct.walls().cavity() != null;
    Mesh mesh =
        MeshBuilder.build(
            lines, solids, cavity ? Set.of() : Set.of(Patch.LEFT, Patch.RIGHT), cancel::check);
    FaceGeometry geometry = new FaceGeometry(mesh);
    cancel.check();
    double h = duct.gap();
    double nu = duct.fluid().kinematicViscosity();
    double wall =
        Math.max(
            Math.max(
                Math.abs(duct.walls().lower().speed()), Math.abs(duct.walls().upper().speed())),
            Math.max(
                Math.abs(duct.walls().lower().spanwiseSpeed()),
                Math.abs(duct.walls().upper().spanwiseSpeed())));
    if (duct.walls().cavity() != null) {
      wall =
          Math.max(
              wall,
              Math.max(
                  Math.abs(duct.walls().cavity().leftSpeed()),
                  Math.abs(duct.walls().cavity().rightSpeed())));
    }
    double velocity = Math.max(Math.abs(startFlow()) / h, wall);
    if (velocity == 0) {
      velocity = nu / h;
    }
    double pressure = Math.max(0.5 * velocity * velocity, 12 * nu * velocity / h);
    boolean spanwise =
        duct.walls().lower().spanwiseSpeed() != 0 || duct.walls().upper().spanwiseSpeed() != 0;
    double[] share = new double[mesh.faces];
    java.util.Arrays.fill(share, 1);
    boolean[] all = new boolean[mesh.cells];
    java.util.Arrays.fill(all, true);
    Boundary boundary = boundary(mesh, geometry);
    double[] distance =
        closure == Closure.LAMINAR
            ? new double[0]
            : WallDistance.of(mesh, boundary.walls(), cancel::check);
    return new FlowProblem(
        geometry,
        boundary,
        closure,
        new FlowProblem.Momentum(nu, 0, spanwise, share, all),
        new FlowProblem.Turbulence(
            distance,
            // as faint as before a lip: judged, no source
            new FlowProblem.InflowTurbulence(
                1e-3 * velocity * velocity, 10 * nu, SpalartAllmaras.INFLOW_RATIO * nu)),
        drive(mesh, pressure),
        new FlowProblem.Scales(h, velocity, pressure));
  }

  private FlowProblem.Drive drive(Mesh mesh, double pressure) {
    if (duct.walls().cavity() != null) {
      return new CavityDrive(mesh);
    }
    PressureTap up = upstreamTap(mesh);
    PressureTap down = downstreamTap(mesh);
    if (duct.drive() instanceof Drive.PressureDrop drop) {
      return new DropDrive(
          up, down, drop.value() / duct.fluid().density(), pressure, Math.abs(startFlow()));
    }
    return new DropDrive(up, down, Double.NaN, pressure, 0);
  }

  /** Tap of the upstream station. */
  public PressureTap upstreamTap(Mesh mesh) {
    return PressureTap.station(mesh, duct.upstream());
  }

  /** Tap of the downstream station. */
  public PressureTap downstreamTap(Mesh mesh) {
    return PressureTap.station(mesh, duct.downstream());
  }

  private Boundary boundary(Mesh mesh, FaceGeometry geometry) {
    Boundary boundary = new Boundary(mesh);
    for (int b = 0; b < mesh.boundaryFaces; b++) {
      switch (mesh.bPatch[b]) {
        case Patch.LEFT -> {
          if (duct.walls().cavity() != null) {
            boundary.v[b] = duct.walls().cavity().leftSpeed();
          } else {
            boundary.kind[b] = Boundary.VELOCITY;
          }
        }
        case Patch.RIGHT -> {
          if (duct.walls().cavity() != null) {
            boundary.v[b] = duct.walls().cavity().rightSpeed();
          } else {
            boundary.kind[b] = Boundary.OUTLET;
          }
        }
        case Patch.BOTTOM -> wall(boundary, b, duct.walls().lower());
        case Patch.TOP -> wall(boundary, b, duct.walls().upper());
        default -> boundary.kind[b] = Boundary.WALL;
      }
    }
    if (duct.walls().cavity() == null) {
      InletProfile.set(duct, mesh, geometry, boundary);
    }
    return boundary;
  }

  private static void wall(Boundary boundary, int b, DuctSection.Wall wall) {
    boundary.kind[b] = wall.frictionless() ? Boundary.SLIP : Boundary.WALL;
    boundary.u[b] = wall.speed();
    boundary.w[b] = wall.spanwiseSpeed();
  }

  /** Watches the pressure drop of a given flow, or adjusts the flow to a given drop. */
  private static final class DropDrive implements FlowProblem.Drive {
    /** Share of the pressure scale below which a drop counts as none. */
    private static final double NO_DROP = 0.01;

    private final PressureTap up;
    private final PressureTap down;
    private final double target;
    private final double scale;
    private final double flowScale;

    /** target over density, NaN when the flow is given. */
    DropDrive(PressureTap up, PressureTap down, double target, double scale, double flowScale) {
      this.up = up;
      this.down = down;
      this.target = target;
      this.scale = scale;
      this.flowScale = flowScale;
    }

    private double drop(FlowState s) {
      return up.read(s.p) - down.read(s.p);
    }

    @Override
    public void adjust(FlowState s, double gain) {
      if (!Double.isNaN(target)) {
        double error = (target - drop(s)) / scale;
        s.inletFlow += 0.25 * gain * flowScale * Math.max(-0.5, Math.min(0.5, error));
      }
    }

    @Override
    public double monitor(FlowState s) {
      return Double.isNaN(target) ? drop(s) : s.inletFlow;
    }

    @Override
    public double miss(FlowState s) {
      return Double.isNaN(target) ? 0 : (target - drop(s)) / scale;
    }

    @Override
    public double least() {
      return NO_DROP * (Double.isNaN(target) ? scale : flowScale);
    }
  }

  /** Watches the kinetic energy of a closed cavity. */
  private static final class CavityDrive implements FlowProblem.Drive {
    private final Mesh mesh;

    CavityDrive(Mesh mesh) {
      this.mesh = mesh;
    }

    @Override
    public void adjust(FlowState s, double gain) {}

    @Override
    public double monitor(FlowState s) {
      double sum = 0;
      for (int c = 0; c < mesh.cells; c++) {
        sum += mesh.volume[c] * (s.u[c] * s.u[c] + s.v[c] * s.v[c]);
      }
      return sum;
    }

    @Override
    public double miss(FlowState s) {
      return 0;
    }
  }
}
