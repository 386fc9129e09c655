package hemline.viewer.model;

import hemline.shared.profile.LipDrawing;
import hemline.shared.profile.LipFindings;
import hemline.shared.profile.LipProfile;
import hemline.shared.profile.LipResolver;
import hemline.shared.result.SectionResult;
import hemline.shared.section.SealSection;
import hemline.solver.flow.CancelToken;
import hemline.solver.refine.SectionFamily;
import hemline.solver.study.RunOptions;
import hemline.solver.study.SectionAnswer;
import hemline.solver.study.SectionStudy;
import hemline.viewer.edit.History;
import java.util.concurrent.Executor;
import java.util.function.UnaryOperator;
import javafx.beans.property.ReadOnlyBooleanProperty;
import javafx.beans.property.ReadOnlyBooleanWrapper;
import javafx.beans.property.ReadOnlyDoubleProperty;
import javafx.beans.property.ReadOnlyDoubleWrapper;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import org.jspecify.annotations.Nullable;

/**
 * The lip on the bench with its conditions, its undo history and the flow on show.
 *
 * <p>All methods belong to one thread, the screen's; solves run in the background and come back to
 * it. While a drag is open a coarse solve follows each change; when it ends the full solve runs.
 */
public final class Workbench {
  private final SectionFamily family;
  private final Executor screen;
  private final Executor full;
  private final Follower follower;
  private final ThinPartCheck thinParts;
  private final History<LipDrawing> history;
  private final ReadOnlyObjectWrapper<LipDrawing> drawing;
  private final ReadOnlyObjectWrapper<LipFindings> findings;
  private final ReadOnlyObjectWrapper<Setting> setting = new ReadOnlyObjectWrapper<>(Setting.USUAL);
  private final ReadOnlyObjectWrapper<@Nullable Shown> shown = new ReadOnlyObjectWrapper<>();
  private final ReadOnlyObjectWrapper<RunOptions> options =
      new ReadOnlyObjectWrapper<>(RunOptions.DEFAULT);
  private final ReadOnlyObjectWrapper<@Nullable SectionResult> failure =
      new ReadOnlyObjectWrapper<>();
  private final ReadOnlyObjectWrapper<@Nullable Kept> kept = new ReadOnlyObjectWrapper<>();
  private final ReadOnlyBooleanWrapper stale = new ReadOnlyBooleanWrapper();
  private final ReadOnlyBooleanWrapper behind = new ReadOnlyBooleanWrapper();
  private final ReadOnlyBooleanWrapper running = new ReadOnlyBooleanWrapper();
  private final ReadOnlyBooleanWrapper canUndo = new ReadOnlyBooleanWrapper();
  private final ReadOnlyBooleanWrapper canRedo = new ReadOnlyBooleanWrapper();
  private final ReadOnlyDoubleWrapper progress = new ReadOnlyDoubleWrapper();
  private @Nullable CancelToken cancel;
  private boolean dragging;
  private boolean roughly;
  private boolean followed;
  private boolean begun;
  private boolean drawnHere;

  /**
   * Puts a lip on the bench; nothing is solved yet.
   *
   * @param family solves sections
   * @param screen runs what must happen on the screen's thread
   */
  public Workbench(LipDrawing first, SectionFamily family, Executor screen) {
    this.family = family;
    this.screen = screen;
    this.full = SolveThreads.solve("hemline-bench");
    this.follower =
        new Follower(
            family,
            SolveThreads.preview("hemline-preview"),
            System::nanoTime,
            flow -> screen.execute(() -> previewed(flow)),
            () -> screen.execute(this::lost));
    this.thinParts =
        new ThinPartCheck(
            SolveThreads.solve("hemline-check"),
            (of, found) -> screen.execute(() -> checked(of, found)));
    history = new History<>(first);
    drawing = new ReadOnlyObjectWrapper<>(first);
    findings = new ReadOnlyObjectWrapper<>(LipResolver.check(first));
  }

