package hemline.viewer.project;

import hemline.shared.file.LipFile;
import hemline.shared.file.LoadedLip;
import hemline.shared.file.MachineFile;
import hemline.shared.problem.InputException;
import hemline.shared.problem.Problem;
import hemline.viewer.report.ResultFolder;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;

/**
 * A folder with the lip files of one project, as the commands read it. What the window keeps for
 * itself lies in its subfolder {@code .hemline}.
 *
 * @param path the folder; it may not exist yet
 */
public record ProjectFolder(Path path) {
  static final String HIDDEN = ".hemline";

  /** Lips of a folder and what is wrong with those that could not be read. */
  public record Lips(List<LoadedLip> lips, List<Problem> problems) {
    public Lips {
      lips = List.copyOf(lips);
      problems = List.copyOf(problems);
    }
  }

  public ProjectFolder {
    path = path.toAbsolutePath().normalize();
  }

  /**
   * The user's home: what HOME names, else what the system has on record.
   *
   * @param environment variables of the environment
   * @param recorded home by the system's record of users
   */
  public static Path home(Map<String, String> environment, String recorded) {
    String named = environment.getOrDefault("HOME", "");
    return Path.of(named.isBlank() ? recorded : named);
  }

  /** Where studies are kept. */
  public Path studies() {
    return path.resolve(HIDDEN).resolve("studies");
  }

  /** Where figures of lips are kept that searches have tried. */
  public Path searches() {
    return path.resolve(HIDDEN).resolve("searches");
  }

  /** Where drawings are put by that are not saved yet. */
  public Path rescue() {
    return path.resolve(HIDDEN).resolve("rescue");
  }

  /** Where changed values of machines are put by that are not saved yet. */
  public Path machineRescue() {
    return path.resolve(HIDDEN).resolve("rescue-machines");
  }

  /** Where charts, tables and reports go. */
  public Path results() {
    return path.resolve("results");
  }

  /** File for a lip of a name, in this folder. */
  public Path fileFor(String lipName) {
    return path.resolve(ResultFolder.fileName(lipName) + ".json");
  }

  /** The lips that can be read, in the order of the file names; none when there is no folder. */
  public Lips lips() {
    List<LoadedLip> lips = new ArrayList<>();
    List<Problem> problems = new ArrayList<>();
    if (Files.isDirectory(path)) {
      for (Path file : jsonFiles()) {
        try {
          lips.add(LipFile.load(file));
        } catch (InputException e) {
          // a machine or duct file is no fault here
          e.problems().stream().filter(p -> !p.code().equals("file.schema")).forEach(problems::add);
        }
      }
    }
    return new Lips(lips, problems);
  }

  /** Files of this folder whose lips can be drawn, faults in the outline or not. */
  public List<Path> lipFiles() {
    List<Path> files = new ArrayList<>();
    for (Path file : Files.isDirectory(path) ? jsonFiles() : List.<Path>of()) {
      try {
        LipFile.read(file);
        files.add(file);
      } catch (InputException e) {
        // no lip, or one that cannot be drawn
      }
    }
    return files;
  }

  /** Files of this folder that can be read as machines. */
  public List<Path> machineFiles() {
    List<Path> files = new ArrayList<>();
    for (Path file : Files.isDirectory(path) ? jsonFiles() : List.<Path>of()) {
      try {
        MachineFile.read(file);
        files.add(file);
      } catch (InputException e) {
        // no machine, or one with faults, which opening it by name tells
      }
    }
    return files;
  }

  private List<Path> jsonFiles() {
    try (Stream<Path> entries = Files.list(path)) {
      return entries.filter(f -> f.getFileName().toString().endsWith(".json")).sorted().toList();
    } catch (IOException e) {
      return List.of();
    }
  }
}
