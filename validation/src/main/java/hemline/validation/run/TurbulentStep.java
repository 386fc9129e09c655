package hemline.validation.run;

import hemline.shared.fluid.FluidState;
import hemline.shared.geometry.Outline;
import hemline.shared.geometry.Vertex;
import hemline.shared.result.SolveStatus;
import hemline.shared.section.Drive;
import hemline.shared.section.DuctSection;
import hemline.solver.flow.CancelToken;
import hemline.solver.flow.Closure;
import hemline.solver.flow.DuctSetup;
import hemline.solver.flow.FlowSolution;
import hemline.solver.flow.ProgressListener;
import hemline.solver.flow.SequencedSolver;
import hemline.solver.grid.GridLines;
import hemline.solver.grid.Mesh;
import hemline.solver.grid.Patch;
import hemline.solver.refine.GridFamily;
import hemline.solver.refine.GridSolution;
import hemline.validation.reference.ExpectedFigure;
import hemline.validation.reference.ProfileReference;
import hemline.validation.reference.ReferenceCase;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.function.ToDoubleFunction;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * Turbulent flow over a backward-facing step of height 1: density 1, step at x = 0, its foot at y =
 * 0.
 *
 * <p>Air enters evenly far enough before the step for the boundary layer to grow to the measured
 * thickness. Coefficients refer to the speed in mid channel, or in the middle between the step and
 * a plane of symmetry, 4 step heights before the step.
 */
final class TurbulentStep implements ComputedCase {
  private static final double EXIT = 40;

  /** Where the reference speed is taken. */
  private static final double SPEED_AT = -4;

  /** Where the wall pressure counts as zero. */
  private static final double PRESSURE_AT = 37.5;

  private static final Pattern FRICTION = Pattern.compile("friction coefficient at ([0-9.]+)");
  private static final Pattern PRESSURE = Pattern.compile("pressure coefficient at ([0-9.]+)");
  private static final Pattern RISE = Pattern.compile("pressure rise from ([0-9.]+) to ([0-9.]+)");
  private static final Pattern LAYER = Pattern.compile("momentum thickness at (-[0-9.]+)");
  private static final Pattern SPEED = Pattern.compile("speed share at (-?[0-9.]+),([0-9.]+)");
  private static final int[] SIZES = {3, 4, 5};

  private final double reynolds;
  private final double entry;
  private final double height;
  private final boolean symmetric;
  private final DuctSetup setup;

  /**
   * A step.
   *
   * @param reynolds entering speed times step height over viscosity
   * @param entry length of the channel before the step
   * @param height of the channel behind the step
   * @param symmetric true when the ceiling is a plane of symmetry
   */
  TurbulentStep(double reynolds, double entry, double height, boolean symmetric) {
    this.reynolds = reynolds;
    this.entry = entry;
    this.height = height;
    this.symmetric = symmetric;
    DuctSection.Wall still = new DuctSection.Wall(0, 0, false);
    setup =
        new DuctSetup(
            new DuctSection(
                "backward-facing step",
                new DuctSection.Channel(-entry, EXIT, height),
                List.of(
                    new Outline(
                        List.of(
                            new Vertex(-entry - 1, -1),
                            new Vertex(0, -1),
                            new Vertex(0, 1),
                            new Vertex(-entry - 1, 1)))),
                new FluidState(1, 1 / reynolds),
                // speed 1 on the whole height; the step keeps its share out
                new DuctSection.Inflow(new Drive.LeakFlow(height), DuctSection.Inlet.UNIFORM),
                new DuctSection.Walls(
                    still, symmetric ? new DuctSection.Wall(0, 0, true) : still, null),
                new DuctSection.Measures(null, height - 1),
                Closure.SST.key()));
  }

  @Override
  public Outcome solve(ReferenceCase one, CancelToken cancel, ProgressListener progress) {
    List<FlowSolution> flows =
        SequencedSolver.solve(
            g -> setup.problem(lines(SIZES[g]), Closure.SST),
            SIZES.length,
            0,
            setup.startFlow(),
            FlowCase.GROWING,
            cancel,
            progress);
    List<GridSolution> grids = flows.stream().map(FlowCase::grid).toList();
    List<GridFamily> others = cancel.isCancelled() ? List.of() : List.of(second(cancel));
    SolveStatus status =
        flows.size() < SIZES.length
            ? cancel.isCancelled() ? SolveStatus.CANCELLED : SolveStatus.FAILED
            : grids.get(grids.size() - 1).run().status();
    List<@Nullable Measured> quantities = new ArrayList<>();
    for (ExpectedFigure expected : one.expected()) {
      Probe probe = probe(expected.quantity());
      quantities.add(
          ModelBand.of(
              GridMeter.measure(
                  expected.quantity(), probe, expected.tolerance().scale(), grids, null),
              expected,
              probe,
              Closure.SST,
              others));
    }
    List<ProfileCurve> curves = new ArrayList<>();
    if (!grids.isEmpty()) {
      GridSolution finest = grids.get(grids.size() - 1);
      for (ProfileReference profile : one.profiles()) {
        boolean friction = profile.line().startsWith("friction");
        curves.add(
            new ProfileCurve(
                profile,
                false,
                friction ? "friction coefficient" : "pressure coefficient",
                curve(finest, friction)));
      }
    }
    return new Outcome(
        status,
        Closure.SST.key(),
        OptionalDouble.of(reynolds),
        OptionalDouble.of(0),
        quantities,
        curves);
  }

  /** The coarsest grid under the one-equation closure. */
  private GridFamily second(CancelToken cancel) {
    return new GridFamily(
        Closure.SA,
        SequencedSolver.solve(
                g -> setup.problem(lines(SIZES[g]), Closure.SA),
                1,
                0,
                setup.startFlow(),
                FlowCase.GROWING,
                cancel,
                ProgressListener.NONE)
            .stream()
            .map(FlowCase::grid)
            .toList());
  }

