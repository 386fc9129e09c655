package hemline.viewer.screen;

import hemline.shared.problem.InputException;
import hemline.viewer.model.Beside;
import hemline.viewer.model.MachineSheet;
import hemline.viewer.model.MachineSheet.State;
import hemline.viewer.project.MachineRescue;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Executor;
import java.util.function.BiConsumer;
import java.util.function.Consumer;
import java.util.function.Supplier;
import javafx.scene.control.Label;
import javafx.scene.layout.VBox;
import org.jspecify.annotations.Nullable;

/** Changed values of a machine: put by, offered where they were left, asked for before they go. */
final class UnsavedMachine {
  private final MachineSheet sheet;
  private final Supplier<MachineRescue> rescue;
  private final Beside disk;
  private final NoticeStrip strip;
  private final Consumer<Runnable> save;
  private final Label words = Controls.text("", "quiet");
  private final VBox box = new VBox(4);
  private MachineRescue.@Nullable Left left;

  /**
   * Nothing is offered yet.
   *
   * @param rescue where values are put by
   * @param writer does what is done on disk, one task after the other
   * @param strip asks
   * @param save writes them to a file and then goes on
   * @param back turns to a machine and then goes on
   */
  UnsavedMachine(
      MachineSheet sheet,
      Supplier<MachineRescue> rescue,
      Executor writer,
      Beside disk,
      NoticeStrip strip,
      Consumer<Runnable> save,
      BiConsumer<Path, Runnable> back) {
    this.sheet = sheet;
    this.rescue = rescue;
    this.disk = disk;
    this.strip = strip;
    this.save = save;
    box.setId("machine-left");
    box.getChildren()
        .addAll(
            words,
            Controls.row(
                Controls.button("machine-recover", "Bring them back", e -> recover(back)),
                Controls.button("machine-forget", "Forget them", e -> forget())));
    show(null);
    sheet
        .state()
        .subscribe(
            state -> {
              if (state != null) {
                writer.execute(() -> putBy(state));
              }
            });
  }

  VBox content() {
    return box;
  }

  /** Runs what would drop changed values, after asking for them. */
  void guarded(Runnable replace) {
    Path machine = sheet.file();
    if (machine == null || !sheet.unsaved()) {
      replace.run();
      return;
    }
    Map<String, Runnable> answers = new LinkedHashMap<>();
    answers.put("Save as \u2026", () -> save.accept(replace));
    answers.put("Throw away", replace);
    answers.put("Go on editing", () -> {});
    strip.ask(
        "Changed values of \u201c" + machine.getFileName() + "\u201d are not saved.", answers);
  }

  /** Looks for values that were left for one of these machines. */
  void look(Supplier<List<Path>> machines) {
    disk.read(() -> rescue.get().left(machines.get()), this::show);
  }

  private void show(MachineRescue.@Nullable Left found) {
    left = found;
    box.setVisible(found != null);
    box.setManaged(found != null);
    if (found != null) {
      words.setText("Values of %s were left unsaved.".formatted(found.machine().getFileName()));
    }
  }

  private void recover(BiConsumer<Path, Runnable> back) {
    MachineRescue.Left found = left;
    if (found != null) {
      back.accept(
          found.machine(),
          () -> {
            sheet.set(found.values());
            forget();
          });
    }
  }

  private void forget() {
    MachineRescue.Left found = left;
    show(null);
    if (found != null) {
      disk.read(
          () -> {
            rescue.get().drop(found);
            return found;
          },
          done -> {});
    }
  }

  private void putBy(State state) {
    try {
      rescue.get().putBy(state.file(), state.changed());
    } catch (InputException e) {
      // the values still stand in their fields
    }
  }
}
