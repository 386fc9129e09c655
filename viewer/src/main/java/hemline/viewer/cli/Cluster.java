package hemline.viewer.cli;

import hemline.shared.result.SectionResult;
import hemline.shared.section.SealSection;
import hemline.solver.flow.CancelToken;
import hemline.solver.flow.ProgressListener;
import hemline.solver.study.BatchRunner;
import hemline.solver.study.RunOptions;
import java.util.List;
import java.util.function.BiConsumer;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;

/**
 * Solves a batch on a Spark cluster, or on this machine where the batch is too small to be worth
 * starting one.
 *
 * @param here this machine
 * @param there the cluster
 * @param teller is told which of the two it is
 */
record Cluster(BatchRunner here, BatchRunner there, Consumer<String> teller)
    implements BatchRunner {
  /** Sections below which starting a cluster takes longer than it saves, see solver/PLAN.md. */
  static final int SMALLEST = 100;

  private static final String RUNNER = "hemline.solver.spark.SparkRunner";

  /** The engine's runner; null after a fault was told. */
  static @Nullable BatchRunner of(String master, Wanted wanted) {
    if (!master.matches("local\\[[1-9][0-9]*]|spark://[^\\s:/]+:[0-9]+")) {
      wanted.fault(
          "--spark",
          "must be the master of a cluster, such as spark://host:7077, or local[2] for threads of"
              + " this machine, got "
              + master);
      return null;
    }
    try {
      return (BatchRunner) Class.forName(RUNNER).getConstructor(String.class).newInstance(master);
    } catch (ReflectiveOperationException e) {
      wanted.fault(
          "--spark", "Spark is not there; build it once with mvn -Pspark -DskipTests package");
      return null;
    }
  }

  @Override
  public void solve(
      List<SealSection> sections,
      RunOptions options,
      CancelToken cancel,
      ProgressListener progress,
      BiConsumer<Integer, SectionResult> taker) {
    boolean small = sections.size() < SMALLEST;
    if (small) {
      teller.accept(
          (sections.size() == 1 ? "1 section is" : sections.size() + " sections are")
              + " solved on this machine: below "
              + SMALLEST
              + " starting a cluster takes longer than it saves.");
    }
    (small ? here : there).solve(sections, options, cancel, progress, taker);
  }
}
