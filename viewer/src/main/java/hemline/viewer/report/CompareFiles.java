package hemline.viewer.report;

import hemline.solver.rig.Comparison;

/** Files of a measurement beside its prediction. */
public final class CompareFiles {
  private CompareFiles() {}

  /** Writes all files. */
  public static void write(ResultFolder folder, String document, Comparison comparison) {
    folder.write("comparison.json", document);
  }
}
