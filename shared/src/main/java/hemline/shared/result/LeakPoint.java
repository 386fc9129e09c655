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
 * @param grids leak on each usable grid, coarsest first; empty where it is not known by grid
 * @param otherModel leak on the coarsest grid with the other plausible flow model; empty for none
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
    List<Notice> notices,
    List<GridLeak> grids,
    List<GridLeak> otherModel) {
  public LeakPoint {
    notices = List.copyOf(notices);
    grids = List.copyOf(grids);
    otherModel = List.copyOf(otherModel);
  }

  /** A leak that is not known grid by grid. */
  public LeakPoint(
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
    this(
        lip,
        gap,
        suction,
        groundSpeed,
        spanwiseSpeed,
        status,
        regime,
        discharge,
        lift,
        notices,
        List.of(),
        List.of());
  }

  /** The same leak with another name of the lip. */
  public LeakPoint named(String name) {
    return new LeakPoint(
        name,
        gap,
        suction,
        groundSpeed,
        spanwiseSpeed,
        status,
        regime,
        discharge,
        lift,
        notices,
        grids,
        otherModel);
  }

  /** The same section with another leak and lift. */
  public LeakPoint with(Estimate otherDischarge, Estimate otherLift) {
    return new LeakPoint(
        lip,
        gap,
        suction,
        groundSpeed,
        spanwiseSpeed,
        status,
        regime,
        otherDischarge,
        otherLift,
        notices,
        grids,
        otherModel);
  }

  /** True when a flow was found. */
  public boolean usable() {
    return status == SolveStatus.CONVERGED || status == SolveStatus.UNSTEADY;
  }
}
