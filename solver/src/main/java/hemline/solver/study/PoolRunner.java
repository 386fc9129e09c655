package hemline.solver.study;

import hemline.shared.result.SectionResult;
import hemline.shared.result.SolveStatus;
import hemline.shared.section.SealSection;
import hemline.solver.flow.CancelToken;
import hemline.solver.flow.ProgressListener;
import hemline.solver.refine.SectionFamily;
import java.util.List;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.BiConsumer;

/**
 * Solves a batch on threads of this machine, the longest sections first, and holds no flow once its
 * figures are read.
 */
public final class PoolRunner implements BatchRunner {
  private final SectionFamily family;

  public PoolRunner(SectionFamily family) {
    this.family = family;
  }

  /** One section from its arguments alone. */
  public static SectionResult solve(
      SectionFamily family,
      SealSection section,
      RunOptions options,
      CancelToken cancel,
      ProgressListener progress) {
    RunOptions alone = new RunOptions(options.level(), options.closure(), options.modelSpread(), 1);
    return new SectionStudy(family).run(section, alone, cancel, progress).result();
  }

  @Override
  public void solve(
      List<SealSection> sections,
      RunOptions options,
      CancelToken cancel,
      ProgressListener progress,
      BiConsumer<Integer, SectionResult> taker) {
    List<Integer> order = BatchStudy.longestFirst(sections);
    double[] work = sections.stream().mapToDouble(BatchStudy::cost).toArray();
    ProgressSum sum = new ProgressSum(work, progress);
    AtomicInteger next = new AtomicInteger();
    SolveThreads.run(
        Math.min(options.threads(), sections.size()),
        cancel,
        () -> {
          for (int k = next.getAndIncrement();
              k < order.size() && !cancel.isCancelled();
              k = next.getAndIncrement()) {
            int i = order.get(k);
            SectionResult result = solve(family, sections.get(i), options, cancel, sum.of(i));
            if (result.status() != SolveStatus.CANCELLED) {
              taker.accept(i, result);
            }
          }
        });
  }
}
