package hemline.validation.bench;

import hemline.solver.flow.CancelToken;
import hemline.solver.flow.Closure;
import hemline.solver.flow.ProgressListener;
import hemline.solver.flow.SolvedSection;
import hemline.solver.grid.MeshLevel;
import hemline.solver.refine.FamilySolver;
import hemline.solver.refine.GridFamily;
import hemline.solver.refine.SectionFamily;
import hemline.solver.refine.SolveRequest;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;
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
 * One section of the medium mesh at 2 mm and 600 Pa on one thread: the coarsest grid alone and all
 * three, from a cold start and from the flow at 1.8 mm.
 */
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Warmup(iterations = 2, time = 3)
@Measurement(iterations = 3, time = 3)
@Fork(2)
@State(Scope.Thread)
public class SectionBenchmark {
  private static final double NARROWER = 0.0018;

  @Param({"plain-flat-8", "labyrinth-three-teeth", "vortex-trap-two-pockets"})
  public String lip;

  @Param({"1", "3"})
  public int grids;

  private BenchSection one;
  private List<SolvedSection> neighbour;

  @Setup(Level.Trial)
  public void prepare() throws Exception {
    one = BenchSection.of(Path.of("..", "profiles"), lip, BenchSection.CRAWLER);
    SolvedSection start =
        new FamilySolver()
            .solve(
                SolveRequest.cold(
                    one.section().withGap(NARROWER), MeshLevel.MEDIUM, 1, Closure.AUTO),
                new CancelToken(),
                ProgressListener.NONE)
            .start();
    if (start == null) {
      throw new IllegalStateException("the neighbour of " + lip + " did not converge");
    }
    neighbour = List.of(start);
  }

  private GridFamily solve(List<SolvedSection> before) {
    SectionFamily solver = new FamilySolver();
    return solver.solve(
        new SolveRequest(one.section(), MeshLevel.MEDIUM, grids, Closure.AUTO, before),
        new CancelToken(),
        ProgressListener.NONE);
  }

  /** From rest. */
  @Benchmark
  public GridFamily cold() {
    return solve(List.of());
  }

  /** From the flow at a tenth less gap. */
  @Benchmark
  public GridFamily warm() {
    return solve(neighbour);
  }
}
