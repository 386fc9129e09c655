package hemline.viewer.model;

import hemline.shared.profile.LipDrawing;
import hemline.shared.profile.LipFindings;
import hemline.shared.profile.LipProfile;
import hemline.shared.result.SectionResult;
import hemline.shared.section.SealSection;
import hemline.solver.grid.MeshLevel;
import hemline.solver.refine.SectionFamily;
import hemline.solver.study.RunOptions;
import hemline.viewer.edit.History;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Executor;
import java.util.function.UnaryOperator;
import javafx.beans.property.ReadOnlyBooleanProperty;
import javafx.beans.property.ReadOnlyBooleanWrapper;
import javafx.beans.property.ReadOnlyDoubleProperty;
import javafx.beans.property.ReadOnlyIntegerProperty;
import javafx.beans.property.ReadOnlyIntegerWrapper;
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
  /** Lips that can be set aside at once. */
  public static final int MOST_BESIDE = 3;

  private final BenchFlow flow;
  private final DrawingCheck check;
  private final History<Draft> history;
  private final ReadOnlyObjectWrapper<LipDrawing> drawing;
  private final ReadOnlyObjectWrapper<Setting> setting = new ReadOnlyObjectWrapper<>(Setting.USUAL);
  private final ReadOnlyObjectWrapper<RunOptions> options =
      new ReadOnlyObjectWrapper<>(RunOptions.DEFAULT);
  private final SetAside aside = new SetAside();
  private final ReadOnlyBooleanWrapper canUndo = new ReadOnlyBooleanWrapper();
  private final ReadOnlyBooleanWrapper canRedo = new ReadOnlyBooleanWrapper();
  private final ReadOnlyObjectWrapper<Map<String, Double>> measures =
      new ReadOnlyObjectWrapper<>(Map.of());
  private final ReadOnlyIntegerWrapper lip = new ReadOnlyIntegerWrapper();
  private int lips;
  private boolean drawnHere;

  /**
   * Puts a lip on the bench; nothing is solved yet.
   *
   * @param family solves sections
   * @param screen runs what must happen on the screen's thread
   */
  public Workbench(LipDrawing first, SectionFamily family, Executor screen) {
    history = new History<>(new Draft(first, Setting.USUAL, Map.of(), 0));
    drawing = new ReadOnlyObjectWrapper<>(first);
    flow = new BenchFlow(family, screen, this::section, drawing::get);
    check = new DrawingCheck(first, screen, flow::update);
  }

  /** Number of the lip on the bench: edits keep it, each lip that is put there gets another one. */
  ReadOnlyIntegerProperty lip() {
    return lip.getReadOnlyProperty();
  }

  public ReadOnlyObjectProperty<LipDrawing> drawing() {
    return drawing.getReadOnlyProperty();
  }

  /**
   * What is wrong with the drawing, or the lip it makes. During a drag the thin parts among it may
   * be some moments older.
   */
  public ReadOnlyObjectProperty<LipFindings> findings() {
    return check.findings();
  }

  public ReadOnlyObjectProperty<Setting> setting() {
    return setting.getReadOnlyProperty();
  }

  /** The flow on show; null before the first solve. */
  public ReadOnlyObjectProperty<@Nullable Shown> shown() {
    return flow.shown();
  }

  /** The lip set aside as B; null for none. */
  public ReadOnlyObjectProperty<@Nullable Kept> kept() {
    return aside.first();
  }

  /** All lips set aside for comparison, at most {@link #MOST_BESIDE}, B first. */
  public ReadOnlyObjectProperty<List<Kept>> beside() {
    return aside.lips();
  }

  /** Sets the lip aside as B, with its flow where that is solved, to compare others with it. */
  public void keep() {
    aside.put(now());
  }

  /** Sets the lip aside beside those that are. */
  public void keepToo() {
    aside.add(now());
  }

  /**
   * Sets a lip that was never on the bench aside beside those that are, if there is room.
   *
   * @return its number
   */
  int keepToo(LipDrawing other, Setting under) {
    aside.add(new Kept(other, under, ++lips, null));
    return lips;
  }

  private Kept now() {
    Shown now = shown().get();
    boolean solved = now != null && !now.preview() && !stale().get();
    return new Kept(drawing.get(), setting.get(), lip.get(), solved ? now : null);
  }

  /** Forgets the lips that were set aside. */
  public void dropKept() {
    aside.clear();
  }

  /** Exchanges the lip on the bench with B; both keep the flows they have. */
  public void swapKept() {
    Kept other = aside.first().get();
    if (other == null) {
      return;
    }
    keep();
    stop();
    history.put(new Draft(other.drawing(), other.setting(), Map.of(), other.lip()));
    flow.show(other.shown());
    refresh();
  }

  public ReadOnlyObjectProperty<RunOptions> options() {
    return options.getReadOnlyProperty();
  }

  /** Answer of the last full solve if it found no flow, else null. */
  public ReadOnlyObjectProperty<@Nullable SectionResult> failure() {
    return flow.failure();
  }

  /** True when the flow on show belongs to another drawing or other conditions. */
  public ReadOnlyBooleanProperty stale() {
    return flow.stale();
  }

  /**
   * True when the flow on show is {@linkplain #stale stale} and nothing newer follows at once:
   * while something is dragged its flow comes some moments later, and that is not meant.
   */
  public ReadOnlyBooleanProperty behind() {
    return flow.behind();
  }

  /** True while the full solve runs. */
  public ReadOnlyBooleanProperty running() {
    return flow.running();
  }

  /** Share of the full solve that is done, 0 to 1. */
  public ReadOnlyDoubleProperty progress() {
    return flow.progress();
  }

  public ReadOnlyBooleanProperty canUndo() {
    return canUndo.getReadOnlyProperty();
  }

  public ReadOnlyBooleanProperty canRedo() {
    return canRedo.getReadOnlyProperty();
  }

  /** Puts another lip on the bench; the history begins anew, no flow is shown. */
  public void open(LipDrawing other) {
    open(other, false, Map.of());
  }

  /** Puts a lip on the bench that sliders shape from now on; else as {@link #open}. */
  public void open(LipDrawing shaped, Map<String, Double> places) {
    open(shaped, false, places);
  }

  /** Puts a lip on the bench that was drawn here and lies in no file; else as {@link #open}. */
  public void draw(LipDrawing other) {
    open(other, true, Map.of());
  }

  /** True while the lip on the bench is one that was put there by {@link #draw}. */
  public boolean drawnHere() {
    return drawnHere;
  }

  private void open(LipDrawing other, boolean here, Map<String, Double> places) {
    stop();
    drawnHere = here;
    history.restart(new Draft(other, setting.get(), places, ++lips));
    flow.show(null);
    refresh();
  }

  /** Changes the drawing by one step, or as part of the open drag. */
  public void edit(UnaryOperator<LipDrawing> change) {
    history.put(history.now().withDrawing(change.apply(history.now().drawing())));
    refresh();
    flow.follow(options.get());
  }

  /**
   * Shapes the lip anew by sliders, as one step or as part of the open drag.
   *
   * @param places of the sliders by their names
   */
  public void shape(LipDrawing shaped, Map<String, Double> places) {
    history.put(new Draft(shaped, setting.get(), places, lip.get()));
    refresh();
    flow.follow(options.get());
  }

  /** Places of the sliders that the lip was last shaped with; empty for none. */
  public ReadOnlyObjectProperty<Map<String, Double>> measures() {
    return measures.getReadOnlyProperty();
  }

  public void undo() {
    history.undo();
    refresh();
    flow.follow(options.get());
  }

  public void redo() {
    history.redo();
    refresh();
    flow.follow(options.get());
  }

  /** Sets the conditions, as one step or as part of the open drag. */
  public void set(Setting other) {
    if (!other.equals(setting.get())) {
      history.put(history.now().withSetting(other));
      refresh();
      flow.follow(options.get());
    }
  }

  public void setOptions(RunOptions other) {
    options.set(other);
  }

  /** Chooses the mesh; a flow that is on show is solved anew on it. */
  public void useMesh(MeshLevel level) {
    RunOptions now = options.get();
    if (level != now.level()) {
      options.set(new RunOptions(level, now.closure(), now.modelSpread(), now.threads()));
      if (flow.begun()) {
        run();
      }
    }
  }

  /** Starts a drag: changes up to {@link #endDrag} are one step and are followed coarsely. */
  public void beginDrag() {
    flow.beginDrag();
    history.begin();
  }

  /** Starts or ends a drag. */
  public void drag(boolean on) {
    if (on) {
      beginDrag();
    } else {
      endDrag();
    }
  }

  /** Ends a drag; the full solve runs if the flow is not that of the drawing. */
  public void endDrag() {
    if (!flow.dragging()) {
      return;
    }
    flow.endDrag();
    history.end();
    refresh();
    check.finish();
    flow.finish(options.get());
  }

  /** The question on the bench; null while the drawing is no lip. */
  public @Nullable SealSection section() {
    LipProfile profile = findings().get().profile();
    return profile == null ? null : setting.get().section(profile);
  }

  /** Solves the section on three grids in the background; a solve that runs is stopped. */
  public void run() {
    flow.run(options.get());
  }

  /** Stops what runs; the flow on show stays. */
  public void stop() {
    flow.stop();
  }

  private void refresh() {
    LipDrawing now = history.now().drawing();
    canUndo.set(history.canUndo());
    canRedo.set(history.canRedo());
    lip.set(history.now().lip());
    if (!now.equals(drawing.get())) {
      if (flow.dragging()) {
        check.shape(now);
      } else {
        check.whole(now);
      }
      drawing.set(now);
    }
    setting.set(history.now().setting());
    measures.set(history.now().measures());
    flow.update();
  }
}
