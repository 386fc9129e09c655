package hemline.viewer.app;

import java.time.Duration;
import java.time.Instant;
import javafx.animation.AnimationTimer;

/**
 * Tells on standard error how long the start took, for those who measure it: set the system
 * property {@code hemline.clock} to true.
 */
final class StartClock {
  private static final String WANTED = "hemline.clock";

  private StartClock() {}

  /** From the start of the process, launcher included, to the end of the first frame. */
  static void tellFirstFrame() {
    if (Boolean.getBoolean(WANTED)) {
      new AnimationTimer() {
        private int pulses;

        @Override
        public void handle(long now) {
          // a pulse begins when the frame of the one before it is painted
          if (++pulses == 3) {
            stop();
            tell();
          }
        }
      }.start();
    }
  }

  private static void tell() {
    ProcessHandle.Info process = ProcessHandle.current().info();
    process
        .startInstant()
        .ifPresent(
            start -> {
              long wall = Duration.between(start, Instant.now()).toMillis();
              long cpu = process.totalCpuDuration().orElse(Duration.ZERO).toMillis();
              System.err.println("window shown after " + wall + " ms, " + cpu + " ms of CPU time");
            });
  }
}
