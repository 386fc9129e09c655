package hemline.viewer.model;

import hemline.shared.profile.LipProfile;
import hemline.shared.vehicle.Machine;
import hemline.solver.flow.CancelToken;
import hemline.solver.plenum.MachineBalance;
import hemline.solver.plenum.MachineStudy;
import hemline.solver.refine.SectionFamily;
import hemline.solver.study.LeakStore;
import hemline.solver.study.LeakStudy;
import hemline.solver.study.RunOptions;
import java.time.Clock;
import java.util.List;
import java.util.concurrent.Executor;
import javafx.beans.property.ReadOnlyBooleanProperty;
import javafx.beans.property.ReadOnlyBooleanWrapper;
import javafx.beans.property.ReadOnlyDoubleProperty;
import javafx.beans.property.ReadOnlyDoubleWrapper;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;
import org.jspecify.annotations.Nullable;

/**
 * Balances a machine in the background. Sections are kept as they are solved, so a balance that is
 * stopped goes on where it was. All methods belong to the screen's thread.
 */
public final class MachineDesk {
  private final MachineStudy study;
  private final Executor screen;
  private final Clock clock;
  private final Executor background;
  private final ReadOnlyObjectWrapper<@Nullable Balanced> shown = new ReadOnlyObjectWrapper<>();
  private final ReadOnlyBooleanWrapper running = new ReadOnlyBooleanWrapper();
  private final ReadOnlyDoubleWrapper progress = new ReadOnlyDoubleWrapper();
  private final ReadOnlyStringWrapper state = new ReadOnlyStringWrapper("");
  private @Nullable CancelToken cancel;

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
  public MachineDesk(SectionFamily family, LeakStore kept, Executor screen, Clock clock) {
    this.study = new MachineStudy(new LeakStudy(family, kept));
    this.screen = screen;
    this.clock = clock;
    this.background = SolveThreads.solve("hemline-machine");
  }

  /** The balance on show; null for none. */
  public ReadOnlyObjectProperty<@Nullable Balanced> shown() {
    return shown.getReadOnlyProperty();
  }

  public ReadOnlyBooleanProperty running() {
    return running.getReadOnlyProperty();
  }

  /** Share of the sections that is solved, 0 to 1. */
  public ReadOnlyDoubleProperty progress() {
    return progress.getReadOnlyProperty();
  }

  /** What goes on and how long it may take, or why there is no balance. */
  public ReadOnlyStringProperty state() {
    return state.getReadOnlyProperty();
  }

  /**
   * Balances a machine.
   *
   * @param lips to try all round in place of the machine's own
   * @param factor by which the springs may be softer before a lip touches, for the valve setting
   */
  public void start(Machine machine, List<LipProfile> lips, double factor, RunOptions options) {
    stop();
    CancelToken token = new CancelToken();
    cancel = token;
    running.set(true);
    progress.set(0);
    state.set("Starting \u2026");
    long start = clock.millis();
    background.execute(() -> solve(machine, lips, factor, options, token, start));
  }

  /** Stops; the sections solved by then are kept. */
  public void stop() {
    if (cancel != null) {
      cancel.cancel();
    }
  }

  private void solve(
      Machine machine,
      List<LipProfile> lips,
      double factor,
      RunOptions options,
      CancelToken token,
      long start) {
    try {
      MachineBalance balance =
          study.of(
              machine,
              lips,
              factor,
              options,
              token,
              (done, what) -> screen.execute(() -> tell(token, done, what, start)));
      double seconds = 1e-3 * (clock.millis() - start);
      screen.execute(() -> end(token, new Balanced(balance, options.level().key(), seconds), ""));
    } catch (RuntimeException e) {
      String reason = e.getMessage() == null ? e.getClass().getSimpleName() : e.getMessage();
      screen.execute(() -> end(token, null, "The balance broke off: " + reason + "."));
    }
  }

  private void tell(CancelToken token, double done, String what, long start) {
    if (token == cancel && running.get()) {
      progress.set(Math.max(progress.get(), done));
      String left = TimeLeft.words(progress.get(), 1e-3 * (clock.millis() - start));
      state.set(
          token.isCancelled()
              ? "Stopping \u2026"
              : left.isEmpty() ? what : left + " \u00b7 " + what);
    }
  }

  private void end(CancelToken token, @Nullable Balanced found, String said) {
    if (token != cancel) {
      return;
    }
    cancel = null;
    running.set(false);
    if (found != null && !found.balance().complete()) {
      state.set(found.balance().notices().get(0).text());
    } else {
      state.set(said);
      if (found != null) {
        shown.set(found);
      }
    }
  }
}
