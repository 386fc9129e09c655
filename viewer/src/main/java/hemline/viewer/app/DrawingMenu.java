package hemline.viewer.app;

import static hemline.viewer.app.BenchMenus.item;
import static hemline.viewer.app.BenchMenus.shortcut;

import hemline.shared.file.LipImport;
import hemline.shared.problem.InputException;
import hemline.shared.problem.Notice;
import hemline.viewer.format.LengthUnit;
import hemline.viewer.format.NoticeWords;
import hemline.viewer.model.Workbench;
import hemline.viewer.report.ResultFolder;
import hemline.viewer.screen.BenchScreen;
import hemline.viewer.screen.NoticeStrip;
import java.io.File;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import java.util.function.Supplier;
import javafx.scene.Node;
import javafx.scene.control.Menu;
import javafx.scene.control.SeparatorMenuItem;
import javafx.scene.input.DragEvent;
import javafx.scene.input.KeyCode;
import javafx.scene.input.TransferMode;
import org.jspecify.annotations.Nullable;

/** Menu and drag-and-drop for drawings in and out. */
final class DrawingMenu {
  private final Workbench bench;
  private final BenchScreen screen;
  private final NoticeStrip strip;
  private final FileAsk ask;
  private final Supplier<Path> folder;
  private final Reading reading;
  private @Nullable Consumer<Path> lipFiles;

  /**
   * A menu.
   *
   * @param folder where dialogs begin
   */
  DrawingMenu(
      Workbench bench, BenchScreen screen, NoticeStrip strip, FileAsk ask, Supplier<Path> folder) {
    this.bench = bench;
    this.screen = screen;
    this.strip = strip;
    this.ask = ask;
    this.folder = folder;
    this.reading = new Reading(strip);
  }

  /** Hands lip files to another, which remembers where they lie. */
  void openLipFilesBy(Consumer<Path> opener) {
    lipFiles = opener;
  }

  Menu menu() {
    Menu menu =
        new Menu(
            "_Drawings",
            null,
            item("Import a drawing \u2026", shortcut(KeyCode.I), this::choose),
            new SeparatorMenuItem(),
            item("Export DXF \u2026", shortcut(KeyCode.E), () -> export("DXF drawing", ".dxf")),
            item("Export SVG \u2026", null, () -> export("SVG drawing", ".svg")),
            item(
                "Export a test coupon to print, STL \u2026",
                shortcut(KeyCode.T),
                () ->
                    export(
                        "Test coupon to print, "
                            + LengthUnit.text(screen.coupon().get(), 4)
                            + " long",
                        ".stl")),
            new SeparatorMenuItem(),
            item(
                "Export a picture of the flow, PNG \u2026",
                shortcut(KeyCode.P),
                () -> picture("PNG", ".png")),
            item("Export a picture of the flow, SVG \u2026", null, () -> picture("SVG", ".svg")));
    menu.setId("menu-drawings");
    return menu;
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
    Consumer<Path> opener = lipFiles;
    if (opener != null && !LipImport.isDrawing(file)) {
      opener.accept(file);
      return;
    }
    List<Notice> notices = new ArrayList<>();
    reading.start(
        file, () -> Drawings.read(file, notices), lip -> screen.open(lip, () -> tell(notices)));
  }

  private void tell(List<Notice> notices) {
    if (notices.isEmpty()) {
      strip.hide();
    } else {
      strip.tell(String.join(" ", NoticeWords.of(notices)));
    }
  }

  private void choose() {
    Path file = ask.lip(folder.get());
    if (file != null) {
      bringIn(file);
    }
  }

  private void export(String kind, String ending) {
    write(kind, ending, (on, file) -> Drawings.export(on, file, screen.coupon().get()));
  }

  private void picture(String kind, String ending) {
    write(kind, ending, Drawings::savePicture);
  }

  /** Writes something of the bench into a file. */
  private interface Writer {
    void write(Workbench bench, Path file) throws InputException;
  }

  private void write(String kind, String ending, Writer writer) {
    String name = ResultFolder.fileName(bench.drawing().get().name()) + ending;
    Path file = ask.target(folder.get().resolve(name), kind, ending);
    if (file == null) {
      return;
    }
    try {
      writer.write(bench, file);
      strip.tell("Written: " + file);
    } catch (InputException fault) {
      strip.tell(fault.problems().get(0).toString());
    }
  }
}
