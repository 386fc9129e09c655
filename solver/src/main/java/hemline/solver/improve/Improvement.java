package hemline.solver.improve;

import hemline.shared.profile.LipDrawing;
import hemline.shared.profile.LipProfile;
import hemline.shared.result.Estimate;
import hemline.shared.result.SolveStatus;
import hemline.solver.plenum.MachineBalance;
import hemline.solver.plenum.RankedLip;
import hemline.solver.study.Ranking;
import hemline.solver.study.RankingAnswer;
import java.util.Comparator;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What a search for a better lip found.
 *
 * @param asked what was asked
 * @param history all evaluations in their order
 * @param refusal most frequent reason why a lip could not be built; empty where all could
 * @param proof of the lips found
 * @param status of the search: CONVERGED, CANCELLED when stopped, FAILED without a usable flow
 */
public record Improvement(
    ImproveStudy.Asked asked,
    List<Evaluation> history,
    String refusal,
    Proof proof,
    SolveStatus status) {

  /**
   * A lip that was found.
   *
   * @param drawing with its name
   * @param profile the same, resolved
   * @param evaluation the search's
   */
  public record Found(LipDrawing drawing, LipProfile profile, Evaluation evaluation) {}

  /**
   * Fresh solves of the lips found.
   *
   * @param lips those that were proven; empty when stopped before
   * @param toStart the proof of a leak: the lips and the flat one beside the start; null when
   *     stopped before, and for a downforce
   * @param toFlat the same beside the flat lip
   * @param balance the proof of a downforce: the machine with the start, and with the others tried
   *     in its place; null when stopped before, and for a leak
   */
  public record Proof(
      List<Found> lips,
      @Nullable RankingAnswer toStart,
      @Nullable RankingAnswer toFlat,
      @Nullable MachineBalance balance) {
    static final Proof NONE = new Proof(List.of(), null, null, null);

    public Proof {
      lips = List.copyOf(lips);
    }
  }

  public Improvement {
    history = List.copyOf(history);
  }

  /** What a search has tried, without a proof. */
  public static Improvement without(
      ImproveStudy.Asked asked, List<Evaluation> history, String refusal, SolveStatus status) {
    return new Improvement(asked, history, refusal, Proof.NONE, status);
  }

  Improvement ended(SolveStatus how) {
    return new Improvement(asked, history, refusal, Proof.NONE, how);
  }

  /** The same with its proof. */
  public Improvement proven(Proof found) {
    return new Improvement(asked, history, refusal, found, SolveStatus.CONVERGED);
  }

  /** Best found lip by the proof; null without one. */
  public @Nullable Found best() {
    return proof.lips().stream()
        .filter(lip -> relative(lip.profile().name()) != null)
        .min(
            Comparator.<Found>comparingInt(lip -> rank(lip.profile().name()))
                .thenComparingDouble(lip -> merit(lip.profile().name())))
        .orElse(null);
  }

  /** Proven leak or downforce of a lip over that of the start; null where it has none. */
  public @Nullable Estimate relative(String name) {
    RankedLip force = ranked(name);
    if (proof.balance() != null) {
      return force == null ? null : force.relative();
    }
    Ranking.Row row = row(proof.toStart(), name);
    return row == null ? null : row.relativeLeak();
  }

  private int rank(String name) {
    RankedLip force = ranked(name);
    Ranking.Row row = row(proof.toStart(), name);
    return force != null ? force.rank() : row != null ? row.rank() : Integer.MAX_VALUE;
  }

  /** The less the better. */
  private double merit(String name) {
    Estimate relative = relative(name);
    double value = relative == null ? Double.NaN : relative.value();
    return proof.balance() == null ? value : -value;
  }

  /** A lip on the machine; null where it has no place, and for a leak. */
  public @Nullable RankedLip ranked(String name) {
    return proof.balance() == null
        ? null
        : proof.balance().changes().lips().stream()
            .filter(l -> l.name().equals(name))
            .findFirst()
            .orElse(null);
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

  /** True where the best lip leaks less, or holds down more, than the start beyond the band. */
  public boolean proven() {
    Found best = best();
    Estimate relative = best == null ? null : relative(best.profile().name());
    return relative != null && (proof.balance() == null ? relative.high() < 1 : relative.low() > 1);
  }
}
