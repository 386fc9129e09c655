package hemline.viewer.model;

import hemline.shared.file.LipFile;
import hemline.shared.file.LipImport;
import hemline.shared.problem.InputException;
import hemline.shared.profile.LipDrawing;
import hemline.viewer.project.FileDigest;
import hemline.viewer.project.RecentPlaces;
import hemline.viewer.project.RescueStore;
import hemline.viewer.project.RescueStore.Open;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.concurrent.Executor;
import java.util.concurrent.atomic.AtomicReference;
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
  private final Executor writer;
  private final Executor screen;
  private final ReadOnlyObjectWrapper<@Nullable Path> file = new ReadOnlyObjectWrapper<>();
  private final ReadOnlyBooleanWrapper unsaved = new ReadOnlyBooleanWrapper();
  private final Rescuer rescue;
  private LipDrawing saved;

  /** Those of other lips that were on the bench, by number: a swap brings a lip back. */
  private final Map<Integer, LipOrigin> origins = new HashMap<>();

  /** The file as it was last read or written here. */
  private final AtomicReference<Basis> basis = new AtomicReference<>(Basis.NONE);

  /** Conditions when the lip was put on the bench, or when it was saved. */
  private Setting begun;

  /**
   * What a file held.
   *
   * @param digest empty where there was none
   */
  private record Basis(@Nullable Path file, String digest) {
    static final Basis NONE = new Basis(null, "");
  }

  /**
   * A document on a bench; the lip that lies there now counts as saved.
   *
   * @param rescue where unsaved drawings are put by
   * @param recent hears of every file used
   * @param writer does what is done on disk, one task after the other
   * @param screen runs what must happen on the screen's thread
   */
  public LipDocument(
      Workbench bench,
      RescueStore rescue,
      RecentPlaces recent,
      Clock clock,
      Executor writer,
      Executor screen) {
    this.bench = bench;
    this.rescue = new Rescuer(rescue, clock, writer);
    this.recent = recent;
    this.writer = writer;
    this.screen = screen;
    this.saved = bench.drawing().get();
    this.begun = bench.setting().get();
    bench.lip().subscribe((before, now) -> turned(before.intValue(), now.intValue()));
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
    rescue.use(other);
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
    Path place = opened.file();
    if (place != null) {
      writer.execute(() -> recent.used(place));
    }
  }

  /** Takes the file of a lip that was read, and lies on the bench already, for its own. */
  public void belongsTo(Opened opened) {
    settle(opened.file(), opened.digest());
  }

  /**
   * Writes the lip to its file in the background, unless another program has changed that since it
   * was last read or written here: saving would undo that.
   *
   * @throws IllegalStateException if it has none
   */
  public void save(Saving heard) {
    Path place = file.get();
    if (place == null) {
      throw new IllegalStateException("the lip has no file yet");
    }
    write(place, true, heard);
  }

  /** Writes the lip to a file in the background, which is its own from then on. */
  public void saveAs(Path place, Saving heard) {
    write(place, false, heard);
  }

  private void write(Path place, boolean carefully, Saving heard) {
    LipDrawing drawn = bench.drawing().get();
    int lip = bench.lip().get();
    writer.execute(
        () -> {
          if (carefully && changedOutside(place)) {
            screen.execute(heard::changedOutside);
            return;
          }
          try {
            LipFile.write(place, drawn);
            String digest = FileDigest.of(place);
            basis.updateAndGet(
                before -> place.equals(before.file()) ? new Basis(place, digest) : before);
            recent.used(place);
            screen.execute(() -> written(lip, drawn, place, digest, heard));
          } catch (InputException e) {
            screen.execute(() -> heard.refused(e));
          }
        });
  }

  private boolean changedOutside(Path place) {
    Basis known = Objects.requireNonNull(basis.get());
    return place.equals(known.file())
        && Files.exists(place)
        && !FileDigest.of(place).equals(known.digest());
  }

  /** The lip may have been edited meanwhile, or another may lie on the bench. */
  private void written(int lip, LipDrawing drawn, Path place, String digest, Saving heard) {
    if (lip == bench.lip().get()) {
      saved = drawn;
      begun = bench.setting().get();
      basis.set(new Basis(place, digest));
      file.set(place);
      unsaved.set(!drawn.equals(bench.drawing().get()));
      if (!unsaved.get()) {
        clear();
      }
    } else if (origins.containsKey(lip)) {
      origins.put(lip, new LipOrigin(place, digest, drawn));
    }
    heard.saved();
  }

  /**
   * Puts the lips of the bench by where something of them is not saved, conditions included.
   *
   * @param fault hears, on the writer's thread, that they cannot be written
   */
  public void putBy(Consumer<InputException> fault) {
    boolean changed = unsaved.get() || !bench.setting().get().equals(begun) || changedAside();
    if (changed && !rescue.holds(lips())) {
      rescue.putBy(lips(), () -> {}, fault);
    }
  }

  /** The lip on the bench and those set aside. */
  private List<Open> lips() {
    List<Open> lips = new ArrayList<>();
    lips.add(LipOrigin.open(now(), bench.drawing().get(), bench.setting().get()));
    for (Kept kept : bench.beside().get()) {
      lips.add(LipOrigin.open(origin(kept.lip()), kept.drawing(), kept.setting()));
    }
    return List.copyOf(lips);
  }

  /** The lip on the bench is saved: nothing stays put by, unless one that is set aside is not. */
  private void clear() {
    if (changedAside()) {
      rescue.putBy(lips(), () -> {}, e -> {});
    } else {
      rescue.clear();
    }
  }

  private boolean changedAside() {
    return bench.beside().get().stream().anyMatch(this::changed);
  }

  /**
   * Drawings that a program left unsaved when it broke off, and files that are no such drawings.
   * Any thread may ask.
   */
  public RescueStore.Left left() {
    return rescue.left();
  }

  /** Puts the lips of a crash on the bench and beside it; they still count as unsaved. */
  public void recover(RescueStore.Rescued rescued) {
    bench.open(rescued.drawing());
    Setting.of(rescued.conditions()).ifPresent(bench::set);
    file.set(rescued.file());
    basis.set(new Basis(rescued.file(), rescued.basis()));
    saved = LipOrigin.blank(rescued.drawing());
    unsaved.set(true);
    boolean room = bench.beside().get().size() + rescued.aside().size() <= Workbench.MOST_BESIDE;
    if (room) {
      rescued.aside().forEach(this::recoverAside);
    }
    // first put by under this program's own name, then drop the old one; else that one stays
    Runnable drop = room && rescued.elsewhere().isEmpty() ? rescue.dropping(rescued) : () -> {};
    rescue.putBy(lips(), drop, e -> {});
  }

  private void recoverAside(Open lip) {
    LipDrawing drawing = lip.drawing();
    Setting under = Setting.of(lip.conditions()).orElse(bench.setting().get());
    int number = bench.keepToo(drawing, under);
    origins.put(number, new LipOrigin(lip.file(), lip.basis(), LipOrigin.blank(drawing)));
  }

  /** Forgets a drawing from a crash. */
  public void forget(RescueStore.Rescued rescued) {
    rescue.dropping(rescued).run();
  }

  /** The orderly end: nothing is left to recover. */
  public void close() {
    rescue.clear();
  }

  private void settle(@Nullable Path place, String digest) {
    saved = bench.drawing().get();
    basis.set(new Basis(place, digest));
    begun = bench.setting().get();
    file.set(place);
    unsaved.set(false);
    clear();
  }

  /** Another lip lies on the bench: one that was there before has its file again. */
  private void turned(int before, int now) {
    origins.put(before, now());
    LipOrigin known = origins.get(now);
    if (known != null) {
      saved = known.saved();
      basis.set(new Basis(known.file(), known.digest()));
      file.set(known.file());
    }
  }

  /** Lips that are set aside with changes that are not saved. */
  public List<Kept> unsavedAside() {
    return bench.beside().get().stream()
        .filter(kept -> kept.lip() != bench.lip().get())
        .filter(this::changed)
        .toList();
  }

  private boolean changed(Kept kept) {
    LipOrigin origin = origin(kept.lip());
    return origin == null || !kept.drawing().equals(origin.saved());
  }

  private @Nullable LipOrigin origin(int lip) {
    return lip == bench.lip().get() ? now() : origins.get(lip);
  }

  private LipOrigin now() {
    return new LipOrigin(file.get(), Objects.requireNonNull(basis.get()).digest(), saved);
  }

  private void drawn(LipDrawing now) {
    if (!bench.canUndo().get() && !bench.canRedo().get()) {
      // another lip was put on the bench
      if (bench.drawnHere()) {
        settle(null, "");
        saved = LipOrigin.blank(now);
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
}
