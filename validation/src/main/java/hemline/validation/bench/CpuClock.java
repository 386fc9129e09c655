package hemline.validation.bench;

import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;

/**
 * CPU time of the calling thread: work of other processes on the machine does not count, nor do
 * compilation and garbage collection, which have threads of their own.
 */
final class CpuClock {
  private static final ThreadMXBean THREADS = ManagementFactory.getThreadMXBean();

  private final long start = THREADS.getCurrentThreadCpuTime();

  private CpuClock() {}

  static CpuClock start() {
    return new CpuClock();
  }

  /** CPU seconds the calling thread has spent since the start; call on the same thread. */
  double seconds() {
    return 1e-9 * (THREADS.getCurrentThreadCpuTime() - start);
  }
}
