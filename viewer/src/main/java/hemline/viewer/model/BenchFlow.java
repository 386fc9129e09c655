package hemline.viewer.model;

import hemline.shared.profile.LipDrawing;
import hemline.shared.result.SectionResult;
import hemline.shared.section.SealSection;
import hemline.solver.refine.SectionFamily;
import hemline.solver.study.ComparableAnswer;
import hemline.solver.study.RunOptions;
import hemline.solver.study.SectionAnswer;
import java.util.concurrent.Executor;
import java.util.function.Supplier;
import javafx.beans.property.ReadOnlyBooleanProperty;
import javafx.beans.property.ReadOnlyBooleanWrapper;
import javafx.beans.property.ReadOnlyDoubleProperty;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import org.jspecify.annotations.Nullable;

/**
 * The flow on show at the bench, and the solves it comes from: the full one, and coarse ones that
 * follow a drag. All methods belong to the screen's thread.
 */
final class BenchFlow {
  private final Supplier<@Nullable SealSection> asked;
  private final Supplier<LipDrawing> drawing;
  private final FullSolve full;
  private final Follower follower;
  private final ReadOnlyObjectWrapper<@Nullable Shown> shown = new ReadOnlyObjectWrapper<>();
  private final ReadOnlyObjectWrapper<@Nullable SectionResult> failure =
      new ReadOnlyObjectWrapper<>();
  private final ReadOnlyBooleanWrapper stale = new ReadOnlyBooleanWrapper();
  private final ReadOnlyBooleanWrapper behind = new ReadOnlyBooleanWrapper();
  private boolean dragging;
  private boolean followed;
  private boolean begun;

  /**
   * No flow yet.
   *
   * @param screen runs what must happen on the screen's thread
   * @param asked the question on the bench; null while the drawing is no lip
   * @param drawing the lip on the bench
   */
  BenchFlow(
      SectionFamily family,
      Executor screen,
      Supplier<@Nullable SealSection> asked,
      Supplier<LipDrawing> drawing) {
    this.asked = asked;
    this.drawing = drawing;
    full = new FullSolve(family, screen);
    follower =
        new Follower(
            family,
            SolveThreads.preview("hemline-preview"),
            System::nanoTime,
            flow -> screen.execute(() -> previewed(flow)),
            () -> screen.execute(this::lost));
  }

  ReadOnlyObjectProperty<@Nullable Shown> shown() {
    return shown.getReadOnlyProperty();
  }

  ReadOnlyObjectProperty<@Nullable SectionResult> failure() {
    return failure.getReadOnlyProperty();
  }

  ReadOnlyBooleanProperty stale() {
    return stale.getReadOnlyProperty();
  }

  ReadOnlyBooleanProperty behind() {
    return behind.getReadOnlyProperty();
  }

  ReadOnlyBooleanProperty running() {
    return full.running();
  }

  ReadOnlyDoubleProperty progress() {
    return full.progress();
  }

  /** True once a flow was asked for: changes are followed from then on. */
  boolean begun() {
    return begun;
  }

  boolean dragging() {
    return dragging;
  }

  /** Shows the flow of another lip; null for one that is not solved. */
  void show(@Nullable Shown flow) {
    shown.set(flow);
    begun = flow != null;
  }

  /** Changes are followed coarsely from now on. */
  void beginDrag() {
    dragging = true;
    followed = begun;
  }

  void endDrag() {
    dragging = false;
  }

  /** Solves what a drag has left. */
  void finish(RunOptions options) {
    Shown now = shown.get();
    if (begun && (stale.get() || now == null || now.preview())) {
      run(options);
    }
  }

  void run(RunOptions options) {
    SealSection section = asked.get();
    if (section == null) {
      return;
    }
    stop();
    begun = true;
    Placement placement = Placement.of(drawing.get());
    full.start(section, options, answer -> solved(section, placement, answer));
    if (shown.get() == null) {
      follower.follow(section, placement);
    }
  }

  void stop() {
    follower.stop();
    full.stop();
  }

  private void solved(SealSection section, Placement placement, ComparableAnswer solved) {
    SectionAnswer answer = solved.answer();
    if (answer.field() != null) {
      shown.set(new Shown(section, placement, answer.result(), answer.field(), solved));
      failure.set(null);
    } else {
      failure.set(answer.result());
    }
    update();
  }

  private void previewed(Shown flow) {
    if (!dragging && !running().get()) {
      return;
    }
    shown.set(flow);
    followed = true;
    update();
  }

  private void lost() {
    followed = false;
    update();
  }

  /** Follows a change of the lip or its conditions. */
  void follow(RunOptions options) {
    if (running().get()) {
      stop();
    }
    SealSection section = asked.get();
    if (section == null || !begun) {
      return;
    }
    if (dragging) {
      follower.follow(section, Placement.of(drawing.get()));
    } else if (stale.get()) {
      run(options);
    }
  }

  /** Tells anew whether the flow on show is that of the question. */
  void update() {
    Shown now = shown.get();
    SealSection section = asked.get();
    boolean other = now != null && !now.section().equals(section);
    stale.set(other);
    behind.set(other && !(dragging && followed && section != null));
  }
}
