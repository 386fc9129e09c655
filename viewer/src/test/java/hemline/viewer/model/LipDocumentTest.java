package hemline.viewer.model;

import static org.assertj.core.api.Assertions.assertThat;

import hemline.shared.file.LipFile;
import hemline.shared.problem.InputException;
import hemline.shared.profile.LipDrawing;
import hemline.shared.profile.Starter;
import hemline.solver.refine.FamilySolver;
import hemline.viewer.edit.Corner;
import hemline.viewer.edit.LipEdit;
import hemline.viewer.project.Program;
import hemline.viewer.project.RecentPlaces;
import hemline.viewer.project.RescueStore;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.List;
import java.util.Queue;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A lip and its file on a disk that takes its time. */
final class LipDocumentTest {
  @TempDir Path dir;
  private final Queue<Runnable> disk = new ArrayDeque<>();
  private final Queue<Runnable> screen = new ArrayDeque<>();
  private final List<String> told = new ArrayList<>();
  private Workbench bench;
  private LipDocument document;

  private final Saving heard =
      new Saving() {
        @Override
        public void saved() {
          told.add("saved");
        }

        @Override
        public void refused(InputException why) {
          told.add(why.problems().get(0).code());
        }

        @Override
        public void changedOutside() {
          told.add("changed");
        }
      };

  @BeforeEach
  void openADocument() {
    bench = new Workbench(flat(8e-3), new FamilySolver(), screen::add);
    document =
        new LipDocument(
            bench,
            new RescueStore(dir.resolve("rescue")),
            new RecentPlaces(dir.resolve("recent.json")),
            Clock.systemUTC(),
            disk::add,
            screen::add);
  }

  private static LipDrawing flat(double width) {
    return new Starter.Flat(width, 10e-3).drawing();
  }

  private void edit() {
    bench.edit(d -> LipEdit.move(d, List.of(new Corner(0, 1)), 1e-4, 0));
  }

  private void work() {
    while (!disk.isEmpty() || !screen.isEmpty()) {
      (disk.isEmpty() ? screen : disk).remove().run();
    }
  }

  @Test
  void theScreenDoesNotWaitForTheDisk() throws Exception {
    Path lip = dir.resolve("lip.json");
    edit();
    LipDrawing asked = bench.drawing().get();
    document.saveAs(lip, heard);
    assertThat(lip).doesNotExist();
    assertThat(document.unsaved().get()).isTrue();
    work();
    assertThat(LipFile.read(lip)).isEqualTo(asked);
    assertThat(document.file().get()).isEqualTo(lip);
    assertThat(document.unsaved().get()).isFalse();
    assertThat(told).containsExactly("saved");
  }

  @Test
  void whatIsEditedWhileTheDiskWritesIsNotSavedYet() throws Exception {
    Path lip = dir.resolve("lip.json");
    edit();
    LipDrawing asked = bench.drawing().get();
    document.saveAs(lip, heard);
    edit();
    work();
    assertThat(LipFile.read(lip)).isEqualTo(asked);
    assertThat(document.unsaved().get()).isTrue();
    // two saves at once are one writer's, not two programs'
    document.save(heard);
    edit();
    document.save(heard);
    work();
    assertThat(LipFile.read(lip)).isEqualTo(bench.drawing().get());
    assertThat(document.unsaved().get()).isFalse();
    assertThat(told).containsExactly("saved", "saved", "saved");
  }

  @Test
  void aLipOpenedWhileTheDiskWritesKeepsItsOwnFile() throws Exception {
    Path first = dir.resolve("first.json");
    Path second = dir.resolve("second.json");
    LipFile.write(second, flat(5e-3));
    edit();
    document.saveAs(first, heard);
    document.open(LipDocument.read(second));
    work();
    assertThat(Files.exists(first)).isTrue();
    assertThat(document.file().get()).isEqualTo(second);
    assertThat(document.unsaved().get()).isFalse();
    edit();
    document.save(heard);
    work();
    assertThat(LipFile.read(second)).isEqualTo(bench.drawing().get());
  }

