package hemline.viewer.app;

import hemline.shared.file.LipFile;
import hemline.shared.file.LoadedLip;
import hemline.shared.problem.InputException;
import hemline.shared.profile.LipDrawing;
import hemline.shared.profile.Starter;
import hemline.viewer.project.ProjectFolder;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Lips and machines to begin with, read from a folder when they are first asked for. Any thread may
 * ask.
 */
public final class Examples {
  private static final String FIRST = "labyrinth-three-teeth.json";
  private final Path folder;
  private @Nullable List<Example> lips;
  private @Nullable List<Path> machines;

  /** A lip under its name. */
  public record Example(String name, LipDrawing drawing) {}

  private Examples(Path folder) {
    this.folder = folder;
  }

  /**
   * The lips of a folder with the machines in its subfolder, or a starter shape when it has none
   * that can be read.
   */
  public static Examples of(Path folder) {
    return new Examples(folder);
  }

  /** Reads everything in the background, so that nobody waits for it later. */
  public void readAhead() {
    Thread reader = new Thread(this::all, "hemline-examples");
    reader.setDaemon(true);
    reader.start();
  }

  /** All lips in the order of their files; never empty. */
  public synchronized List<Example> all() {
    if (lips == null) {
      lips = read();
    }
    return lips;
  }

  private List<Example> read() {
    List<Example> found = new ArrayList<>();
    if (Files.isDirectory(folder)) {
      try {
        for (LoadedLip lip : LipFile.loadFolder(folder)) {
          found.add(new Example(lip.drawing().name(), lip.drawing()));
        }
      } catch (InputException e) {
        found.clear();
      }
    }
    if (found.isEmpty()) {
      LipDrawing flat = new Starter.Flat(8e-3, 10e-3).drawing();
      found.add(new Example(flat.name(), flat));
    }
    return List.copyOf(found);
  }

  /** Machine files. */
  public synchronized List<Path> machines() {
    if (machines == null) {
      machines = new ProjectFolder(folder.resolve("machines")).machineFiles();
    }
    return machines;
  }

  /** Lip files. */
  List<Path> lipFiles() {
    return new ProjectFolder(folder).lipFiles();
  }

  /** Names of all lips. */
  public List<String> names() {
    return all().stream().map(Example::name).toList();
  }

  /** The lip that a new window shows; the others are not read for it. */
  public LipDrawing first() {
    Path usual = folder.resolve(FIRST);
    if (Files.isRegularFile(usual)) {
      try {
        return LipFile.read(usual);
      } catch (InputException e) {
        // another one will do
      }
    }
    return all().get(0).drawing();
  }
}
