package hemline.solver.improve;

import hemline.shared.profile.LipDrawing;
import hemline.shared.profile.LipProfile;
import hemline.shared.result.SolveStatus;
import hemline.solver.study.Placement;
import hemline.solver.study.Ranking;
import hemline.solver.study.RankingAnswer;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What a search for a better lip found.
 *
 * @param start the lip to be better than
 * @param lengths that were changed, with their limits
 * @param history all evaluations in their order
 * @param refusal most frequent reason why a lip could not be built; empty where all could
 * @param lips those that were proven, in the order of {@link #proof}; empty when stopped before
 * @param toStart the proof: the lips and the flat one beside the start; null when stopped before
 * @param toFlat the same beside the flat lip
 * @param status of the search: CONVERGED, or CANCELLED when stopped
 */
public record Improvement(
    LipProfile start,
    List<NamedLength> lengths,
    List<Evaluation> history,
    String refusal,
    List<Found> lips,
    @Nullable RankingAnswer toStart,
    @Nullable RankingAnswer toFlat,
    SolveStatus status) {

  /**
   * A lip that was found.
   *
   * @param drawing with its name
   * @param profile the same, resolved
   * @param evaluation the search's
   */
  public record Found(LipDrawing drawing, LipProfile profile, Evaluation evaluation) {}

  public Improvement {
    lengths = List.copyOf(lengths);
    history = List.copyOf(history);
    lips = List.copyOf(lips);
  }

  /** Best found lip by the proof; null without one. */
  public @Nullable Found best() {
    Ranking proof = toStart == null ? null : toStart.ranking();
    if (proof == null) {
      return null;
    }
    for (Ranking.Row row : proof.rows()) {
      for (Found lip : lips) {
        if (lip.profile().name().equals(row.profile())) {
          return lip;
        }
      }
    }
    return null;
  }

  /** Row of a lip in a proof; null where it has none. */
  public static Ranking.@Nullable Row row(@Nullable RankingAnswer proof, String name) {
    return proof == null
        ? null
        : proof.ranking().rows().stream()
            .filter(r -> r.profile().equals(name))
            .findFirst()
            .orElse(null);
  }

  /** True where the best lip leaks less than the start beyond the band. */
  public boolean proven() {
    Found best = best();
    Ranking.Row row = best == null ? null : row(toStart, best.profile().name());
    return row != null && row.placement().group() == Placement.Group.LESS;
  }
}