  /** A swap brings a lip back with its own file; an untouched one counts as saved. */
  @Test
  void aLipSetAsideKeepsItsFile() throws Exception {
    Path first = dir.resolve("first.json");
    edit();
    document.saveAs(first, heard);
    work();
    edit();
    LipDrawing changed = bench.drawing().get();
    bench.keep();
    bench.open(flat(6e-3));
    assertThat(document.file().get()).isNull();
    assertThat(document.unsaved().get()).isFalse();
    assertThat(document.unsavedAside()).extracting(Kept::drawing).containsExactly(changed);
    bench.swapKept();
    assertThat(document.file().get()).isEqualTo(first);
    assertThat(document.unsaved().get()).isTrue();
    assertThat(document.unsavedAside()).as("the other was taken from a list").isEmpty();
    document.save(heard);
    bench.swapKept();
    work();
    assertThat(LipFile.read(first)).isEqualTo(changed);
    assertThat(document.file().get()).isNull();
    assertThat(document.unsaved().get()).as("nobody touched it").isFalse();
    bench.undo();
    assertThat(document.file().get()).as("undo of a swap is one too").isEqualTo(first);
    assertThat(document.unsaved().get()).isFalse();
  }

  /** After a crash the comparison stands there again, each lip with its file. */
  @Test
  void lipsSetAsideOutliveACrash() throws Exception {
    Path folder = dir.resolve(".hemline/rescue");
    Path first = dir.resolve("first.json");
    Program here = Program.here();
    Program gone = new Program(here.computer(), here.machine(), Integer.MAX_VALUE - 7L, null);
    document.use(new RescueStore(folder, gone));
    document.saveAs(first, heard);
    work();
    edit();
    LipDrawing changed = bench.drawing().get();
    bench.set(bench.setting().get().withGap(3e-3));
    bench.keep();
    bench.open(flat(6e-3));
    work();
    LipDocument next =
        new LipDocument(
            new Workbench(flat(5e-3), new FamilySolver(), screen::add),
            new RescueStore(folder),
            new RecentPlaces(dir.resolve("recent.json")),
            Clock.systemUTC(),
            disk::add,
            screen::add);
    assertThat(next.left().drawings()).as("put by when the other was opened").hasSize(1);
    Setting before = bench.setting().get();
    bench.set(before.withGap(1e-3));
    document.putBy(e -> told.add(e.getMessage()));
    work();
    openADocument();
    document.use(new RescueStore(folder));
    work();
    RescueStore.Left left = document.left();
    assertThat(left.refused()).isEmpty();
    document.recover(left.drawings().get(0));
    work();
    assertThat(bench.drawing().get()).isEqualTo(flat(6e-3));
    assertThat(bench.setting().get().gap()).isEqualTo(1e-3);
    assertThat(bench.kept().get().drawing()).isEqualTo(changed);
    assertThat(bench.kept().get().setting().gap()).isEqualTo(3e-3);
    assertThat(document.unsavedAside()).hasSize(1);
    assertThat(document.left().drawings()).as("it is this program's now").isEmpty();
    bench.swapKept();
    assertThat(document.file().get()).isEqualTo(first);
    document.save(heard);
    work();
    assertThat(LipFile.read(first)).isEqualTo(changed);
    assertThat(told).containsExactly("saved", "saved");
  }

  @Test
  void aFileThatAnotherProgramChangedIsNotWrittenUnasked() throws Exception {
    Path lip = dir.resolve("lip.json");
    document.saveAs(lip, heard);
    work();
    LipFile.write(lip, flat(5e-3));
    edit();
    document.save(heard);
    work();
    assertThat(LipFile.read(lip)).isEqualTo(flat(5e-3));
    assertThat(document.unsaved().get()).isTrue();
    document.saveAs(dir.resolve("recent.json/no"), heard);
    work();
    assertThat(told).startsWith("saved", "changed").hasSize(3);
    assertThat(told.get(2)).startsWith("file.");
  }

  @Test
  void lipsAreListedWhenTheirFilesAreRead() {
    List<String> names = new ArrayList<>();
    Queue<Runnable> reading = new ArrayDeque<>();
    Shelf shelf =
        new Shelf(
            bench,
            () -> {
              names.add("read");
              return List.of();
            },
            new Beside() {
              @Override
              public <T> void read(
                  java.util.function.Supplier<T> source, java.util.function.Consumer<T> taker) {
                reading.add(() -> taker.accept(source.get()));
              }
            });
    shelf.list(lips -> lips.forEach(lip -> names.add(lip.name())));
    assertThat(names).isEmpty();
    reading.remove().run();
    assertThat(names).containsExactly("read", bench.drawing().get().name());
  }
}
