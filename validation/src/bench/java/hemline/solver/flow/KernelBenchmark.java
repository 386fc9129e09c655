package hemline.solver.flow;

import hemline.solver.field.FlowState;
import hemline.solver.grid.GridDesign;
import hemline.solver.grid.MeshLevel;
import hemline.solver.linear.AndersonAcceleration;
import hemline.solver.refine.FamilySolver;
import hemline.validation.bench.BenchSection;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.AuxCounters;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Level;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/**
 * Kernels of the segregated iteration on the settled flow of the vortex trap at 2 mm and 600 Pa,
 * SST.
 *
 * <p>The score is the time of one call over the whole mesh; the line ending in {@code cells} is the
 * time for each cell. Kernels that change the flow begin by copying it back, which costs about a
 * nanosecond for each cell; {@link #copyBack} is that part alone.
 */
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.NANOSECONDS)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 5, time = 1)
@Fork(2)
@State(Scope.Thread)
public class KernelBenchmark {
  private static final IterationSettings SETTINGS = new IterationSettings(0.85, 1, 0.95, 6, 1e-1);
  private static final int DEPTH = 12;

  /** Counts cells, so that a time for each cell is printed. */
  @AuxCounters(AuxCounters.Type.OPERATIONS)
  @State(Scope.Thread)
  public static class Count {
    public long cells;

    @Setup(Level.Iteration)
    public void clear() {
      cells = 0;
    }
  }

  /** Cells for each base cell: 2 is the coarsest grid of a medium section, 4 the finest. */
  @Param({"2", "4"})
  public int multiplier;

  private FlowEquations equations;
  private SegregatedIteration iteration;
  private FlowState settled;
  private FlowState predicted;
  private StateVector vector;
  private AndersonAcceleration acceleration;
  private double[] before;
  private double[] after;
  private double[] weight;

  @Setup(Level.Trial)
  public void prepare() throws Exception {
    var section =
        BenchSection.of(Path.of("..", "profiles"), "vortex-trap-two-pockets", BenchSection.CRAWLER)
            .section();
    SectionSetup setup = new SectionSetup(section);
    GridDesign design = FamilySolver.design(setup, MeshLevel.MEDIUM);
    List<FlowSolution> flows =
        SequencedSolver.solve(
            g -> setup.problem(design.lines(2 + g), Closure.SST),
            multiplier - 1,
            -section.suction() / section.fluid().density(),
            0,
            StoppingLimits.LEAK,
            new CancelToken(),
            ProgressListener.NONE);
    FlowSolution flow = flows.get(flows.size() - 1);
    FlowState state = flow.state();
    equations = new FlowEquations(flow.problem(), state, () -> {});
    iteration = new SegregatedIteration(equations);
    settled = copy(state);
    // up to the velocity that the pressure correction starts from
    equations.gradients.update(state);
    equations.correction.openPressures(state, equations.pressure);
    equations.pressure.update(state.p);
    equations.correction.prediction.remember(state, equations.gradients);
    equations.momentum.assemble(state, equations.gradients, equations.pressure);
    equations.correction.coefficients(equations.momentum, SETTINGS.velocityFactor());
    equations.momentum.solve(state, SETTINGS.velocityFactor(), SETTINGS.momentumSweeps());
    predicted = copy(state);
    state.set(settled);
    vector = new StateVector(state, false, Closure.SST);
    acceleration = new AndersonAcceleration(vector.size(), vector.judged(), DEPTH);
    before = new double[vector.size()];
    after = new double[vector.size()];
    weight = new double[vector.judged()];
    Arrays.fill(weight, 1);
    vector.read(before);
    for (int i = 0; i <= DEPTH; i++) {
      iteration.step(SETTINGS);
      vector.read(after);
      acceleration.accelerate(before, after, weight);
    }
    state.set(settled);
  }

  private static FlowState copy(FlowState s) {
    FlowState c = new FlowState(s.u.length, s.flux.length, s.boundaryFlux.length);
    c.set(s);
    return c;
  }

  private int cells() {
    return settled.u.length;
  }

  /** Gradients of u and v. */
  @Benchmark
  public void gradient(Count count) {
    equations.gradients.update(settled);
    count.cells += cells();
  }

  /** Matrix and right-hand sides of momentum. */
  @Benchmark
  public void momentumAssembly(Count count) {
    equations.momentum.assemble(settled, equations.gradients, equations.pressure);
    count.cells += cells();
  }

  /** Fluxes, pressure equation to the reduction of the iteration, correction of velocity. */
  @Benchmark
  public void pressureCorrection(Count count) {
    equations.state.set(predicted);
    equations.correction.apply(
        equations.state,
        equations.gradients,
        equations.pressure,
        SETTINGS.velocityFactor(),
        SETTINGS.pressureFactor(),
        SETTINGS.pressureReduction());
    count.cells += cells();
  }

  /** One step of the SST equations. */
  @Benchmark
  public void closureUpdate(Count count) {
    equations.state.set(settled);
    equations.closure.update(equations.state, equations.gradients, SETTINGS.closureFactor());
    count.cells += cells();
  }

  /** Reading the flow as a vector, Anderson acceleration at its full depth, writing it back. */
  @Benchmark
  public void andersonStep(Count count) {
    equations.state.set(predicted);
    vector.read(after);
    acceleration.accelerate(before, after, weight);
    vector.write(after);
    count.cells += cells();
  }

  /** A whole pass of the segregated iteration. */
  @Benchmark
  public void pass(Count count) {
    equations.state.set(settled);
    iteration.step(SETTINGS);
    count.cells += cells();
  }

  /** Copying the flow back, a part of some of the others. */
  @Benchmark
  public void copyBack(Count count) {
    equations.state.set(settled);
    count.cells += cells();
  }
}
