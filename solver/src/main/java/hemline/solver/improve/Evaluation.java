package hemline.solver.improve;

import hemline.shared.problem.Notice;
import hemline.shared.profile.LipDrawing;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * One lip that a search tried.
 *
 * @param number from 1
 * @param lengths m, in the order of the space
 * @param score leak over that of the start, on the search's mesh; not a number without a usable
 *     flow
 * @param doubt why the solver doubts the flow; null where it does not
 * @param drawing the lip
 */
public record Evaluation(
    int number, List<Double> lengths, double score, @Nullable Notice doubt, LipDrawing drawing) {
  /** A doubtful flow must be better by this much to count as good; judged, no source. */
  private static final double PENALTY = 1.05;

  public Evaluation {
    lengths = List.copyOf(lengths);
  }

  /** Score that the search goes by. */
  double penalised() {
    return doubt == null ? score : PENALTY * score;
  }
}
