package hemline.solver.study;

import hemline.solver.flow.CancelToken;
import hemline.solver.flow.ProgressListener;
import hemline.solver.refine.SectionFamily;
import java.util.Comparator;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.ThreadFactory;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.IntStream;

/**
 * Solves questions on a fixed number of threads.
 *
 * <p>Tasks share nothing, so answers are the same bits for any number of threads and any order. The
 * longest are started first, to keep the threads busy to the end. A cancelled study still answers
 * every question: those not solved say so.
 */
final class SolvePool {
  private SolvePool() {}

  /**
   * Solves all questions and answers in their order.
   *
   * <p>If the calling thread is interrupted the study is cancelled and the interrupt kept.
   */
  static List<Solved> solve(
      List<Question> questions,
      SectionFamily family,
      RunOptions options,
      CancelToken cancel,
      ProgressListener progress) {
    double[] work = questions.stream().mapToDouble(Question::work).toArray();
    ProgressSum sum = new ProgressSum(work, progress);
    int threads = Math.max(1, Math.min(options.threads(), questions.size()));
    ExecutorService pool = Executors.newFixedThreadPool(threads, solveThreads());
    try {
      SortedMap<Integer, Future<Solved>> futures = new TreeMap<>();
      IntStream.range(0, work.length)
          .boxed()
          .sorted(Comparator.comparingDouble((Integer i) -> -work[i]))
          .forEach(
              i -> {
                SolveTask task =
                    new SolveTask(questions.get(i), family, options, cancel, sum.of(i));
                futures.put(i, pool.submit(task::run));
              });
      return futures.values().stream().map(future -> await(future, cancel)).toList();
    } finally {
      pool.shutdown();
    }
  }

  private static Solved await(Future<Solved> future, CancelToken cancel) {
    boolean interrupted = false;
    try {
      while (true) {
        try {
          return future.get();
        } catch (InterruptedException e) {
          interrupted = true;
          cancel.cancel();
        } catch (ExecutionException e) {
          cancel.cancel();
          throw new IllegalStateException("a solve broke down", e.getCause());
        }
      }
    } finally {
      if (interrupted) {
        Thread.currentThread().interrupt();
      }
    }
  }

  private static ThreadFactory solveThreads() {
    AtomicInteger count = new AtomicInteger();
    return work -> {
      Thread thread = new Thread(work, "hemline-solve-" + count.incrementAndGet());
      thread.setDaemon(true);
      return thread;
    };
  }
}
