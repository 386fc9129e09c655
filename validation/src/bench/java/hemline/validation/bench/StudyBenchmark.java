package hemline.validation.bench;

import hemline.shared.profile.LipProfile;
import hemline.shared.section.SealSection;
import hemline.solver.flow.CancelToken;
import hemline.solver.flow.Closure;
import hemline.solver.flow.ProgressListener;
import hemline.solver.grid.MeshLevel;
import hemline.solver.refine.FamilySolver;
import hemline.solver.study.GapDistribution;
import hemline.solver.study.RankingAnswer;
import hemline.solver.study.RankingStudy;
import hemline.solver.study.RunOptions;
import hemline.solver.study.SweepResult;
import hemline.solver.study.SweepStudy;
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

/** Whole studies at 600 Pa as the commands run them: a sweep of six gaps and a small ranking. */
@BenchmarkMode(Mode.SingleShotTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Warmup(iterations = 1)
@Measurement(iterations = 3)
@Fork(1)
@State(Scope.Benchmark)
public class StudyBenchmark {
  private static final List<Double> SWEPT = List.of(0.001, 0.0014, 0.0018, 0.0022, 0.0026, 0.003);
  private static final List<Double> RANKED = List.of(0.0015, 0.002, 0.003);

  /** Solves running at once. */
  @Param({"1", "2"})
  public int threads;

  private SealSection flat;
  private List<LipProfile> lips;

  @Setup(Level.Trial)
  public void prepare() throws Exception {
    flat = section("plain-flat-8");
    lips =
        List.of(
            flat.profile(),
            section("labyrinth-three-teeth").profile(),
            section("vortex-trap-one-pocket").profile());
  }

  private static SealSection section(String lip) throws Exception {
    return BenchSection.of(Path.of("..", "profiles"), lip, BenchSection.CRAWLER).section();
  }

  private RunOptions options(MeshLevel level) {
    return new RunOptions(level, Closure.AUTO, false, threads);
  }

  /** Six gaps from 1 to 3 mm of the plain flat lip, medium mesh. */
  @Benchmark
  public SweepResult sweep() {
    return new SweepStudy(new FamilySolver())
        .overGaps(flat, SWEPT, options(MeshLevel.MEDIUM), new CancelToken(), ProgressListener.NONE);
  }

  /** Three lips at three gaps, coarse mesh. */
  @Benchmark
  public RankingAnswer ranking() {
    return new RankingStudy(new FamilySolver())
        .rank(
            lips,
            flat.profile(),
            GapDistribution.even(RANKED),
            flat,
            options(MeshLevel.COARSE),
            new CancelToken(),
            ProgressListener.NONE);
  }
}