  public ReadOnlyObjectProperty<LipDrawing> drawing() {
    return drawing.getReadOnlyProperty();
  }

  /**
   * What is wrong with the drawing, or the lip it makes. During a drag the thin parts among it may
   * be some moments older.
   */
  public ReadOnlyObjectProperty<LipFindings> findings() {
    return findings.getReadOnlyProperty();
  }

  public ReadOnlyObjectProperty<Setting> setting() {
    return setting.getReadOnlyProperty();
  }

  /** The flow on show; null before the first solve. */
  public ReadOnlyObjectProperty<@Nullable Shown> shown() {
    return shown.getReadOnlyProperty();
  }

  /** The lip set aside for comparison; null for none. */
  public ReadOnlyObjectProperty<@Nullable Kept> kept() {
    return kept.getReadOnlyProperty();
  }

  /** Sets the lip with its flow aside, to compare others with it; nothing without a full flow. */
  public void keep() {
    Shown now = shown.get();
    if (now != null && !now.preview() && !stale.get()) {
      kept.set(new Kept(drawing.get(), setting.get(), now));
    }
  }

  /** Forgets the lip that was set aside. */
  public void dropKept() {
    kept.set(null);
  }

  /** Exchanges the lip on the bench with the one set aside; both keep their flows. */
  public void swapKept() {
    Kept other = kept.get();
    if (other == null) {
      return;
    }
    keep();
    stop();
    history.put(other.drawing());
    setting.set(other.setting());
    shown.set(other.shown());
    begun = true;
    refresh();
  }

  public ReadOnlyObjectProperty<RunOptions> options() {
    return options.getReadOnlyProperty();
  }

  /** Answer of the last full solve if it found no flow, else null. */
  public ReadOnlyObjectProperty<@Nullable SectionResult> failure() {
    return failure.getReadOnlyProperty();
  }

  /** True when the flow on show belongs to another drawing or other conditions. */
  public ReadOnlyBooleanProperty stale() {
    return stale.getReadOnlyProperty();
  }

  /**
   * True when the flow on show is {@linkplain #stale stale} and nothing newer follows at once:
   * while something is dragged its flow comes some moments later, and that is not meant.
   */
  public ReadOnlyBooleanProperty behind() {
    return behind.getReadOnlyProperty();
  }

  /** True while the full solve runs. */
  public ReadOnlyBooleanProperty running() {
    return running.getReadOnlyProperty();
  }

  /** Share of the full solve that is done, 0 to 1. */
  public ReadOnlyDoubleProperty progress() {
    return progress.getReadOnlyProperty();
  }

  public ReadOnlyBooleanProperty canUndo() {
    return canUndo.getReadOnlyProperty();
  }

  public ReadOnlyBooleanProperty canRedo() {
    return canRedo.getReadOnlyProperty();
  }

  /** Puts another lip on the bench; the history begins anew, no flow is shown. */
  public void open(LipDrawing other) {
    open(other, false);
  }

  /** Puts a lip on the bench that was drawn here and lies in no file; else as {@link #open}. */
  public void draw(LipDrawing other) {
    open(other, true);
  }

  /** True while the lip on the bench is one that was put there by {@link #draw}. */
  public boolean drawnHere() {
    return drawnHere;
  }

  private void open(LipDrawing other, boolean here) {
    stop();
    drawnHere = here;
    history.restart(other);
    shown.set(null);
    begun = false;
    refresh();
  }

  /** Changes the drawing by one step, or as part of the open drag. */
  public void edit(UnaryOperator<LipDrawing> change) {
    history.put(change.apply(history.now()));
    refresh();
    changed();
  }

  public void undo() {
    history.undo();
    refresh();
    changed();
  }

  public void redo() {
    history.redo();
    refresh();
    changed();
  }

  /** Sets the conditions. */
  public void set(Setting other) {
    if (!other.equals(setting.get())) {
      setting.set(other);
      updateStale();
      changed();
    }
  }

  public void setOptions(RunOptions other) {
    options.set(other);
  }

