package hemline.solver.study;

import java.util.List;

/**
 * A ranking together with every answer it was built from, failed and cancelled ones included.
 *
 * @param ranking the table
 * @param answers lip by lip in the order of the candidates, baselines last where they are not among
 *     them, and for each lip gap by gap in the order of {@link Ranking#gaps} and speed by speed
 */
public record RankingAnswer(Ranking ranking, List<SectionAnswer> answers) {
  public RankingAnswer {
    answers = List.copyOf(answers);
  }
}