  private Probe probe(String quantity) {
    Matcher m = FRICTION.matcher(quantity);
    if (m.matches()) {
      double x = Double.parseDouble(m.group(1));
      return own(g -> WallShear.of(g, true).at(x) / head(g));
    }
    m = PRESSURE.matcher(quantity);
    if (m.matches()) {
      double x = Double.parseDouble(m.group(1));
      return own(g -> pressure(g, x));
    }
    m = RISE.matcher(quantity);
    if (m.matches()) {
      double from = Double.parseDouble(m.group(1));
      double to = Double.parseDouble(m.group(2));
      return own(g -> (atWall(g, to) - atWall(g, from)) / head(g));
    }
    m = LAYER.matcher(quantity);
    if (m.matches()) {
      double x = Double.parseDouble(m.group(1));
      return own(g -> thickness(g, x));
    }
    m = SPEED.matcher(quantity);
    if (m.matches()) {
      double x = Double.parseDouble(m.group(1));
      double y = Double.parseDouble(m.group(2));
      return own(g -> speed(g, x, y) / reference(g));
    }
    return Probes.parse(quantity, List.of());
  }

  private record Own(ToDoubleFunction<GridSolution> value) implements Probe {
    @Override
    public double of(GridSolution grid) {
      return value.applyAsDouble(grid);
    }

    @Override
    public String unit() {
      return "1";
    }
  }

  private static Probe own(ToDoubleFunction<GridSolution> value) {
    return new Own(value);
  }

  private static double speed(GridSolution grid, double x, double y) {
    return new FieldSampler(grid.field()).at(grid.field().u(), x, y);
  }

  private double reference(GridSolution grid) {
    return speed(grid, SPEED_AT, 0.5 * (1 + height));
  }

  private double head(GridSolution grid) {
    double u = reference(grid);
    return 0.5 * u * u;
  }

  /**
   * Momentum thickness over the step: ∫ u/U (1 − u/U) dy up to where the reference speed is taken.
   */
  private double thickness(GridSolution grid, double x) {
    double[] y = grid.field().mesh().lines.y();
    double edge = speed(grid, x, 0.5 * (1 + height));
    double sum = 0;
    for (int j = 0; j + 1 < y.length; j++) {
      double middle = 0.5 * (y[j] + y[j + 1]);
      if (middle > 1 && middle < 0.5 * (1 + height)) {
        double share = speed(grid, x, middle) / edge;
        sum += (y[j + 1] - y[j]) * share * (1 - share);
      }
    }
    return sum;
  }

  /** Wall pressure over that far behind, in reference heads. */
  private double pressure(GridSolution grid, double x) {
    return (atWall(grid, x) - atWall(grid, PRESSURE_AT)) / head(grid);
  }

  /** Pressure along the lower wall. */
  private static double atWall(GridSolution grid, double x) {
    return new FieldSampler(grid.field()).at(grid.field().p(), x, 1e-6);
  }

  private List<ProfileReference.Point> curve(GridSolution grid, boolean friction) {
    List<ProfileReference.Point> points = new ArrayList<>();
    Mesh mesh = grid.field().mesh();
    WallShear shear = WallShear.of(grid, true);
    double head = head(grid);
    for (int b = 0; b < mesh.boundaryFaces; b++) {
      if (mesh.bPatch[b] == Patch.BOTTOM) {
        double x = mesh.bx[b];
        points.add(
            new ProfileReference.Point(x, friction ? shear.at(x) / head : pressure(grid, x)));
      }
    }
    points.removeIf(p -> !Double.isFinite(p.value()));
    points.sort(java.util.Comparator.comparingDouble(ProfileReference.Point::place));
    return points;
  }

  private GridLines lines(int n) {
    boolean far = entry > 60;
    double[] before = stretched(entry, far ? 12 * n : 10 * n, far ? 5.5 : Math.log(3 * entry));
    double[] x = join(reversed(before, 0), stretched(EXIT, 25 * n, 4.5));
    double[] low = new double[6 * n + 1];
    for (int j = 0; j < low.length; j++) {
      low[j] = 0.5 * (1 + Math.tanh(1.5 * (2.0 * j / (6 * n) - 1)) / Math.tanh(1.5));
    }
    low[0] = 0;
    low[6 * n] = 1;
    double over = symmetric ? height - 1 : 0.5 * (height - 1);
    double[] middle = stretched(over, 6 * n, over > 2 ? 4.6 : 3.2);
    for (int j = 0; j < middle.length; j++) {
      middle[j] += 1;
    }
    double[] y = join(low, middle);
    return new GridLines(
        x, symmetric ? y : join(y, reversed(stretched(over, 4 * n, over > 2 ? 3.5 : 2.5), height)));
  }

  /** Lines from 0 on, the first intervals the shortest. */
  private static double[] stretched(double length, int cells, double stretch) {
    double[] x = new double[cells + 1];
    for (int i = 0; i <= cells; i++) {
      x[i] = length * Math.sinh(stretch * i / cells) / Math.sinh(stretch);
    }
    x[cells] = length;
    return x;
  }

  /** The same lines counted back from an end. */
  private static double[] reversed(double[] lines, double end) {
    double[] x = new double[lines.length];
    for (int i = 0; i < x.length; i++) {
      x[i] = end - lines[lines.length - 1 - i];
    }
    return x;
  }

  /** Two runs of lines that share one. */
  private static double[] join(double[] first, double[] second) {
    double[] all = java.util.Arrays.copyOf(first, first.length + second.length - 1);
    System.arraycopy(second, 1, all, first.length, second.length - 1);
    return all;
  }
}
