package hemline.viewer.cli;

import hemline.solver.flow.Closure;
import hemline.solver.grid.MeshLevel;
import hemline.solver.study.RunOptions;
import picocli.CommandLine.Option;

/** Options that say how sections are solved. */
final class SolveOptions {
  @Option(
      names = "--mesh",
      paramLabel = "LEVEL",
      defaultValue = "medium",
      description = "Finest grid: coarse, medium or fine (default: ${DEFAULT-VALUE}).")
  String mesh = "medium";

  @Option(
      names = "--closure",
      paramLabel = "NAME",
      defaultValue = "auto",
      description = {
        "Flow model: auto, laminar, sst (k-omega SST) or sa (one equation); auto is",
        "laminar below a gap Reynolds number of 1000, else sa, in ducts without",
        "obstacles sst (default: ${DEFAULT-VALUE})."
      })
  String closure = "auto";

  @Option(
      names = "--model-spread",
      description = {
        "Solve the second turbulence model on all grids, not the coarsest alone,",
        "and compare also where --closure names one."
      })
  boolean modelSpread;

  @Option(
      names = "--threads",
      paramLabel = "N",
      description = "Solves running at once; results do not depend on it (default: all cores).")
  int threads = Runtime.getRuntime().availableProcessors();

  RunOptions read(Wanted wanted) {
    return new RunOptions(
        wanted.choice("--mesh", mesh, MeshLevel.values(), MeshLevel::key),
        wanted.choice("--closure", closure, Closure.values(), Closure::key),
        modelSpread,
        wanted.threads("--threads", threads));
  }
}
