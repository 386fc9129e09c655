package hemline.solver.study;

import hemline.shared.result.SectionResult;
import hemline.shared.section.SealSection;
import hemline.solver.flow.CancelToken;
import hemline.solver.flow.ProgressListener;
import java.util.List;
import java.util.function.BiConsumer;

/**
 * Where the sections of a batch are solved. Every section starts cold and its answer depends on
 * section and options alone, so that each place gives the same bits.
 */
public interface BatchRunner {
  /**
   * Solves sections in any order and returns when all are solved or the batch is cancelled.
   *
   * @param taker is given each result once, with the number of its section, as soon as it is there;
   *     on any thread, also on several at once; never one that was cancelled
   * @throws IllegalStateException if the place breaks down; what it had is with the taker
   */
  void solve(
      List<SealSection> sections,
      RunOptions options,
      CancelToken cancel,
      ProgressListener progress,
      BiConsumer<Integer, SectionResult> taker);
}
