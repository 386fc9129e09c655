package hemline.solver.refine;

import hemline.shared.result.GridRun;
import hemline.shared.result.SolveStatus;
import hemline.solver.flow.Closure;
import hemline.solver.flow.SolvedSection;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * One section solved on its grids with one flow model.
 *
 * <p>The position in the list is the grid's place in the family: families of two sections hold
 * matching grids at equal positions, so that their errors can cancel in a ratio. A grid that failed
 * or was cancelled therefore keeps its place with that status, or the list ends before it.
 *
 * @param closure the flow model used, never {@link Closure#AUTO}
 * @param grids coarsest first, at most three, cell counts about 4 : 9 : 16; may be shorter or empty
 * @param start the flow on the coarsest grid for similar sections to start from; null when it did
 *     not converge or the family offers none
 * @param lost flow model that was tried before and gave no usable flow on any grid; null when the
 *     first one stands
 * @param other another flow on the finest grid, found from fluid at rest there; null where none was
 *     looked for or found
 */
public record GridFamily(
    Closure closure,
    List<GridSolution> grids,
    @Nullable SolvedSection start,
    @Nullable Closure lost,
    @Nullable GridRun other) {
  public GridFamily {
    grids = List.copyOf(grids);
    if (closure == Closure.AUTO) {
      throw new IllegalArgumentException("a solved family names the flow model it used, not AUTO");
    }
  }

  /** A family of one flow under the model that was tried first. */
  public GridFamily(Closure closure, List<GridSolution> grids, @Nullable SolvedSection start) {
    this(closure, grids, start, null, null);
  }

  /** The same family, solved after another flow model had lost its flow. */
  GridFamily after(Closure lostClosure) {
    return new GridFamily(closure, grids, start, lostClosure, other);
  }

  /** The same family with another flow on its finest grid. */
  GridFamily beside(@Nullable GridRun otherRun) {
    return new GridFamily(closure, grids, start, lost, otherRun);
  }

  /** A family that offers no start to others. */
  public GridFamily(Closure closure, List<GridSolution> grids) {
    this(closure, grids, null);
  }

  /** True when a grid was stopped on request. */
  public boolean cancelled() {
    return grids.stream().anyMatch(g -> g.run().status() == SolveStatus.CANCELLED);
  }

  /** The runs by place. */
  public List<GridRun> runs() {
    return grids.stream().map(GridSolution::run).toList();
  }

  /** The finest grid with a usable flow, null when there is none. */
  public @Nullable GridSolution finestUsable() {
    int k = FigureSeries.of(this).finest();
    return k < 0 ? null : grids.get(k);
  }
}
