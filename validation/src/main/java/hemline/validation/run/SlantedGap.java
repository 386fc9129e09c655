package hemline.validation.run;

import hemline.shared.geometry.Ring;
import hemline.shared.result.Estimate;
import hemline.shared.result.SolveStatus;
import hemline.solver.field.FlowState;
import hemline.solver.flow.CancelToken;
import hemline.solver.flow.Closure;
import hemline.solver.flow.FlowProblem;
import hemline.solver.flow.FlowSolution;
import hemline.solver.flow.ProgressListener;
import hemline.solver.flow.SteadyFlowSolver;
import hemline.solver.flow.StoppingLimits;
import hemline.solver.grid.GridLines;
import hemline.solver.grid.Mesh;
import hemline.solver.grid.MeshBuilder;
import hemline.solver.grid.Patch;
import hemline.solver.scheme.Boundary;
import hemline.validation.reference.ExpectedFigure;
import hemline.validation.reference.ReferenceCase;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.ToDoubleFunction;
import org.apache.commons.math3.stat.regression.SimpleRegression;
import org.jspecify.annotations.Nullable;

/**
 * A turbulent channel of height 1, mean speed 1 and density 1 laid across a grid of squares:
 * friction cannot hang on the angle between walls and grid lines.
 *
 * <p>Friction comes from the shear on the upper wall and, of both walls together, from the fall of
 * the pressure; these figures have no band, as they judge the walls' treatment and no model. It is
 * compared on each grid with that of a straight channel of the same length and cells. The flow
 * enters with the power law u ~ y^1/7 over half the height and is measured over the last third of
 * the channel but for its end.
 *
 * @param closure not laminar
 * @param reynolds mean speed times height over viscosity
 * @param degrees between walls and lines along x
 * @param ground speed of the lower wall along itself
 * @param cells over the height, by grid, coarsest first
 */
