package hemline.solver.study;

import hemline.shared.result.LeakOrigin;
import hemline.shared.result.LeakPoint;
import org.jspecify.annotations.Nullable;

/** Keeps solved leak points by the content of their question. */
public interface LeakStore {
  /** Remembers nothing. */
  LeakStore NONE =
      new LeakStore() {
        @Override
        public @Nullable LeakPoint find(LeakOrigin asked) {
          return null;
        }

        @Override
        public void keep(LeakOrigin asked, LeakPoint point) {}
      };

  /**
   * A point solved before by this solver, or null.
   *
   * @param asked from {@link LeakKey}
   */
  @Nullable LeakPoint find(LeakOrigin asked);

  /** Keeps a point; a store that cannot keep it lets it go. */
  void keep(LeakOrigin asked, LeakPoint point);
}
