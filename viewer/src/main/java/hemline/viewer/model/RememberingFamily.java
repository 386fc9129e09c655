package hemline.viewer.model;

import hemline.shared.section.DuctSection;
import hemline.shared.section.SealSection;
import hemline.solver.flow.CancelToken;
import hemline.solver.flow.Closure;
import hemline.solver.flow.ProgressListener;
import hemline.solver.flow.SolvedSection;
import hemline.solver.grid.MeshLevel;
import hemline.solver.refine.GridFamily;
import hemline.solver.refine.GridSolution;
import hemline.solver.refine.SectionFamily;
import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.List;

/**
 * Remembers the lip sections that were solved to their end, so that a study that was stopped goes
 * on where it was instead of from its beginning.
 *
 * <p>An answer depends on the arguments alone, the flows to start from among them; only the same
 * arguments find it again, so a study that goes on has the bits of one that was never stopped.
 */
public final class RememberingFamily implements SectionFamily {
  /** Cells of all sections remembered, those used last: about a quarter of a gigabyte. */
  private static final long MOST_CELLS = 600_000;

  private final SectionFamily family;
  private final LinkedHashMap<Asked, GridFamily> solved = new LinkedHashMap<>(16, 0.75f, true);
  private final long most;
  private long cells;

  /** What was asked; a flow to start from is the same only if it is the same object. */
  private record Asked(
      SealSection section, MeshLevel level, int grids, Closure closure, List<Start> before) {}

  private record Start(SolvedSection flow) {
    @Override
    public boolean equals(Object other) {
      return other instanceof Start start && start.flow == flow;
    }

    @Override
    public int hashCode() {
      return System.identityHashCode(flow);
    }
  }

  /**
   * Remembers answers of a family.
   *
   * @param family solves what is not remembered
   */
  public RememberingFamily(SectionFamily family) {
    this(family, MOST_CELLS);
  }

  /** The same with another limit on the cells of all sections remembered. */
  RememberingFamily(SectionFamily family, long most) {
    this.family = family;
    this.most = most;
  }

  /** Forgets all, since a study came to its end and is kept as a whole. */
  public void forget() {
    synchronized (solved) {
      solved.clear();
      cells = 0;
    }
  }

  @Override
  public GridFamily solve(
      SealSection section,
      MeshLevel level,
      int grids,
      Closure closure,
      CancelToken cancel,
      ProgressListener progress) {
    return solve(section, level, grids, closure, List.of(), cancel, progress);
  }

  @Override
  public GridFamily solve(
      SealSection section,
      MeshLevel level,
      int grids,
      Closure closure,
      List<SolvedSection> before,
      CancelToken cancel,
      ProgressListener progress) {
    Asked asked =
        new Asked(section, level, grids, closure, before.stream().map(Start::new).toList());
    synchronized (solved) {
      GridFamily known = solved.get(asked);
      if (known != null) {
        return known;
      }
    }
    GridFamily answer = family.solve(section, level, grids, closure, before, cancel, progress);
    if (cancel.isCancelled() || answer.cancelled()) {
      return answer;
    }
    remember(asked, slim(answer));
    return answer;
  }

  private void remember(Asked asked, GridFamily answer) {
    synchronized (solved) {
      GridFamily same = solved.put(asked, answer);
      cells += cells(answer) - (same == null ? 0 : cells(same));
      Iterator<GridFamily> eldest = solved.values().iterator();
      while (cells > most && eldest.hasNext()) {
        cells -= cells(eldest.next());
        eldest.remove();
      }
    }
  }

  private static long cells(GridFamily family) {
    return family.grids().stream().mapToLong(g -> g.run().cells()).sum();
  }

  /** Without what only a picture of wall shear needs. */
  private static GridFamily slim(GridFamily family) {
    List<GridSolution> grids =
        family.grids().stream().map(g -> new GridSolution(g.run(), g.field())).toList();
    return new GridFamily(family.closure(), grids, family.start());
  }

  @Override
  public GridFamily solve(
      DuctSection section,
      MeshLevel level,
      int grids,
      Closure closure,
      CancelToken cancel,
      ProgressListener progress) {
    return family.solve(section, level, grids, closure, cancel, progress);
  }
}
