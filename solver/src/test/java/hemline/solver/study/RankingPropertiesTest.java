package hemline.solver.study;

import static hemline.solver.study.MadeUpFamily.SIZES;
import static hemline.solver.study.MadeUpFamily.jet;
import static hemline.solver.study.MadeUpFamily.lip;
import static hemline.solver.study.MadeUpFamily.section;
import static hemline.solver.study.MadeUpRankings.FLAT;
import static hemline.solver.study.MadeUpRankings.TWO;
import static hemline.solver.study.MadeUpRankings.lips;
import static hemline.solver.study.MadeUpRankings.rank;
import static hemline.solver.study.MadeUpRankings.row;
import static org.assertj.core.api.Assertions.assertThat;

import hemline.shared.profile.LipProfile;
import hemline.solver.flow.Closure;
import hemline.solver.grid.MeshLevel;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.SplittableRandom;
import java.util.concurrent.locks.LockSupport;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** What holds of every ranking, over random made-up lips. */
class RankingPropertiesTest {
  private static final long SEED = Long.getLong("hemline.seed", 20_260_102L);

  private record Setup(List<LipProfile> candidates, MadeUpFamily family, double[] gaps) {}

  /** Lips with random leak, gap dependence and grid errors, some equal, some that fail. */
  private static Setup setup(SplittableRandom random, MadeUpFamily.Before before) {
    int lips = 2 + random.nextInt(6);
    double[] gaps = new double[1 + random.nextInt(4)];
    for (int g = 0; g < gaps.length; g++) {
      gaps[g] = 1e-3 * (g + 1);
    }
    List<LipProfile> candidates = new ArrayList<>();
    Map<String, double[]> constants = new HashMap<>();
    for (int i = 0; i < lips; i++) {
      String name = "lip" + i;
      candidates.add(lip(name));
      constants.put(
          name,
          new double[] {
            0.7 + 0.02 * random.nextInt(4),
            0.1 * (random.nextDouble() - 0.5),
            0.02 * (random.nextDouble() - 0.5),
            random.nextInt(8) == 0 ? 1 : 0
          });
    }
    constants.put("flat", new double[] {0.73, 0, 0.01, 0});
    MadeUpFamily family =
        new MadeUpFamily(
            (section, closure, place) -> {
              double[] c = Objects.requireNonNull(constants.get(section.profile().name()));
              if (c[3] == 1 && section.gap() > 1.5e-3 && place > 0) {
                return Double.NaN;
              }
              double bend = 1 + c[1] * Math.log(section.gap() / 2e-3);
              return jet(section, c[0] * bend * (1 + c[2] * Math.pow(SIZES[place], 1.3)));
            },
            before);
    return new Setup(candidates, family, gaps);
  }

  @Test
  void ranksCountTheClearlyBetterLips() {
    SplittableRandom random = new SplittableRandom(SEED);
    for (int n = 0; n < 150; n++) {
      Setup s = setup(random, (section, closure, cancel) -> {});
      Ranking ranking = rank(s.family(), TWO, s.candidates(), s.gaps()).ranking();
      List<Ranking.Row> rows = ranking.rows();
      assertThat(rows).as("seed %d, case %d", SEED, n).hasSize(s.candidates().size() + 1);
      for (int i = 0; i < rows.size(); i++) {
        Ranking.Row row = rows.get(i);
        long better =
            rows.stream()
                .filter(other -> other != row)
                .filter(other -> !row.tiedWith().contains(other.profile()))
                .filter(other -> other.relativeLeak().value() < row.relativeLeak().value())
                .count();
        assertThat(row.rank()).as("seed %d, case %d", SEED, n).isEqualTo(1 + (int) better);
        for (String tied : row.tiedWith()) {
          Ranking.Row other =
              rows.stream().filter(r -> r.profile().equals(tied)).findFirst().orElseThrow();
          assertThat(other.tiedWith()).as("seed %d, case %d", SEED, n).contains(row.profile());
        }
        if (i > 0) {
          Ranking.Row above = rows.get(i - 1);
          assertThat(above.rank()).isLessThanOrEqualTo(row.rank());
          if (above.rank() == row.rank()) {
            assertThat(above.relativeLeak().value())
                .isLessThanOrEqualTo(row.relativeLeak().value());
          }
        }
        boolean tiesBaseline = row.tiedWith().contains("flat");
        boolean bandHoldsOne = row.relativeLeak().low() <= 1 && row.relativeLeak().high() >= 1;
        if (!row.profile().equals("flat")) {
          assertThat(tiesBaseline).as("seed %d, case %d", SEED, n).isEqualTo(bandHoldsOne);
        }
      }
    }
  }

