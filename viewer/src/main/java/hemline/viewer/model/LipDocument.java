package hemline.viewer.model;

import hemline.shared.file.LipFile;
import hemline.shared.file.LipImport;
import hemline.shared.problem.InputException;
import hemline.shared.profile.LipDrawing;
import hemline.viewer.project.FileDigest;
import hemline.viewer.project.RecentPlaces;
import hemline.viewer.project.RescueStore;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.util.concurrent.Executor;
import java.util.function.Consumer;
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
  private final Executor writer;
  private final ReadOnlyObjectWrapper<@Nullable Path> file = new ReadOnlyObjectWrapper<>();
  private final ReadOnlyBooleanWrapper unsaved = new ReadOnlyBooleanWrapper();
  private volatile RescueStore rescue;
  private LipDrawing saved;

  /** Digest of the file as it was last read or written here; empty where there was none. */
  private String basis = "";

  private volatile @Nullable LipDrawing putBy;

  /**
   * A document on a bench; the lip that lies there now counts as saved.
   *
   * @param rescue where unsaved drawings are put by
   * @param recent hears of every file used
   * @param writer puts drawings by, one task after the other; the screen's thread need not wait
   */
  public LipDocument(
      Workbench bench, RescueStore rescue, RecentPlaces recent, Clock clock, Executor writer) {
    this.bench = bench;
    this.rescue = rescue;
    this.recent = recent;
    this.clock = clock;
    this.writer = writer;
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
    clear();
    rescue = other;
  }

  /**
   * A lip as it was read.
   *
   * @param lip the drawing, which may have faults
   * @param file lip file; null for an imported drawing
   * @param digest of the file
   */
  public record Opened(LipDrawing lip, @Nullable Path file, String digest) {}

  /**
   * Reads the lip of a file; a drawing (.svg, .dxf) gets no lip file yet. Any thread may read.
   *
   * @throws InputException if it cannot be read
   */
  public static Opened read(Path place) throws InputException {
    if (LipImport.isDrawing(place)) {
      return new Opened(LipImport.read(place).drawing(), null, "");
    }
    // the digest first: a change in between is then noticed before it is undone
    String digest = FileDigest.of(place);
    return new Opened(LipFile.read(place), place, digest);
  }

  /** Puts a lip that was read on the bench. */
  public void open(Opened opened) {
    bench.open(opened.lip());
    settle(opened.file(), opened.digest());
    if (opened.file() != null) {
      recent.used(opened.file());
    }
  }

  /** Takes the file of a lip that was read, and lies on the bench already, for its own. */
  public void belongsTo(Opened opened) {
    settle(opened.file(), opened.digest());
  }

  /**
   * True when the file behind the lip is not as it was last read or written here: another program
   * has changed it, and saving would undo that.
   */
  public boolean changedOutside() {
    Path place = file.get();
    return place != null && Files.exists(place) && !FileDigest.of(place).equals(basis);
  }

  /**
   * Writes the lip to its file, whatever stands there.
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
    settle(place, FileDigest.of(place));
    recent.used(place);
  }

  /**
   * Puts an unsaved drawing by, unless that was done since its last change.
   *
   * @param fault hears, on the writer's thread, that it cannot be written
   */
  public void putBy(Consumer<InputException> fault) {
    LipDrawing now = bench.drawing().get();
    if (unsaved.get() && !now.equals(putBy)) {
      putBy(now, () -> {}, fault);
    }
  }

  private void putBy(LipDrawing now, Runnable then, Consumer<InputException> fault) {
    RescueStore into = rescue;
    Path place = file.get();
    String known = basis;
    Instant when = clock.instant();
    putBy = now;
    writer.execute(
        () -> {
          try {
            into.putBy(now, place, known, when);
            then.run();
          } catch (InputException e) {
            putBy = null;
            fault.accept(e);
          }
        });
  }

  private void clear() {
    putBy = null;
    writer.execute(rescue::clear);
  }

  /**
   * Drawings that a program left unsaved when it broke off, and files that are no such drawings.
   * Any thread may ask.
   */
  public RescueStore.Left left() {
    return rescue.left();
  }

  /** Puts a drawing from a crash on the bench; it still counts as unsaved. */
  public void recover(RescueStore.Rescued rescued) {
    bench.open(rescued.drawing());
    file.set(rescued.file());
    basis = rescued.basis();
    saved = blank(rescued.drawing());
    unsaved.set(true);
    // first put by under this program's own name, then drop the old one; else that one stays
    RescueStore from = rescue;
    putBy(
        rescued.drawing(),
        () -> {
          if (rescued.elsewhere().isEmpty()) {
            from.drop(rescued);
          }
        },
        e -> {});
  }

  /** Forgets a drawing from a crash. */
  public void forget(RescueStore.Rescued rescued) {
    rescue.drop(rescued);
  }

  /** The orderly end: nothing is left to recover. */
  public void close() {
    clear();
  }

  private void settle(@Nullable Path place, String digest) {
    saved = bench.drawing().get();
    basis = digest;
    file.set(place);
    unsaved.set(false);
    clear();
  }

  private void drawn(LipDrawing now) {
    if (!bench.canUndo().get() && !bench.canRedo().get()) {
      // another lip was put on the bench
      if (bench.drawnHere()) {
        settle(null, "");
        saved = blank(now);
        unsaved.set(true);
      } else if (!now.equals(saved)) {
        settle(null, "");
      }
    } else {
      unsaved.set(!now.equals(saved));
      if (!unsaved.get()) {
        clear();
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
