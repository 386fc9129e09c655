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
            Question question = Question.of(sections.get(i));
            SolveTask task = new SolveTask(question, family, options, List.of(), cancel, sum.of(i));
            SectionResult result = task.run().answer().result();
            if (result.status() != SolveStatus.CANCELLED) {
              taker.accept(i, result);
            }
          }
        });
  }
}
