package hemline.viewer.cli;

import hemline.shared.problem.InputException;
import hemline.viewer.report.ResultFolder;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;

/** Options for what comes out. */
final class OutputOptions {
  @Option(
      names = "--out",
      paramLabel = "DIR",
      description = "Folder for JSON, CSV, pictures and field files; made when missing.")
  @Nullable String out;

  @Option(names = "--json", description = "Print one JSON document and nothing else.")
  boolean json;

  /**
   * The folder, or null when none is wanted; called when all other input is known to be right.
   *
   * @param otherwise folder when none was named; null for none
   */
  @Nullable ResultFolder folder(@Nullable String otherwise) throws InputException {
    String name = out == null ? otherwise : out;
    if (name == null) {
      return null;
    }
    try {
      return ResultFolder.at(Path.of(name));
    } catch (InvalidPathException e) {
      throw new InputException("out.name", "--out", "\"" + name + "\" is no folder name here");
    }
  }
}
