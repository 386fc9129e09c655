package hemline.viewer.cli;

import hemline.shared.problem.PlainText;
import hemline.solver.flow.ProgressListener;
import java.io.PrintStream;
import java.util.Locale;
import java.util.function.LongSupplier;

/** One line on a terminal that shows how far the work has come and how long it may still take. */
final class ProgressBar implements ProgressListener {
  private static final int CELLS = 24;
  private static final int COLUMNS = 79;
  private static final long BETWEEN = 100_000_000L;
  private static final double SURE_AFTER = 2;
  private static final double SURE_FROM = 0.02;

  private final PrintStream out;
  private final LongSupplier clock;
  private final long start;
  private long last;
  private double furthest;
  private boolean shown;
  private boolean closed;

  ProgressBar(PrintStream out, LongSupplier clock) {
    this.out = out;
    this.clock = clock;
    this.start = clock.getAsLong();
    this.last = start - BETWEEN;
  }

  @Override
  public synchronized void progress(double done, String what) {
    long now = clock.getAsLong();
    // listeners may be heard out of order; a bar that jumps back would only confuse
    furthest = Math.max(furthest, Math.min(1, done));
    if (closed || now - last < BETWEEN) {
      return;
    }
    last = now;
    shown = true;
    out.print('\r' + line(furthest, 1e-9 * (now - start), what));
    out.flush();
  }

  /** Wipes the line; nothing is shown afterwards. */
  synchronized void close() {
    closed = true;
    if (shown) {
      out.print('\r' + " ".repeat(COLUMNS) + '\r');
      out.flush();
    }
  }

  static String line(double done, double seconds, String what) {
    int full = (int) Math.floor(done * CELLS);
    StringBuilder text = new StringBuilder("  ");
    text.append("\u2588".repeat(full)).append("\u2591".repeat(CELLS - full));
    text.append(String.format(Locale.ROOT, " %3d %%", (int) Math.floor(100 * done)));
    if (seconds >= SURE_AFTER && done >= SURE_FROM && done < 1) {
      text.append("  ").append(left(seconds * (1 - done) / done));
    }
    text.append("  ").append(PlainText.shown(what));
    if (text.length() > COLUMNS) {
      text.setLength(COLUMNS - 1);
      text.append('\u2026');
    }
    return text + " ".repeat(COLUMNS - text.length());
  }

  private static String left(double seconds) {
    long whole = Math.max(1, Math.round(seconds));
    return whole < 90 ? whole + " s left" : (whole + 59) / 60 + " min left";
  }
}
