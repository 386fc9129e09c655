package hemline.solver.improve;

import static org.assertj.core.api.Assertions.assertThat;

import hemline.shared.file.MachineFile;
import hemline.shared.profile.LipProfile;
import hemline.shared.result.Estimate;
import hemline.shared.result.SectionResult;
import hemline.shared.vehicle.Machine;
import hemline.solver.flow.CancelToken;
import hemline.solver.flow.Closure;
import hemline.solver.flow.ProgressListener;
import hemline.solver.grid.MeshLevel;
import hemline.solver.plenum.LipDownforce;
import hemline.solver.plenum.MachineBalance;
import hemline.solver.plenum.MachineStudy;
import hemline.solver.study.BatchStudy;
import hemline.solver.study.LeakStudy;
import hemline.solver.study.MadeUpFamily;
import hemline.solver.study.PoolRunner;
import hemline.solver.study.ResultStore;
import hemline.solver.study.RunOptions;
import java.nio.file.Path;
import java.util.List;
import java.util.Objects;
import org.junit.jupiter.api.Test;

/** Searches for the most downforce, over leaks that are formulas. */
final class DownforceGoalTest {
  private static final RunOptions COARSE = new RunOptions(MeshLevel.COARSE, Closure.SST, false, 2);

  private static Machine crawler() throws Exception {
    return MachineFile.read(Path.of("..", "profiles", "machines", "silo-wall-crawler.json"));
  }

  /**
   * Where the discharge coefficient is one number, few sections tell what the whole balance does.
   */
  @Test
  void fewSectionsTellTheDownforceOfTheWholeBalance() throws Exception {
    MadeUpFamily family =
        new MadeUpFamily((section, closure, place) -> MadeUpFamily.jet(section, 0.7));
    LipDownforce downforce = new LipDownforce(crawler());
    LipProfile lip = MadeUpFamily.lip("plain");
    List<SectionResult> results =
        new BatchStudy(new PoolRunner(family), ResultStore.none())
            .run(downforce.sections(lip), COARSE, new CancelToken(), ProgressListener.NONE)
            .results();
    assertThat(results).hasSize(4);
    MachineBalance whole =
        new MachineStudy(new LeakStudy(family, ResultStore.none()))
            .of(
                downforce.with(lip),
                List.of(lip),
                1.5,
                COARSE,
                new CancelToken(),
                ProgressListener.NONE);
    double known =
        Objects.requireNonNull(whole.changes().lips().get(0).trade().downforce()).value();
    assertThat(downforce.of(lip, results) / known).isBetween(0.999, 1.001);
    assertThat(downforce.of(lip, results.subList(0, 3))).isNaN();
  }

  @Test
  void theLipWithTheMostDownforceIsFoundAndProven() throws Exception {
    ShapeLimits limits = new ShapeLimits(14e-3, 20e-3, 0.8e-3, 0.8e-3);
    LipSpace space = LipFamily.FLAT.space(1, limits, LipFamily.FLAT.within(1, limits), false);
    ImproveStudy.Asked asked =
        new ImproveStudy.Asked(
            MadeUpFamily.lip("start"), space, limits, new DownforceGoal(crawler()), 14, 1);
    Improvement found =
        new ImproveStudy(MadeUpFamily.valley(), ResultStore.none())
            .of(
                asked,
                new RunOptions(MeshLevel.MEDIUM, Closure.SST, false, 2),
                () -> false,
                all -> {},
                new CancelToken(),
                ProgressListener.NONE);
    Improvement.Found best = Objects.requireNonNull(found.best());
    assertThat(MadeUpFamily.width(best.profile())).isBetween(10.5e-3, 11.5e-3);
    assertThat(found.proven()).isTrue();
    Estimate gain = Objects.requireNonNull(found.relative(best.profile().name()));
    assertThat(gain.low()).isGreaterThan(1);
    // the search told the same by fewer sections
    assertThat(best.evaluation().score() * gain.value()).isBetween(0.97, 1.03);
  }
}
