package hemline.solver.rig;

import hemline.shared.problem.Notice;
import hemline.shared.result.Estimate;
import hemline.shared.result.SolveStatus;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What is predicted for a point.
 *
 * @param gap m
 * @param suction Pa
 * @param status how the solve ended
 * @param discharge coefficient; null without a usable flow
 * @param notices of the solve
 */
public record Prediction(
    double gap,
    double suction,
    SolveStatus status,
    @Nullable Estimate discharge,
    List<Notice> notices) {
  public Prediction {
    notices = List.copyOf(notices);
  }
}
