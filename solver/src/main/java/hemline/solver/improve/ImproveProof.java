package hemline.solver.improve;

import hemline.shared.profile.LipProfile;
import hemline.shared.result.SolveStatus;
import hemline.shared.vehicle.Machine;
import hemline.solver.flow.CancelToken;
import hemline.solver.flow.ProgressListener;
import hemline.solver.plenum.LipDownforce;
import hemline.solver.plenum.MachineBalance;
import hemline.solver.plenum.MachineStudy;
import hemline.solver.refine.SectionFamily;
import hemline.solver.study.LeakStudy;
import hemline.solver.study.PlainFlat;
import hemline.solver.study.RankingAnswer;
import hemline.solver.study.RankingStudy;
import hemline.solver.study.ResultStore;
import hemline.solver.study.RunOptions;
import java.util.ArrayList;
import java.util.List;

/**
 * Proves what a search found: solved anew on finer grids, beside the start and the flat lip. A leak
 * is ranked at all gaps and speeds; a downforce comes from the whole balance of the machine with
 * each lip all round in turn.
 */
final class ImproveProof {
  /** Softness that the valve is set for; it does not count here. */
  private static final double FACTOR = 1.5;

  private final SectionFamily family;
  private final RunOptions options;
  private final CancelToken cancel;
  private final ProgressListener progress;

  ImproveProof(
      SectionFamily family, RunOptions options, CancelToken cancel, ProgressListener progress) {
    this.family = family;
    this.options = options;
    this.cancel = cancel;
    this.progress = progress;
  }

  /**
   * The proof of found lips.
   *
   * @param searched without proof
   */
  Improvement of(Improvement searched, List<Improvement.Found> found) {
    List<LipProfile> lips = new ArrayList<>();
    found.forEach(f -> lips.add(f.profile()));
    LipProfile start = searched.asked().start();
    LipProfile flat = PlainFlat.asWideAs(start);
    boolean apart = !flat.name().equals(start.name()) && !flat.outline().equals(start.outline());
    if (searched.asked().goal() instanceof DownforceGoal goal) {
      if (apart) {
        lips.add(flat);
      }
      MachineBalance balance = balance(new LipDownforce(goal.machine()).with(start), lips);
      return cancel.isCancelled()
          ? searched.ended(SolveStatus.CANCELLED)
          : searched.proven(new Improvement.Proof(found, null, null, balance));
    }
    List<LipProfile> baselines = apart ? List.of(start, flat) : List.of(start);
    List<RankingAnswer> proofs = rank((LeakGoal) searched.asked().goal(), lips, baselines);
    return cancel.isCancelled()
        ? searched.ended(SolveStatus.CANCELLED)
        : searched.proven(
            new Improvement.Proof(found, proofs.get(0), proofs.get(proofs.size() - 1), null));
  }

  private List<RankingAnswer> rank(
      LeakGoal goal, List<LipProfile> lips, List<LipProfile> baselines) {
    return new RankingStudy(family)
        .rank(
            lips,
            baselines,
            goal.ground(),
            goal.speeds(),
            goal.conditions(),
            options,
            cancel,
            progress);
  }

  private MachineBalance balance(Machine machine, List<LipProfile> lips) {
    return new MachineStudy(new LeakStudy(family, ResultStore.none()))
        .of(machine, lips, FACTOR, options, cancel, progress);
  }
}
