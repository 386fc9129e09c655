package hemline.validation.run;

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
import hemline.solver.grid.Mesh;
import hemline.solver.grid.Patch;
import hemline.solver.refine.GridSolution;
import hemline.solver.refine.GridValues;
import hemline.solver.refine.ThreeGrid;
import hemline.validation.reference.ExpectedFigure;
import hemline.validation.reference.ProfileReference;
import hemline.validation.reference.ReferenceCase;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import java.util.concurrent.CancellationException;
import org.jspecify.annotations.Nullable;

/**
 * Turbulent flow that no longer changes along a gap of height 1 and density 1: ground at y = 0, at
 * rest or moving, and a still ceiling.
 *
 * <p>The flow is either given, and the force that drives it found, or the force is given. Each case
 * is solved with k-ω SST on three grids; the distance to the one-equation closure on the finest
 * grid, at least the residual of the quantity's kind, is the model part of the band.
 *
 * @param viscosity kinematic, m²/s
 * @param groundSpeed m/s
 * @param flow m²/s; not a number when the force is given
 * @param force that drives the flow, over density: minus the pressure gradient, m/s²; a first guess
 *     when the flow is given
 * @param cells over the height, by grid, coarsest first
 * @param stretch how strongly the lines crowd at the walls, 0 for even ones
 */
