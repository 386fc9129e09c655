package hemline.solver.study;

import hemline.solver.flow.CancelToken;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.ThreadFactory;
import java.util.concurrent.atomic.AtomicInteger;

/** Threads that solve; none of them keeps a program alive. */
public final class SolveThreads {
  private SolveThreads() {}

  /** Names the threads {@code hemline-solve-1} and so on. */
  static ThreadFactory factory() {
    AtomicInteger count = new AtomicInteger();
    return work -> {
      Thread thread = new Thread(work, "hemline-solve-" + count.incrementAndGet());
      thread.setDaemon(true);
      return thread;
    };
  }

  /**
   * Does the same work on several threads and waits for all. If the calling thread is interrupted
   * the work is cancelled and the interrupt kept.
   *
   * @throws IllegalStateException if the work breaks down on one of them; the others are cancelled
   */
  public static void run(int threads, CancelToken cancel, Runnable work) {
    ExecutorService pool = Executors.newFixedThreadPool(threads, factory());
    try {
      List<Future<?>> all = new ArrayList<>();
      for (int t = 0; t < threads; t++) {
        all.add(
            pool.submit(
                () -> {
                  try {
                    work.run();
                  } catch (RuntimeException | Error e) {
                    cancel.cancel();
                    throw e;
                  }
                }));
      }
      all.forEach(one -> await(one, cancel));
    } finally {
      pool.shutdown();
    }
  }

  /** The value of a future, whatever interrupts the waiting. */
  static <T> T await(Future<T> future, CancelToken cancel) {
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
}
