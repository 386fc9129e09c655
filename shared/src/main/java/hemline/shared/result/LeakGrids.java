package hemline.shared.result;

import java.util.List;

/**
 * A leak grid by grid.
 *
 * @param own leak on each usable grid, coarsest first; empty where it is not known by grid
 * @param otherModel leak on the coarsest grid with the other plausible flow model; empty for none
 */
public record LeakGrids(List<GridLeak> own, List<GridLeak> otherModel) {
  /** A leak that is not known grid by grid. */
  public static final LeakGrids NONE = new LeakGrids(List.of(), List.of());

  public LeakGrids {
    own = List.copyOf(own);
    otherModel = List.copyOf(otherModel);
  }
}
