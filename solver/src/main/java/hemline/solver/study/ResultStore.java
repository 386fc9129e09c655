package hemline.solver.study;

import hemline.shared.result.LeakOrigin;
import hemline.shared.result.SectionResult;
import org.jspecify.annotations.Nullable;

/** Keeps the figures of solved sections by the content of their question. Used by many threads. */
public interface ResultStore {
  /** Remembers nothing. */
  ResultStore NONE =
      new ResultStore() {
        @Override
        public @Nullable SectionResult find(LeakOrigin asked) {
          return null;
        }

        @Override
        public void keep(LeakOrigin asked, SectionResult result) {}
      };

  /**
   * A result solved before by this solver, or null.
   *
   * @param asked from {@link LeakKey}
   */
  @Nullable SectionResult find(LeakOrigin asked);

  /** Keeps a result; a store that cannot keep it lets it go. */
  void keep(LeakOrigin asked, SectionResult result);
}
