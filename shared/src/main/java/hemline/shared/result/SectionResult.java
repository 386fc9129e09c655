package hemline.shared.result;

import hemline.shared.problem.Notice;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * Answer to one section: every figure as an estimate, how the solve ended and what to know about
 * it.
 *
 * @param name name of the lip or duct
 * @param gap reference gap, m
 * @param suction asked suction (lip) or measured pressure drop (duct), Pa
 * @param groundSpeed m/s
 * @param spanwiseSpeed m/s
 * @param status how the finest grid ended
 * @param regime by the gap Reynolds number of the result
 * @param closure name of the closure used: laminar, sst, …
 * @param figures scalars as estimates; figures that do not apply are absent
 * @param stageShares share of the pressure drop by constriction
 * @param carryOver kinetic energy kept from each constriction to the next
 * @param trappedVortices eddies, strongest first
 * @param notices warnings
 * @param grids coarsest first
 */
public record SectionResult(
    String name,
    double gap,
    double suction,
    double groundSpeed,
    double spanwiseSpeed,
    SolveStatus status,
    Regime regime,
    String closure,
    Map<Figure, Estimate> figures,
    List<Estimate> stageShares,
    List<Estimate> carryOver,
    List<TrappedVortex> trappedVortices,
    List<Notice> notices,
    List<GridRun> grids) {

  /**
   * A closed eddy with the estimate of its strength.
   *
   * @param strength in units of the leak flow
   * @param x centre, m
   * @param y centre, m
   */
  public record TrappedVortex(Estimate strength, double x, double y) {}

  public SectionResult {
    figures = Map.copyOf(figures);
    stageShares = List.copyOf(stageShares);
    carryOver = List.copyOf(carryOver);
    trappedVortices = List.copyOf(trappedVortices);
    notices = List.copyOf(notices);
    grids = List.copyOf(grids);
  }

  /** The same answer with another name of the lip. */
  public SectionResult named(String other) {
    return with(other, notices);
  }

  /** The finest grid on which a flow was found; null for none. */
  public @Nullable GridRun finest() {
    GridRun found = null;
    for (GridRun run : grids) {
      boolean usable =
          run.status() == SolveStatus.CONVERGED || run.status() == SolveStatus.UNSTEADY;
      found = usable ? run : found;
    }
    return found;
  }

  /** The same answer with other notices. */
  public SectionResult withNotices(List<Notice> others) {
    return with(name, others);
  }

  private SectionResult with(String otherName, List<Notice> others) {
    return new SectionResult(
        otherName,
        gap,
        suction,
        groundSpeed,
        spanwiseSpeed,
        status,
        regime,
        closure,
        figures,
        stageShares,
        carryOver,
        trappedVortices,
        others,
        grids);
  }
}
