package hemline.viewer.model;

import hemline.shared.file.LipFile;
import hemline.shared.file.LipImport;
import hemline.shared.problem.InputException;
import hemline.shared.profile.LipDrawing;
import hemline.viewer.project.RecentPlaces;
import hemline.viewer.project.RescueStore;
import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import javafx.beans.property.ReadOnlyBooleanProperty;
import javafx.beans.property.ReadOnlyBooleanWrapper;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import org.jspecify.annotations.Nullable;

/**
 * The file behind the lip on the bench: what it holds, what is not saved yet, what was saved from a
 * crash. All methods belong to the screen's thread.
 */
public final class LipDocument {
  private final Workbench bench;
  private final RecentPlaces recent;
  private final Clock clock;
  private final ReadOnlyObjectWrapper<@Nullable Path> file = new ReadOnlyObjectWrapper<>();
  private final ReadOnlyBooleanWrapper unsaved = new ReadOnlyBooleanWrapper();
  private RescueStore rescue;
  private LipDrawing saved;
  private @Nullable LipDrawing putBy;

  /**
   * A document on a bench; the lip that lies there now counts as saved.
   *
   * @param rescue where unsaved drawings are put by
   * @param recent hears of every file used
   */
  public LipDocument(Workbench bench, RescueStore rescue, RecentPlaces recent, Clock clock) {
    this.bench = bench;
    this.rescue = rescue;
    this.recent = recent;
    this.clock = clock;
    this.saved = bench.drawing().get();
    bench.drawing().subscribe(this::drawn);
  }

  /** The lip file; null for a lip that has none yet. */
  public ReadOnlyObjectProperty<@Nullable Path> file() {
    return file.getReadOnlyProperty();
  }

  /** True when the drawing differs from what its file, or its example, holds. */
  public ReadOnlyBooleanProperty unsaved() {
    return unsaved.getReadOnlyProperty();
  }

  /** Turns to another place for unsaved drawings. */
  public void use(RescueStore other) {
    rescue.clear();
    rescue = other;
    putBy = null;
  }

  /**
   * Puts the lip of a file on the bench; a drawing (.svg, .dxf) gets no lip file yet.
   *
   * @throws InputException if it cannot be read; the bench stays as it is
   */
  public void open(Path place) throws InputException {
    if (LipImport.isDrawing(place)) {
      bench.open(LipImport.read(place).drawing());
      settle(null);
    } else {
      bench.open(LipFile.read(place));
      settle(place);
      recent.used(place);
    }
  }

  /** Takes a file for the one behind the lip that lies on the bench. */
  public void belongsTo(Path place) {
    settle(place);
    recent.used(place);
  }

  /**
   * Writes the lip to its file.
   *
   * @throws InputException if it cannot be written
   * @throws IllegalStateException if it has none
   */
  public void save() throws InputException {
    Path place = file.get();
    if (place == null) {
      throw new IllegalStateException("the lip has no file yet");
    }
    saveAs(place);
  }

  /**
   * Writes the lip to a file, which is its own from then on.
   *
   * @throws InputException if it cannot be written; it then still counts as unsaved
   */
  public void saveAs(Path place) throws InputException {
    LipFile.write(place, bench.drawing().get());
    settle(place);
    recent.used(place);
  }

  /** Puts an unsaved drawing by, unless that was done since its last change. */
  public void putBy() throws InputException {
    LipDrawing now = bench.drawing().get();
    if (unsaved.get() && !now.equals(putBy)) {
      rescue.putBy(now, file.get(), clock.instant());
      putBy = now;
    }
  }

  /** Drawings that a program left unsaved when it broke off, newest first. */
  public List<RescueStore.Rescued> left() {
    return rescue.left();
  }

  /** Puts a drawing from a crash on the bench; it still counts as unsaved. */
  public void recover(RescueStore.Rescued rescued) {
    bench.open(rescued.drawing());
    file.set(rescued.file());
    saved = blank(rescued.drawing());
    unsaved.set(true);
    try {
      // first put by under this program's own name, then drop the old one
      putBy = null;
      putBy();
      rescue.drop(rescued);
    } catch (InputException e) {
      // the old one stays, so nothing is lost
    }
  }

  /** Forgets a drawing from a crash. */
  public void forget(RescueStore.Rescued rescued) {
    rescue.drop(rescued);
  }

  /** The orderly end: nothing is left to recover. */
  public void close() {
    rescue.clear();
  }

  private void settle(@Nullable Path place) {
    saved = bench.drawing().get();
    file.set(place);
    unsaved.set(false);
    putBy = null;
    rescue.clear();
  }

  private void drawn(LipDrawing now) {
    if (!bench.canUndo().get() && !bench.canRedo().get()) {
      // another lip was put on the bench
      if (bench.drawnHere()) {
        settle(null);
        saved = blank(now);
        unsaved.set(true);
      } else if (!now.equals(saved)) {
        settle(null);
      }
    } else {
      unsaved.set(!now.equals(saved));
      if (!unsaved.get()) {
        putBy = null;
        rescue.clear();
      }
    }
  }

  /** A drawing that no lip equals, for a lip whose file is not known. */
  private static LipDrawing blank(LipDrawing like) {
    return new LipDrawing(
        "",
        like.family(),
        like.notes(),
        like.invented(),
        like.source(),
        like.body(),
        like.mountEdge(),
        like.detached());
  }
}
