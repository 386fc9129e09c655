package hemline.viewer.project;

import hemline.shared.file.MachineFile;
import hemline.shared.problem.InputException;
import hemline.shared.result.Estimate;
import hemline.shared.result.LeakGrids;
import hemline.shared.result.LeakOrigin;
import hemline.shared.result.LeakPoint;
import hemline.shared.result.Regime;
import hemline.shared.result.SolveStatus;
import hemline.shared.vehicle.Machine;
import hemline.solver.flow.CancelToken;
import hemline.solver.flow.Closure;
import hemline.solver.flow.ProgressListener;
import hemline.solver.grid.MeshLevel;
import hemline.solver.plenum.MachineStudy;
import hemline.solver.refine.FamilySolver;
import hemline.solver.study.LeakStudy;
import hemline.solver.study.ResultStore;
import hemline.solver.study.RunOptions;
import java.nio.file.Path;
import java.util.List;

/**
 * Fills a folder with invented leaks for all sections of a machine, so that a build can rehearse
 * {@code balance} without solving anything. They are marked: only a balance that rehearses takes
 * them.
 */
public final class InventedLeaks implements ResultStore<LeakPoint> {
  /** Solver of invented leaks, which no solver takes for its own. */
  public static final String SOLVER = "invented for a rehearsal";

  private final KeptResults<LeakPoint> folder;

  private InventedLeaks(Path folder) {
    this.folder = KeptResults.leaks(folder, SOLVER);
  }

  /**
   * Invents the leaks.
   *
   * @param args a folder and machine files
   */
  public static void main(String[] args) throws InputException {
    MachineStudy study =
        new MachineStudy(new LeakStudy(new FamilySolver(), new InventedLeaks(Path.of(args[0]))));
    RunOptions options = new RunOptions(MeshLevel.COARSE, Closure.AUTO, false, 1);
    for (String file : List.of(args).subList(1, args.length)) {
      Machine machine = MachineFile.read(Path.of(file));
      study.of(machine, List.of(), 1, options, new CancelToken(), ProgressListener.NONE);
    }
  }

  @Override
  public LeakPoint find(LeakOrigin asked) {
    LeakPoint point =
        new LeakPoint(
            "invented",
            asked.conditions(),
            SolveStatus.CONVERGED,
            Regime.TURBULENT,
            new Estimate(0.75, 0.01, 0, 0, 0, Estimate.Trend.MONOTONE),
            Estimate.exact(0),
            List.of(),
            LeakGrids.NONE);
    folder.keep(asked, point);
    return point;
  }

  @Override
  public void keep(LeakOrigin asked, LeakPoint point) {
    throw new IllegalStateException("nothing is solved in a rehearsal");
  }
}
