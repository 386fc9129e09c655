package hemline.solver.study;

import hemline.shared.problem.Problem;
import hemline.shared.profile.LipProfile;
import hemline.shared.result.SectionResult;
import hemline.shared.section.SealSection;
import hemline.solver.flow.CancelToken;
import hemline.solver.flow.ProgressListener;
import hemline.solver.refine.SectionFamily;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.function.Consumer;
import java.util.stream.Collectors;

/**
 * Ranks lips by leak against a baseline at one gap or over a distribution of gaps, and of speeds of
 * the ground.
 *
 * <p>The score over the gaps is the ratio of the weighted sums of leak: the leak of a long seal
 * over rough ground whose length is spread over the gaps like the weights. A lip stands above
 * another only where the band of their leak ratio, which has its own grid convergence, excludes 1;
 * else they tie. A rank is one more than the number of lips that are clearly better; rows go by
 * rank and within a rank by score. Ties are not transitive: of three lips the first may tie with
 * the second and the second with the third while the first is clearly better than the third.
 */
public final class RankingStudy {
  private final SectionFamily family;
  private final Consumer<SectionResult> taker;

  public RankingStudy(SectionFamily family) {
    this(family, answer -> {});
  }

  /**
   * A study that tells its answers one by one.
   *
   * @param taker is given each answer as soon as it is there, on the solving threads, in no order
   */
  public RankingStudy(SectionFamily family, Consumer<SectionResult> taker) {
    this.family = family;
    this.taker = taker;
  }

  /**
   * What is wrong with a ranking that a user asked for; empty when it can be run.
   *
   * @see #rank
   */
  public static List<Problem> check(
      List<LipProfile> candidates, LipProfile baseline, List<Double> gaps) {
    List<Problem> problems = new ArrayList<>();
    if (gaps.isEmpty()) {
      problems.add(new Problem("ranking.gaps", "gaps", "a ranking needs at least one gap"));
    }
    for (double gap : gaps) {
      if (!(gap > 0) || !Double.isFinite(gap)) {
        problems.add(
            new Problem("ranking.gaps", "gaps", "a gap must be positive, got " + gap + " m"));
      }
    }
    Set<String> names = new HashSet<>();
    for (LipProfile candidate : candidates) {
      if (!names.add(candidate.name())) {
        problems.add(
            new Problem(
                "ranking.names",
                candidate.name(),
                "two lips have this name; give each lip of a ranking a name of its own"));
      } else if (candidate.name().equals(baseline.name()) && !candidate.equals(baseline)) {
        problems.add(
            new Problem(
                "ranking.names",
                candidate.name(),
                "a candidate has the baseline's name but another shape; rename one of them"));
      }
    }
    return problems;
  }

  /**
   * Solves every lip at every gap and ranks the lips.
   *
   * @param candidates lips with different names
   * @param baseline what they are measured against; added as a row when not among them
   * @param ground gaps, and how much of the seal lies over each
   * @param conditions suction, ground motion, fluid and bumps; its profile and gap are not used
   * @throws IllegalArgumentException for anything that {@link #check} reports
   */
  public RankingAnswer rank(
      List<LipProfile> candidates,
      LipProfile baseline,
      GapDistribution ground,
      SealSection conditions,
      RunOptions options,
      CancelToken cancel,
      ProgressListener progress) {
    return rank(
            candidates,
            List.of(baseline),
            ground,
            GroundSpeeds.of(conditions.ground().speed()),
            conditions,
            options,
            cancel,
            progress)
        .get(0);
  }

  /**
   * The same over several speeds of the ground, and beside one baseline after the other.
   *
   * @param baselines at least one; each is a row of all rankings
   * @param speeds across the seal, in place of that of the conditions
   * @return a ranking for each baseline
   */
  public List<RankingAnswer> rank(
      List<LipProfile> candidates,
      List<LipProfile> baselines,
      GapDistribution ground,
      GroundSpeeds speeds,
      SealSection conditions,
      RunOptions options,
      CancelToken cancel,
      ProgressListener progress) {
    List<Problem> problems = new ArrayList<>();
    baselines.forEach(b -> problems.addAll(check(candidates, b, ground.gaps())));
    if (!problems.isEmpty()) {
      throw new IllegalArgumentException(
          problems.stream().map(Problem::toString).collect(Collectors.joining("; ")));
    }
    List<LipProfile> profiles = new ArrayList<>(candidates);
    baselines.stream().filter(b -> !profiles.contains(b)).forEach(profiles::add);
    List<Question> questions = new ArrayList<>();
    for (LipProfile profile : profiles) {
      speeds.sections(profile, ground, conditions).forEach(s -> questions.add(Question.of(s)));
    }
    List<Solved> solved =
        SolvePool.solve(
            questions,
            family,
            options,
            cancel,
            progress,
            (number, answer) -> taker.accept(answer.answer().result()));
    List<SectionAnswer> answers = solved.stream().map(Solved::answer).toList();
    return baselines.stream()
        .map(
            b ->
                RankingTable.build(
                    profiles, profiles.indexOf(b), ground, speeds, conditions.suction(), solved))
        .map(ranking -> new RankingAnswer(ranking, answers))
        .toList();
  }
}
