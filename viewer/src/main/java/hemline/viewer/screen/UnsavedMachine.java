package hemline.viewer.screen;

import hemline.shared.problem.InputException;
import hemline.viewer.model.Beside;
import hemline.viewer.model.MachineSheet;
import hemline.viewer.model.MachineSheet.State;
import hemline.viewer.project.MachineRescue;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Executor;
import java.util.function.Consumer;
import java.util.function.Supplier;
import javafx.scene.control.Label;
import javafx.scene.layout.VBox;
import org.jspecify.annotations.Nullable;

/** Puts changed values of a machine by, and offers those that were left unsaved. */
final class UnsavedMachine {
  private final MachineSheet sheet;
  private final Supplier<MachineRescue> rescue;
  private final Beside disk;
  private final Label words = Controls.text("", "quiet");
  private final VBox box = new VBox(4);
  private MachineRescue.@Nullable Left left;

  /**
   * Nothing is offered yet.
   *
   * @param rescue where values are put by
   * @param writer does what is done on disk, one task after the other
   * @param back hears which machine comes back
   */
  UnsavedMachine(
      MachineSheet sheet,
      Supplier<MachineRescue> rescue,
      Executor writer,
      Beside disk,
      Consumer<Path> back) {
    this.sheet = sheet;
    this.rescue = rescue;
    this.disk = disk;
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

  /** Looks for values that were left for one of these machines. */
  void look(Supplier<List<Path>> machines) {
    disk.read(() -> rescue.get().left(machines.get()), this::show);
  }

  private void show(MachineRescue.@Nullable Left found) {
    left = found;
    box.setVisible(found != null);
    box.setManaged(found != null);
    if (found != null) {
      words.setText(
          "%d values of %s were left unsaved."
              .formatted(found.values().size(), found.machine().getFileName()));
    }
  }

  private void recover(Consumer<Path> back) {
    MachineRescue.Left found = left;
    if (found != null) {
      back.accept(found.machine());
      sheet.open(found.machine());
      sheet.set(found.values());
      forget();
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
