package hemline.solver.study;

import hemline.shared.result.LeakOrigin;
import org.jspecify.annotations.Nullable;

/**
 * Keeps what solved sections gave by the content of their question. Used by many threads.
 *
 * @param <T> what is kept of a section, such as its figures
 */
public interface ResultStore<T> {
  /** Remembers nothing. */
  static <T> ResultStore<T> none() {
    return new ResultStore<>() {
      @Override
      public @Nullable T find(LeakOrigin asked) {
        return null;
      }

      @Override
      public void keep(LeakOrigin asked, T result) {}
    };
  }

  /**
   * A result found before by this solver, or null.
   *
   * @param asked from {@link LeakKey}
   */
  @Nullable T find(LeakOrigin asked);

  /** Keeps a result; a store that cannot keep it lets it go. */
  void keep(LeakOrigin asked, T result);
}
