package hemline.solver.study;

import static org.assertj.core.api.Assertions.assertThat;

import hemline.shared.profile.LipProfile;
import hemline.shared.result.SolveStatus;
import hemline.shared.section.SealSection;
import hemline.solver.flow.CancelToken;
import hemline.solver.flow.Closure;
import hemline.solver.flow.Lips;
import hemline.solver.flow.ProgressListener;
import hemline.solver.grid.MeshLevel;
import hemline.solver.refine.FamilySolver;
import java.util.List;
import org.junit.jupiter.api.Test;

/** A ranking gives the same bits whatever the number of threads. */
class SameBitsTest {

  private static RankingAnswer rank(int threads) {
    LipProfile flat = Lips.flat(8);
    SealSection conditions = Lips.section(flat, 2, 100, 2, 1);
    return new RankingStudy(new FamilySolver())
        .rank(
            List.of(Lips.leaningTeeth(), Lips.shipped("round-nose"), flat),
            flat,
            GapDistribution.even(List.of(0.5e-3, 4e-3)),
            conditions,
            new RunOptions(MeshLevel.COARSE, Closure.AUTO, false, threads),
            new CancelToken(),
            ProgressListener.NONE);
  }

  @Test
  void oneThreadAndTwoGiveTheSameBits() {
    RankingAnswer one = rank(1);
    RankingAnswer two = rank(2);
    assertThat(two.ranking()).isEqualTo(one.ranking());
    assertThat(one.answers()).hasSize(6);
    for (int i = 0; i < 6; i++) {
      SectionAnswer a = one.answers().get(i);
      SectionAnswer b = two.answers().get(i);
      assertThat(a.result().status()).isEqualTo(SolveStatus.CONVERGED);
      assertThat(b.result()).isEqualTo(a.result());
      assertThat(b.field().u()).isEqualTo(a.field().u());
      assertThat(b.field().p()).isEqualTo(a.field().p());
      assertThat(b.field().streamfunction()).isEqualTo(a.field().streamfunction());
    }
  }
}
