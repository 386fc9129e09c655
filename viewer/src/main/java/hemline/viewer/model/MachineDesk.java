package hemline.viewer.model;

import hemline.shared.profile.LipProfile;
import hemline.shared.result.LeakPoint;
import hemline.shared.vehicle.Machine;
import hemline.solver.plenum.MachineBalance;
import hemline.solver.plenum.MachineStudy;
import hemline.solver.refine.SectionFamily;
import hemline.solver.study.LeakStudy;
import hemline.solver.study.ResultStore;
import hemline.solver.study.RunOptions;
import hemline.viewer.format.NoticeWords;
import java.time.Clock;
import java.util.List;
import java.util.concurrent.Executor;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import org.jspecify.annotations.Nullable;

/**
 * Balances a machine in the background. Sections are kept as they are solved, so a balance that is
 * stopped goes on where it was. All methods belong to the screen's thread.
 */
public final class MachineDesk {
  private final MachineStudy study;
  private final BackgroundWork work;
  private final ReadOnlyObjectWrapper<@Nullable Balanced> shown = new ReadOnlyObjectWrapper<>();

  /**
   * A balance with how it was made.
   *
   * @param balance complete
   * @param mesh level of its sections
   * @param seconds wall time
   */
  public record Balanced(MachineBalance balance, String mesh, double seconds) {}

  /**
   * A desk without a balance.
   *
   * @param kept sections solved before
   * @param screen runs what must happen on the screen's thread
   */
  public MachineDesk(
      SectionFamily family, ResultStore<LeakPoint> kept, Executor screen, Clock clock) {
    this.study = new MachineStudy(new LeakStudy(family, kept));
    this.work = new BackgroundWork("balance", screen, clock);
  }

  /** The balance on show; null for none. */
  public ReadOnlyObjectProperty<@Nullable Balanced> shown() {
    return shown.getReadOnlyProperty();
  }

  /** Shows no balance any more. */
  public void clear() {
    work.stop();
    shown.set(null);
  }

  /** The balance that runs, or why there is none. */
  public BackgroundWork work() {
    return work;
  }

  /**
   * Balances a machine.
   *
   * @param lips to try all round in place of the machine's own
   * @param factor by which the springs may be softer before a lip touches, for the valve setting
   */
  public void start(Machine machine, List<LipProfile> lips, double factor, RunOptions options) {
    work.start(
        (token, progress, seconds) ->
            new Balanced(
                study.of(machine, lips, factor, options, token, progress),
                options.level().key(),
                seconds.getAsDouble()),
        this::show,
        () -> {});
  }

  private void show(Balanced found) {
    if (found.balance().complete()) {
      shown.set(found);
    } else {
      work.tell(NoticeWords.of(found.balance().notices().get(0)));
    }
  }
}
