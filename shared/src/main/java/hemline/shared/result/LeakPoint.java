package hemline.shared.result;

import hemline.shared.fluid.Expansibility;
import hemline.shared.problem.Notice;
import hemline.shared.section.SealSection;
import hemline.shared.section.SectionConditions;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Leak of one lip at one gap, suction and ground motion, as the balance of a machine needs it.
 *
 * @param lip name
 * @param conditions that it was solved under
 * @param status how the solve ended
 * @param regime by the gap Reynolds number
 * @param discharge discharge coefficient; exactly 0 where no usable flow was found
 * @param lift upward force on the lip per metre of seal over the suction, m
 * @param notices warnings of the solve
 * @param grids the leak grid by grid
 */
public record LeakPoint(
    String lip,
    SectionConditions conditions,
    SolveStatus status,
    Regime regime,
    Estimate discharge,
    Estimate lift,
    List<Notice> notices,
    LeakGrids grids) {
  public LeakPoint {
    notices = List.copyOf(notices);
  }

  /**
   * The leak of a solved section.
   *
   * @param section whose suction is not 0
   * @param leak m²/s; null where no usable flow was found
   * @param force on the lip upwards, N/m
   */
  public static LeakPoint of(
      SealSection section,
      SolveStatus status,
      Regime regime,
      @Nullable Estimate leak,
      Estimate force,
      List<Notice> notices) {
    return new LeakPoint(
        section.profile().name(),
        SectionConditions.of(section),
        leak == null && status != SolveStatus.CANCELLED ? SolveStatus.FAILED : status,
        regime,
        leak == null ? Estimate.exact(0) : leak.times(discharge(section)),
        force.times(1 / section.suction()),
        notices,
        LeakGrids.NONE);
  }

  /** Discharge coefficient over the leak flow of a section, s/m². */
  public static double discharge(SealSection section) {
    double jet = Expansibility.jetSpeed(section.suction(), section.fluid().density());
    return Math.signum(section.suction()) / (section.gap() * jet);
  }

  /** The same with the leak on each usable grid, of this flow model and the other one. */
  public LeakPoint byGrid(List<GridLeak> own, List<GridLeak> other) {
    return new LeakPoint(
        lip, conditions, status, regime, discharge, lift, notices, new LeakGrids(own, other));
  }

  /** The same leak with another name of the lip. */
  public LeakPoint named(String name) {
    return new LeakPoint(name, conditions, status, regime, discharge, lift, notices, grids);
  }

  /** The same section with another leak and lift. */
  public LeakPoint with(Estimate otherDischarge, Estimate otherLift) {
    return new LeakPoint(
        lip, conditions, status, regime, otherDischarge, otherLift, notices, grids);
  }

  /** True when a flow was found. */
  public boolean usable() {
    return status == SolveStatus.CONVERGED || status == SolveStatus.UNSTEADY;
  }
}
