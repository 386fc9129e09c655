package hemline.solver.study;

import hemline.shared.result.LeakPoint;
import org.jspecify.annotations.Nullable;

/** Keeps solved leak points by the content of their question. */
public interface LeakStore {
  /** Remembers nothing. */
  LeakStore NONE =
      new LeakStore() {
        @Override
        public @Nullable LeakPoint find(String key) {
          return null;
        }

        @Override
        public void keep(String key, LeakPoint point) {}
      };

  /**
   * A point solved before, or null.
   *
   * @param key of {@link LeakKey}
   */
  @Nullable LeakPoint find(String key);

  /** Keeps a point; a store that cannot keep it lets it go. */
  void keep(String key, LeakPoint point);
}
