package hemline.solver.study;

import static hemline.solver.study.MadeUpFamily.SIZES;
import static hemline.solver.study.MadeUpFamily.jet;
import static hemline.solver.study.MadeUpFamily.lip;
import static hemline.solver.study.MadeUpFamily.section;

import hemline.shared.problem.Notice;
import hemline.shared.profile.LipProfile;
import hemline.solver.flow.CancelToken;
import hemline.solver.flow.Closure;
import hemline.solver.flow.ProgressListener;
import hemline.solver.grid.MeshLevel;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.stream.DoubleStream;

/** Rankings of made-up lips against a flat one. */
final class MadeUpRankings {
  static final LipProfile FLAT = lip("flat");
  static final RunOptions TWO = new RunOptions(MeshLevel.MEDIUM, Closure.SST, false, 2);

  private MadeUpRankings() {}

  static RankingAnswer rank(
      MadeUpFamily family, RunOptions options, List<LipProfile> candidates, double... gaps) {
    return new RankingStudy(family)
        .rank(
            candidates,
            FLAT,
            GapDistribution.even(DoubleStream.of(gaps).boxed().toList()),
            section(FLAT),
            options,
            new CancelToken(),
            ProgressListener.NONE);
  }

  static Ranking.Row row(RankingAnswer answer, String name) {
    return answer.ranking().rows().stream()
        .filter(r -> r.profile().equals(name))
        .findFirst()
        .orElseThrow();
  }

  /** Codes of what is told of the ranking itself, without what sections share. */
  static List<String> codes(Ranking ranking) {
    return ranking.notices().stream()
        .map(Notice::code)
        .filter(code -> code.startsWith("ranking."))
        .toList();
  }

  /** Coefficient of a lip on a grid: exact value times 1 + common and own error. */
  static MadeUpFamily.Leak leak(Map<String, Double> exact, double common, double own) {
    return (section, closure, place) -> {
      double cd = Objects.requireNonNull(exact.get(section.profile().name()));
      double sign = section.profile().name().hashCode() % 2 == 0 ? 1 : -1;
      double error = common * SIZES[place] + sign * own * SIZES[place];
      return jet(section, cd * (1 + error));
    };
  }

  static MadeUpFamily lips(Map<String, Double> exact, double common, double own) {
    return new MadeUpFamily(leak(exact, common, own));
  }
}
