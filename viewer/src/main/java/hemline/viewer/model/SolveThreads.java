package hemline.viewer.model;

import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;

/**
 * Threads that solve behind the window and give way to it, as do all threads that they start. Linux
 * minds priorities of threads only if Java is told so, which the launcher does.
 */
final class SolveThreads {
  /** What the hand waits for comes before what may take its time. */
  private static final int PREVIEW = Thread.MIN_PRIORITY + 1;

  private SolveThreads() {}

  /** One thread for solves that take seconds. */
  static ExecutorService solve(String name) {
    return one(name, Thread.MIN_PRIORITY);
  }

  /** One thread for solves that follow the hand. */
  static ExecutorService preview(String name) {
    return one(name, PREVIEW);
  }

  private static ExecutorService one(String name, int priority) {
    return Executors.newSingleThreadExecutor(
        work -> {
          Thread thread = new Thread(work, name);
          thread.setDaemon(true);
          thread.setPriority(priority);
          return thread;
        });
  }
}