  /** Starts a drag: changes up to {@link #endDrag} are one step and are followed coarsely. */
  public void beginDrag() {
    dragging = true;
    followed = begun;
    history.begin();
  }

  /** Ends a drag; the full solve runs if the flow is not that of the drawing. */
  public void endDrag() {
    if (!dragging) {
      return;
    }
    dragging = false;
    history.end();
    refresh();
    if (roughly) {
      find(LipResolver.check(drawing.get()), false);
    }
    Shown now = shown.get();
    if (begun && (stale.get() || now == null || now.preview())) {
      run();
    }
  }

  /** True between {@link #beginDrag} and {@link #endDrag}. */
  public boolean dragging() {
    return dragging;
  }

  /** The question on the bench; null while the drawing is no lip. */
  public @Nullable SealSection section() {
    LipProfile profile = findings.get().profile();
    return profile == null ? null : setting.get().section(profile);
  }

  /** Solves the section on three grids in the background; a solve that runs is stopped. */
  public void run() {
    SealSection section = section();
    if (section == null) {
      return;
    }
    stop();
    begun = true;
    CancelToken token = new CancelToken();
    cancel = token;
    running.set(true);
    progress.set(0);
    Placement placement = Placement.of(drawing.get());
    RunOptions how = options.get();
    full.execute(
        () -> {
          if (token.isCancelled()) {
            return;
          }
          SectionAnswer answer =
              new SectionStudy(family).run(section, how, token, (done, what) -> tell(token, done));
          screen.execute(() -> solved(token, section, placement, answer));
        });
    if (shown.get() == null) {
      follower.follow(section, placement);
    }
  }

  /** Stops what runs; the flow on show stays. */
  public void stop() {
    follower.stop();
    if (cancel != null) {
      cancel.cancel();
      cancel = null;
    }
    running.set(false);
  }

  private void tell(CancelToken token, double done) {
    screen.execute(
        () -> {
          if (token == cancel) {
            progress.set(done);
          }
        });
  }

  private void solved(
      CancelToken token, SealSection section, Placement placement, SectionAnswer answer) {
    if (token != cancel) {
      return;
    }
    cancel = null;
    running.set(false);
    if (answer.field() != null) {
      shown.set(new Shown(section, placement, answer.result(), answer.field(), false));
      failure.set(null);
    } else {
      failure.set(answer.result());
    }
    updateStale();
  }

  private void previewed(Shown flow) {
    if (!dragging && !running.get()) {
      return;
    }
    shown.set(flow);
    followed = true;
    updateStale();
  }

  private void lost() {
    followed = false;
    updateStale();
  }

  private void changed() {
    if (running.get()) {
      stop();
    }
    SealSection section = section();
    if (section == null || !begun) {
      return;
    }
    if (dragging) {
      follower.follow(section, Placement.of(drawing.get()));
    } else if (stale.get()) {
      run();
    }
  }

  private void refresh() {
    LipDrawing now = history.now();
    canUndo.set(history.canUndo());
    canRedo.set(history.canRedo());
    if (!now.equals(drawing.get())) {
      if (dragging) {
        find(LipResolver.checkShape(now).withThinParts(findings.get()), true);
        thinParts.ask(now);
      } else {
        find(LipResolver.check(now), false);
      }
      drawing.set(now);
    }
    updateStale();
  }

  private void find(LipFindings found, boolean withOlderThinParts) {
    roughly = withOlderThinParts;
    findings.set(found);
  }

  /** Thin parts of a drawing on the bench, or of one from some moments of the drag ago. */
  private void checked(LipDrawing of, LipFindings found) {
    if (roughly) {
      boolean newest = of.equals(drawing.get());
      find(newest ? found : findings.get().withThinParts(found), !newest);
      updateStale();
    }
  }

  private void updateStale() {
    Shown now = shown.get();
    SealSection section = section();
    boolean other = now != null && !now.section().equals(section);
    stale.set(other);
    behind.set(other && !(dragging && followed && section != null));
  }
}
