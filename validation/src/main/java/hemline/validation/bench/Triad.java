package hemline.validation.bench;

/**
 * Speed at which one core of this machine streams memory: {@code a[i] = b[i] + s c[i]}.
 *
 * <p>A yardstick that times are divided by, so that figures of unlike machines compare. 24 bytes
 * are counted for an element: two read, one written. The three arrays together hold 192 MB, more
 * than the caches of usual machines.
 */
public final class Triad {
  private static final int SIZE = 8_000_000;
  private static final int ROUNDS = 12;
  private static final double BYTES = 24;

  private final double[] a = new double[SIZE];
  private final double[] b = new double[SIZE];
  private final double[] c = new double[SIZE];

  private Triad() {
    java.util.Arrays.fill(b, 1);
    java.util.Arrays.fill(c, 2);
  }

  /** Bytes per second of the fastest of a dozen rounds, by CPU time of the calling thread. */
  public static double bandwidth() {
    Triad triad = new Triad();
    double best = Double.MAX_VALUE;
    for (int round = 0; round < ROUNDS; round++) {
      CpuClock clock = CpuClock.start();
      triad.pass(1.0 / (round + 1));
      best = Math.min(best, clock.seconds());
    }
    if (!(triad.a[SIZE / 2] > 1)) {
      throw new IllegalStateException("the triad was not computed");
    }
    return BYTES * SIZE / best;
  }

  private void pass(double s) {
    for (int i = 0; i < SIZE; i++) {
      a[i] = b[i] + s * c[i];
    }
  }
}
