package hemline.shared.result;

import hemline.shared.problem.Notice;
import java.util.List;

/**
 * Leak of one lip at one gap, suction and ground motion, as the balance of a machine needs it.
 *
 * @param lip name
 * @param gap m
 * @param suction Pa
 * @param groundSpeed across the seal, positive towards the plenum, m/s
 * @param spanwiseSpeed along the seal, m/s
 * @param status how the solve ended
 * @param regime by the gap Reynolds number
 * @param discharge discharge coefficient; exactly 0 where no usable flow was found
 * @param lift upward force on the lip per metre of seal over the suction, m
 * @param notices warnings of the solve
 */
public record LeakPoint(
    String lip,
    double gap,
    double suction,
    double groundSpeed,
    double spanwiseSpeed,
    SolveStatus status,
    Regime regime,
    Estimate discharge,
    Estimate lift,
    List<Notice> notices) {
  public LeakPoint {
    notices = List.copyOf(notices);
  }

  /** True when a flow was found. */
  public boolean usable() {
    return status == SolveStatus.CONVERGED || status == SolveStatus.UNSTEADY;
  }
}
