package hemline.viewer.app;

import java.io.File;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.function.Supplier;
import javafx.stage.DirectoryChooser;
import javafx.stage.FileChooser;
import javafx.stage.FileChooser.ExtensionFilter;
import javafx.stage.Window;
import org.jspecify.annotations.Nullable;

/** Asks with the dialogs of the system. */
final class ChooserAsk implements FileAsk {
  private final Supplier<@Nullable Window> owner;

  ChooserAsk(Supplier<@Nullable Window> owner) {
    this.owner = owner;
  }

  @Override
  public @Nullable Path lip(Path folder) {
    return open(folder, new ExtensionFilter("Lips and drawings", "*.json", "*.svg", "*.dxf"));
  }

  @Override
  public @Nullable Path machine(Path folder) {
    return open(folder, new ExtensionFilter("Machines", "*.json"));
  }

  @Override
  public @Nullable Path rig(Path folder) {
    return open(folder, new ExtensionFilter("Rigs", "*.csv"));
  }

  private @Nullable Path open(Path folder, ExtensionFilter filter) {
    FileChooser chooser = new FileChooser();
    chooser.getExtensionFilters().add(filter);
    begin(chooser, folder);
    return path(chooser.showOpenDialog(owner.get()));
  }

  @Override
  public @Nullable Path target(Path suggestion, String kind, String ending) {
    FileChooser chooser = new FileChooser();
    chooser.getExtensionFilters().add(new ExtensionFilter(kind, "*" + ending));
    Path parent = suggestion.toAbsolutePath().getParent();
    if (parent != null) {
      begin(chooser, parent);
    }
    chooser.setInitialFileName(String.valueOf(suggestion.getFileName()));
    Path chosen = path(chooser.showSaveDialog(owner.get()));
    return chosen == null || chosen.toString().endsWith(ending) ? chosen : Path.of(chosen + ending);
  }

  @Override
  public @Nullable Path folder(Path suggestion) {
    DirectoryChooser chooser = new DirectoryChooser();
    if (Files.isDirectory(suggestion)) {
      chooser.setInitialDirectory(suggestion.toFile());
    }
    return path(chooser.showDialog(owner.get()));
  }

  private static void begin(FileChooser chooser, Path folder) {
    if (Files.isDirectory(folder)) {
      chooser.setInitialDirectory(folder.toFile());
    }
  }

  private static @Nullable Path path(@Nullable File file) {
    return file == null ? null : file.toPath();
  }
}