record SlantedGap(Closure closure, double reynolds, double degrees, double ground, int... cells)
    implements ComputedCase {
  private static final double LENGTH = 48;
  private static final double FROM = 0.65 * LENGTH;
  private static final double TO = 0.9 * LENGTH;

  /** Share of a cell below which a wall face is too small for its shear to count. */
  private static final double TINY = 0.1;

  private static final FlowProblem.InflowTurbulence INFLOW =
      new FlowProblem.InflowTurbulence(0.004, 0.004, 0.004);
  private static final StoppingLimits LIMITS = new StoppingLimits(1000, 100, 30, 1e-4, 3e-4, 1e-3);

  /** Straight channels, which rows of all angles share: solved once. */
  private static final Map<Twin, Friction> STRAIGHT = new ConcurrentHashMap<>();

  /** What a straight channel hangs on. */
  private record Twin(Closure closure, double reynolds, double ground, int cells) {}

  /** Shear and fall of the pressure, over density. */
  private record Friction(double shear, double pressure) {}

  /** The flow and its straight twin's friction on one grid. */
  private record Pair(FlowSolution slanted, Friction straight) {}

  @Override
  public Outcome solve(ReferenceCase one, CancelToken cancel, ProgressListener progress) {
    List<Pair> pairs = new ArrayList<>();
    SolveStatus status = SolveStatus.CANCELLED;
    for (int n : cells) {
      if (!cancel.isCancelled()) {
        FlowSolution found = solve(n, cancel);
        SolveStatus ended = found.outcome().status();
        status = pairs.isEmpty() || ended != SolveStatus.CONVERGED ? ended : status;
        pairs.add(new Pair(found, degrees == 0 ? friction(found) : straight(n, cancel)));
        progress.progress((double) pairs.size() / cells.length, one.name());
      }
    }
    List<@Nullable Measured> quantities = new ArrayList<>();
    for (ExpectedFigure expected : one.expected()) {
      quantities.add(measured(expected, one, pairs));
    }
    return new Outcome(
        status,
        closure.key(),
        OptionalDouble.of(reynolds),
        OptionalDouble.of(ground),
        quantities,
        List.of());
  }

  private @Nullable Measured measured(
      ExpectedFigure expected, ReferenceCase one, List<Pair> pairs) {
    ToDoubleFunction<Pair> value =
        switch (expected.quantity()) {
          case "friction coefficient by shear" -> p -> 2 * shear(p.slanted);
          case "friction coefficient by pressure" -> p -> pressure(p.slanted);
          case "worst friction by shear over straight" -> p -> shear(p.slanted) / p.straight.shear;
          case "worst friction by pressure over straight" ->
              p -> pressure(p.slanted) / p.straight.pressure;
          case "scatter of shear" -> p -> scatter(p.slanted);
          default ->
              throw new IllegalArgumentException(
                  one.name() + " expects \"" + expected.quantity() + "\", which nothing measures");
        };
    List<Measured.GridPoint> points =
        pairs.stream()
            .map(
                p ->
                    new Measured.GridPoint(
                        p.slanted.problem().geometry().mesh.cells, value.applyAsDouble(p)))
            .filter(p -> Double.isFinite(p.value()))
            .toList();
    if (points.isEmpty()) {
      return null;
    }
    double finest = points.get(points.size() - 1).value();
    double worst =
        points.stream()
            .map(Measured.GridPoint::value)
            .max(Comparator.comparingDouble(v -> Math.abs(v - 1)))
            .orElse(finest);
    boolean all = expected.quantity().startsWith("worst ");
    return new Measured(
        expected.quantity(), "1", Estimate.exact(all ? worst : finest), points, false);
  }

  /** A face of the upper wall: its area and the force on it over its density along the channel. */
  private record Face(double area, double force) {}

  private List<Face> faces(FlowSolution flow) {
    double cos = Math.cos(Math.toRadians(degrees));
    double sin = Math.sin(Math.toRadians(degrees));
    Mesh mesh = flow.problem().geometry().mesh;
    List<Face> faces = new ArrayList<>();
    for (int b = 0; b < mesh.boundaryFaces; b++) {
      double along = mesh.bx[b] * cos + mesh.by[b] * sin;
      if (isUpper(mesh, b) && along > FROM && along < TO) {
        faces.add(
            new Face(
                Math.hypot(mesh.bnx[b], mesh.bny[b]),
                flow.shearX()[b] * cos + flow.shearY()[b] * sin));
      }
    }
    return faces;
  }

  private boolean isUpper(Mesh mesh, int b) {
    boolean end = mesh.bPatch[b] == Patch.LEFT || mesh.bPatch[b] == Patch.RIGHT;
    return !end && mesh.bny[b] > 0;
  }

  /** Mean shear on the upper wall, m²/s². */
  private double shear(FlowSolution flow) {
    List<Face> faces = faces(flow);
    return faces.stream().mapToDouble(Face::force).sum()
        / faces.stream().mapToDouble(Face::area).sum();
  }

  /** Largest distance of the shear on one face to the mean, over the mean. */
  private double scatter(FlowSolution flow) {
    double mean = shear(flow);
    List<Face> faces = faces(flow);
    double size = faces.stream().mapToDouble(Face::area).max().orElse(0);
    return faces.stream()
        .filter(f -> f.area > TINY * size)
        .mapToDouble(f -> Math.abs(f.force / f.area / mean - 1))
        .max()
        .orElse(Double.NaN);
  }

  /** Fall of the pressure along the channel, over density, m/s². */
  private double pressure(FlowSolution flow) {
    double cos = Math.cos(Math.toRadians(degrees));
    double sin = Math.sin(Math.toRadians(degrees));
    Mesh mesh = flow.problem().geometry().mesh;
    SimpleRegression line = new SimpleRegression();
    for (int c = 0; c < mesh.cells; c++) {
      double along = mesh.cx[c] * cos + mesh.cy[c] * sin;
      if (along > FROM && along < TO) {
        line.addData(along, flow.state().p[c]);
      }
    }
    return -line.getSlope();
  }

  private Friction straight(int n, CancelToken cancel) {
    return STRAIGHT.computeIfAbsent(
        new Twin(closure, reynolds, ground, n),
        twin -> {
          SlantedGap upright = new SlantedGap(closure, reynolds, 0, ground, n);
          return upright.friction(upright.solve(n, cancel));
        });
  }

  private Friction friction(FlowSolution flow) {
    return new Friction(shear(flow), pressure(flow));
  }

  private FlowSolution solve(int n, CancelToken cancel) {
    FlowProblem problem = problem(n);
    return new SteadyFlowSolver(problem, start(problem), LIMITS, cancel).solve();
  }

  private FlowProblem problem(int n) {
    double angle = Math.toRadians(degrees);
    double tangent = Math.tan(angle);
    double upright = 1 / Math.cos(angle);
    double length = LENGTH * Math.cos(angle);
    double top = length * tangent + upright;
    // squares, through whose corners both walls run at 45 degrees
    double size = upright / Math.round(upright * n);
    int across = (int) Math.round(length / size);
    int up = (int) Math.ceil(top / size);
    GridLines lines =
        new GridLines(Problems.even(0, across * size, across), Problems.even(0, up * size, up));
    Ring below =
        new Ring(
            new double[] {-1, length + 2, length + 2},
            new double[] {-tangent, -2, top - upright + 2 * tangent});
    Ring above =
        new Ring(
            new double[] {-1, -1, length + 2},
            new double[] {top + 3 * tangent, upright - tangent, top + 2 * tangent});
    Mesh mesh =
        MeshBuilder.build(
            lines,
            degrees == 0 ? List.of() : List.of(below, above),
            Set.of(Patch.LEFT, Patch.RIGHT));
    Boundary boundary = new Boundary(mesh);
    for (int b = 0; b < mesh.boundaryFaces; b++) {
      if (mesh.bPatch[b] == Patch.LEFT) {
        boundary.kind[b] = Boundary.VELOCITY;
        double half = 0.5 * Math.abs(mesh.bnx[b]);
        double low = (mesh.by[b] - half) / upright;
        double high = (mesh.by[b] + half) / upright;
        double mean = (flowBelow(high) - flowBelow(low)) / (high - low);
        boundary.u[b] = mean * Math.cos(angle);
        boundary.v[b] = mean * Math.sin(angle);
      } else if (mesh.bPatch[b] == Patch.RIGHT) {
        boundary.kind[b] = Boundary.OUTLET;
      } else if (!isUpper(mesh, b)) {
        boundary.u[b] = ground * Math.cos(angle);
        boundary.v[b] = ground * Math.sin(angle);
      }
    }
    return Problems.turbulent(
        mesh, boundary, 1 / reynolds, closure, INFLOW, new FlowProblem.Scales(1, 1, 0.5));
  }

  private FlowState start(FlowProblem problem) {
    Mesh mesh = problem.geometry().mesh;
    FlowState start = new FlowState(mesh.cells, mesh.faces, mesh.boundaryFaces);
    Arrays.fill(start.u, Math.cos(Math.toRadians(degrees)));
    Arrays.fill(start.v, Math.sin(Math.toRadians(degrees)));
    Arrays.fill(start.k, INFLOW.k());
    Arrays.fill(start.omega, INFLOW.k() / INFLOW.eddyViscosity());
    Arrays.fill(start.nuTilde, INFLOW.eddyViscosity());
    Arrays.fill(start.eddyViscosity, INFLOW.eddyViscosity());
    return start;
  }

  /** Flow below a height of the power law u ~ y^1/7 on either half. */
  private static double flowBelow(double height) {
    double y = Math.max(0, Math.min(1, height));
    return y <= 0.5 ? 0.5 * Math.pow(2 * y, 8.0 / 7) : 1 - flowBelow(1 - y);
  }
}
