package hemline.viewer.cli;

import hemline.shared.result.SectionResult;
import hemline.solver.study.ResultStore;
import hemline.viewer.project.Engine;
import hemline.viewer.project.KeptFolder;
import hemline.viewer.project.KeptResults;
import hemline.viewer.project.SectionStore;
import java.nio.file.Files;
import java.nio.file.Path;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;

/** Options that say where solved sections are kept. */
final class KeepOptions {
  @Option(
      names = "--keep",
      paramLabel = "DIR",
      description = "Folder for solved sections (default: hemline in the user's cache folder).")
  @Nullable Path keep;

  @Option(names = "--solve-anew", description = "Do not use solved sections kept before.")
  boolean anew;

  /** Refuses a place that can hold nothing. */
  void check(Wanted wanted) {
    if (keep != null && Files.exists(keep) && !Files.isDirectory(keep)) {
      wanted.fault("--keep", keep + " is a file; name a folder for solved sections");
    }
  }

  /**
   * The studies of a desk, which take solved sections from where they are kept.
   *
   * @param fields true where pictures are wanted
   */
  Studies studies(Desk desk, boolean fields) {
    if (anew) {
      return desk.studies();
    }
    Path folder = keep == null ? KeptFolder.SECTIONS.place() : keep.resolve("sections");
    return desk.studies().keeping(new SectionStore(folder, Engine.fingerprint()), fields);
  }

  /** Where figures of single sections are kept. */
  ResultStore<SectionResult> figures() {
    return anew
        ? ResultStore.none()
        : KeptResults.figures(
            keep == null ? KeptFolder.FIGURES.place() : keep, Engine.fingerprint());
  }
}
