package hemline.viewer.app;

import hemline.shared.problem.InputException;
import hemline.shared.problem.Problem;
import hemline.viewer.model.Workbench;
import hemline.viewer.screen.BenchScreen;
import java.io.File;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Collectors;
import javafx.scene.Node;
import javafx.scene.control.Alert;
import javafx.scene.control.Alert.AlertType;
import javafx.scene.control.Menu;
import javafx.scene.input.DragEvent;
import javafx.scene.input.KeyCode;
import javafx.scene.input.TransferMode;
import javafx.stage.FileChooser;
import javafx.stage.FileChooser.ExtensionFilter;

/** Menu and drag-and-drop for drawings in and out. */
final class DrawingMenu {
  private final Workbench bench;
  private final BenchScreen screen;

  DrawingMenu(Workbench bench, BenchScreen screen) {
    this.bench = bench;
    this.screen = screen;
  }

  Menu menu() {
    return new Menu(
        "Drawings",
        null,
        BenchMenus.item("Bring in a drawing \u2026", BenchMenus.shortcut(KeyCode.I), this::choose),
        BenchMenus.item("Drawing out \u2026", BenchMenus.shortcut(KeyCode.E), this::export),
        BenchMenus.item("Picture out \u2026", BenchMenus.shortcut(KeyCode.P), this::picture));
  }

  /** Takes files dropped on a node. */
  void acceptDrops(Node node) {
    node.addEventHandler(
        DragEvent.DRAG_OVER,
        e -> {
          if (e.getDragboard().getFiles().stream().anyMatch(f -> Drawings.readable(f.toPath()))) {
            e.acceptTransferModes(TransferMode.COPY);
          }
        });
    node.addEventHandler(
        DragEvent.DRAG_DROPPED,
        e -> {
          List<File> files = e.getDragboard().getFiles();
          files.stream()
              .map(File::toPath)
              .filter(Drawings::readable)
              .findFirst()
              .ifPresent(this::bringIn);
          e.setDropCompleted(true);
        });
  }

  /** Puts a file on the bench, or tells why not. */
  void bringIn(Path file) {
    try {
      screen.open(Drawings.read(file));
    } catch (InputException fault) {
      tell(fault);
    }
  }

  private void choose() {
    FileChooser chooser = new FileChooser();
    chooser
        .getExtensionFilters()
        .add(new ExtensionFilter("Drawings and lip files", "*.svg", "*.dxf", "*.json"));
    File file = chooser.showOpenDialog(screen.board().getScene().getWindow());
    if (file != null) {
      bringIn(file.toPath());
    }
  }

  private void export() {
    FileChooser chooser = new FileChooser();
    chooser
        .getExtensionFilters()
        .addAll(
            new ExtensionFilter("DXF drawing", "*.dxf"),
            new ExtensionFilter("SVG drawing", "*.svg"),
            new ExtensionFilter("Test coupon to print, 40 mm long", "*.stl"));
    write(chooser, Drawings::export);
  }

  private void picture() {
    FileChooser chooser = new FileChooser();
    chooser
        .getExtensionFilters()
        .addAll(new ExtensionFilter("PNG", "*.png"), new ExtensionFilter("SVG", "*.svg"));
    write(chooser, Drawings::savePicture);
  }

  /** Writes something of the bench into a file. */
  private interface Writer {
    void write(Workbench bench, Path file) throws InputException;
  }

  private void write(FileChooser chooser, Writer writer) {
    chooser.setInitialFileName(bench.drawing().get().name().replaceAll("[^\\w.-]+", "-"));
    File file = chooser.showSaveDialog(screen.board().getScene().getWindow());
    if (file == null) {
      return;
    }
    String wanted = chooser.getSelectedExtensionFilter().getExtensions().get(0).substring(1);
    Path named = file.getName().contains(".") ? file.toPath() : Path.of(file.getPath() + wanted);
    try {
      writer.write(bench, named);
    } catch (InputException fault) {
      tell(fault);
    }
  }

  private static void tell(InputException fault) {
    Alert alert =
        new Alert(
            AlertType.WARNING,
            fault.problems().stream().map(Problem::toString).collect(Collectors.joining("\n\n")));
    alert.setHeaderText(null);
    alert.setResizable(true);
    alert.show();
  }
}
