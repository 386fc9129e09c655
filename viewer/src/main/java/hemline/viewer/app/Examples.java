package hemline.viewer.app;

import hemline.shared.file.LipFile;
import hemline.shared.file.LoadedLip;
import hemline.shared.problem.InputException;
import hemline.shared.profile.LipDrawing;
import hemline.viewer.edit.Starter;
import hemline.viewer.project.ProjectFolder;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/**
 * Lips and machines to begin with.
 *
 * @param all lips in the order of their names; never empty
 * @param machines machine files
 */
public record Examples(List<Example> all, List<Path> machines) {
  private static final String FIRST = "labyrinth three teeth";

  /** A lip under its name. */
  public record Example(String name, LipDrawing drawing) {}

  public Examples {
    all = List.copyOf(all);
    machines = List.copyOf(machines);
  }

  /**
   * The lips of a folder with the machines in its subfolder, or a starter shape when it has none
   * that can be read.
   */
  public static Examples of(Path folder) {
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
    return new Examples(found, new ProjectFolder(folder.resolve("machines")).machineFiles());
  }

  /** Names of all lips. */
  public List<String> names() {
    return all.stream().map(Example::name).toList();
  }

  /** The lip that a new window shows. */
  public LipDrawing first() {
    return all.stream()
        .filter(e -> e.name().equals(FIRST))
        .findFirst()
        .orElse(all.get(0))
        .drawing();
  }
}