record DevelopedGap(
    double viscosity, double groundSpeed, double flow, double force, int[] cells, double stretch)
    implements ComputedCase {
  private static final StoppingLimits LIMITS = new StoppingLimits(3000, 100, 30, 1e-6, 1e-5, 1e-6);

  /**
   * Friction of a channel falls with this power of the flow's own (Dean 1978, J. Fluids Eng. 100,
   * 215): τ ~ q^1.75.
   */
  private static final double FRICTION_POWER = 1.75;

  private static final int ROUNDS = 8;
  private static final double FLOW_ERROR = 1e-5;

  /** A channel that carries flow 1 between still walls. */
  static DevelopedGap channel(double reynolds, double stretch, int... cells) {
    // Dean 1978, J. Fluids Eng. 100, 215
    return new DevelopedGap(1 / reynolds, 0, 1, 0.073 * Math.pow(reynolds, -0.25), cells, stretch);
  }

  /**
   * A gap between the ground, at speed 1, and a still wall.
   *
   * @param reynolds ground speed times height over viscosity
   * @param drive minus the pressure gradient over 2 viscosity times ground speed over height²
   */
  static DevelopedGap overGround(double reynolds, double drive, double stretch, int... cells) {
    return new DevelopedGap(1 / reynolds, 1, Double.NaN, 2 * drive / reynolds, cells, stretch);
  }

  @Override
  public Outcome solve(ReferenceCase one, CancelToken cancel, ProgressListener progress) {
    List<GridSolution> grids = new ArrayList<>();
    SolveStatus status = SolveStatus.CANCELLED;
    GridSolution other = null;
    try {
      for (int n : cells) {
        FlowSolution found = solve(n, Closure.SST, cancel);
        status = found.outcome().status();
        grids.add(FlowCase.grid(found));
        progress.progress(grids.size() / (cells.length + 1.0), one.name());
      }
      if (status == SolveStatus.CONVERGED) {
        other = FlowCase.grid(solve(cells[cells.length - 1], Closure.SA, cancel));
      }
    } catch (CancellationException stopped) {
      status = SolveStatus.CANCELLED;
    }
    List<@Nullable Measured> quantities = new ArrayList<>();
    for (ExpectedFigure expected : one.expected()) {
      quantities.add(measured(expected, one, grids, other));
    }
    List<ProfileCurve> curves = new ArrayList<>();
    if (!grids.isEmpty()) {
      for (ProfileReference profile : one.profiles()) {
        curves.add(
            new ProfileCurve(profile, true, "u", points(grids.get(grids.size() - 1).flow())));
      }
    }
    return new Outcome(
        status,
        Closure.SST.key(),
        OptionalDouble.of(mean() / viscosity),
        OptionalDouble.of(groundSpeed / mean()),
        quantities,
        curves);
  }

  /** Mean speed given, or the mean of the wall speeds. */
  private double mean() {
    return Double.isNaN(flow) ? 0.5 * groundSpeed : flow;
  }

  /** Value with the band of the grids, one cell wide, and that of the other closure. */
  private @Nullable Measured measured(
      ExpectedFigure expected,
      ReferenceCase one,
      List<GridSolution> grids,
      @Nullable GridSolution other) {
    Probe probe = probe(expected.quantity(), one);
    Measured found =
        GridMeter.measure(expected.quantity(), probe, expected.tolerance().scale(), grids, null);
    if (found == null || other == null || probe.distance()) {
      return found;
    }
    int n = found.grids().size();
    double[] values = new double[n];
    double[] sizes = new double[n];
    for (int g = 0; g < n; g++) {
      values[g] = found.grids().get(g).value();
      sizes[g] = 1.0 / found.grids().get(g).cells();
    }
    Estimate e =
        ThreeGrid.estimate(
            new GridValues(values, sizes, new double[n]), expected.tolerance().scale());
    return ModelBand.onFinest(
        new Measured(found.quantity(), found.unit(), e, found.grids(), found.hasBand()),
        expected,
        probe,
        Closure.SST,
        other);
  }

  /**
   * Solves on one grid; with a given flow, as often as its force needs to be mended; from where it
   * stopped when it has not settled.
   */
  private FlowSolution solve(int n, Closure closure, CancelToken cancel) {
    double push = force;
    FlowState state = null;
    for (int round = 0; ; round++) {
      FlowProblem problem =
          Problems.developed(lines(n), viscosity, closure, push, groundSpeed, mean());
      Mesh mesh = problem.geometry().mesh;
      FlowState start = new FlowState(mesh.cells, mesh.faces, mesh.boundaryFaces);
      if (state == null) {
        Arrays.fill(start.u, mean());
      } else {
        start.set(state);
      }
      FlowSolution found = new SteadyFlowSolver(problem, start, LIMITS, cancel).solve();
      state = found.state();
      double q = carried(found);
      boolean settled = found.outcome().status() == SolveStatus.CONVERGED;
      boolean carries = Double.isNaN(flow) || Math.abs(q - flow) < FLOW_ERROR * flow;
      if ((settled && carries) || !(q > 0) || round == ROUNDS) {
        return found;
      }
      push *= carries ? 1 : Math.pow(flow / q, FRICTION_POWER);
    }
  }

  private double[] lines(int n) {
    double[] y = new double[n + 1];
    for (int j = 0; j <= n; j++) {
      double t = 2.0 * j / n - 1;
      y[j] = stretch == 0 ? 0.5 * (1 + t) : 0.5 * (1 + Math.tanh(stretch * t) / Math.tanh(stretch));
    }
    y[0] = 0;
    y[n] = 1;
    return y;
  }

  private Probe probe(String quantity, ReferenceCase one) {
    return switch (quantity) {
      case "friction coefficient of ceiling" -> own("1", f -> 2 * friction(f, Patch.TOP));
      case "friction coefficient of ground" -> own("1", f -> 2 * friction(f, Patch.BOTTOM));
      case "friction velocity" -> own("m/s", f -> Math.sqrt(friction(f, Patch.TOP)));
      case "leakFlow" -> own("m2/s", DevelopedGap::carried);
      case "centre speed" -> own("m/s", f -> interpolated(points(f), 0.5));
      default -> {
        for (ProfileReference profile : one.profiles()) {
          if (quantity.equals("deviation of " + profile.line())) {
            yield new FlowCase.Own("m/s", true, f -> deviation(points(f), profile));
          }
        }
        throw new IllegalArgumentException(
            one.name() + " expects \"" + quantity + "\", which nothing measures");
      }
    };
  }

  private static Probe own(String unit, java.util.function.ToDoubleFunction<FlowSolution> value) {
    return new FlowCase.Own(unit, false, value);
  }

  /** Force of the fluid on a wall along x, over its area and density, m²/s². */
  private static double friction(FlowSolution found, int patch) {
    Mesh mesh = found.problem().geometry().mesh;
    double force = 0;
    double area = 0;
    for (int b = 0; b < mesh.boundaryFaces; b++) {
      if (mesh.bPatch[b] == patch) {
        force += found.shearX()[b];
        area += Math.abs(mesh.bny[b]);
      }
    }
    return force / area;
  }

  private static double carried(FlowSolution found) {
    Mesh mesh = found.problem().geometry().mesh;
    double sum = 0;
    double width = mesh.lines.x()[1] - mesh.lines.x()[0];
    for (int c = 0; c < mesh.cells; c++) {
      sum += mesh.volume[c] * found.state().u[c] / width;
    }
    return sum;
  }

  /** Speeds over the height, the walls' included. */
  private List<ProfileReference.Point> points(@Nullable FlowSolution found) {
    List<ProfileReference.Point> points = new ArrayList<>();
    if (found == null) {
      return points;
    }
    double[] y = found.problem().geometry().mesh.lines.y();
    points.add(new ProfileReference.Point(0, groundSpeed));
    for (int j = 0; j + 1 < y.length; j++) {
      int c = found.problem().geometry().mesh.cellAt[j];
      points.add(new ProfileReference.Point(0.5 * (y[j] + y[j + 1]), found.state().u[c]));
    }
    points.add(new ProfileReference.Point(1, 0));
    return points;
  }

  private static double interpolated(List<ProfileReference.Point> points, double place) {
    for (int k = 1; k < points.size(); k++) {
      ProfileReference.Point a = points.get(k - 1);
      ProfileReference.Point b = points.get(k);
      if (place <= b.place()) {
        return a.value() + (b.value() - a.value()) * (place - a.place()) / (b.place() - a.place());
      }
    }
    return Double.NaN;
  }

  private static double deviation(
      List<ProfileReference.Point> computed, ProfileReference reference) {
    double most = 0;
    for (ProfileReference.Point p : reference.points()) {
      most = Math.max(most, Math.abs(interpolated(computed, p.place()) - p.value()));
    }
    return most;
  }
}