  @Test
  void theOrderOfTheQuestionDoesNotMatter() {
    SplittableRandom random = new SplittableRandom(SEED);
    for (int n = 0; n < 40; n++) {
      Setup s = setup(random, (section, closure, cancel) -> {});
      Ranking ranking = rank(s.family(), TWO, s.candidates(), s.gaps()).ranking();
      List<LipProfile> shuffled = new ArrayList<>(s.candidates());
      shuffled.add(FLAT);
      for (int i = shuffled.size() - 1; i > 0; i--) {
        Collections.swap(shuffled, i, random.nextInt(i + 1));
      }
      double[] reversed =
          IntStream.range(0, s.gaps().length)
              .mapToDouble(i -> s.gaps()[s.gaps().length - 1 - i])
              .toArray();
      Ranking again = rank(s.family(), TWO, shuffled, reversed).ranking();
      assertThat(again.rows()).as("seed %d, case %d", SEED, n).isEqualTo(ranking.rows());
      assertThat(again.crossings()).isEqualTo(ranking.crossings());
    }
  }

  @Test
  void theNumberOfThreadsDoesNotMatter() {
    for (int n = 0; n < 8; n++) {
      List<Ranking> rankings = new ArrayList<>();
      for (int threads : new int[] {1, 2, 5}) {
        Setup s =
            setup(
                new SplittableRandom(SEED + n),
                (section, closure, cancel) ->
                    LockSupport.parkNanos(
                        100_000L * (Math.abs(section.profile().name().hashCode()) % 7)));
        RunOptions options = new RunOptions(MeshLevel.MEDIUM, Closure.AUTO, true, threads);
        rankings.add(rank(s.family(), options, s.candidates(), s.gaps()).ranking());
        assertThat(s.family().threads).hasSizeLessThanOrEqualTo(threads);
        assertThat(s.family().threads).allMatch(name -> name.matches("hemline-solve-[1-5]"));
      }
      assertThat(rankings.get(1)).as("seed %d", SEED + n).isEqualTo(rankings.get(0));
      assertThat(rankings.get(2)).as("seed %d", SEED + n).isEqualTo(rankings.get(0));
    }
  }

  @Test
  void clearOrdersAreTrue() {
    SplittableRandom random = new SplittableRandom(SEED);
    int clear = 0;
    int wrong = 0;
    int pairs = 600;
    for (int n = 0; n < pairs; n++) {
      double truth = 1 + 0.06 * (random.nextDouble() - 0.5);
      double[] error = {0.02 * random.nextDouble(), 0.01 * (random.nextDouble() - 0.5)};
      double order = 1 + random.nextDouble();
      double[] scatter = new double[3];
      for (int k = 0; k < 3; k++) {
        scatter[k] = 0.001 * (random.nextDouble() - 0.5);
      }
      MadeUpFamily family =
          new MadeUpFamily(
              (section, closure, place) -> {
                boolean flat = section.profile().name().equals("flat");
                double own = flat ? 0 : error[1] * Math.pow(SIZES[place], order) + scatter[place];
                double common = error[0] * SIZES[place];
                return jet(section, 0.75 * (flat ? 1 : truth) * (1 + common + own));
              });
      Ranking.Row row = row(rank(family, TWO, List.of(lip("teeth")), 2e-3), "teeth");
      if (row.tiedWith().isEmpty()) {
        clear++;
        wrong += (row.rank() == 1) == (truth < 1) ? 0 : 1;
      }
    }
    assertThat(clear).as("seed %d", SEED).isGreaterThan(pairs / 3);
    assertThat(wrong).as("seed %d, of %d", SEED, clear).isLessThanOrEqualTo(clear / 50);
  }
}
