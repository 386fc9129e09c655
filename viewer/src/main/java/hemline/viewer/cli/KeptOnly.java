package hemline.viewer.cli;

import hemline.shared.result.LeakPoint;
import hemline.solver.study.LeakStore;

/**
 * Leak points that must all be kept already: at the first one that is not, the study ends.
 *
 * @param kept where they are kept
 */
record KeptOnly(LeakStore kept) implements LeakStore {

  /** Tells that a point would have to be solved. */
  static final class MissingException extends RuntimeException {
    private static final long serialVersionUID = 1;
  }

  @Override
  public LeakPoint find(String key) {
    LeakPoint found = kept.find(key);
    if (found == null) {
      throw new MissingException();
    }
    return found;
  }

  @Override
  public void keep(String key, LeakPoint point) {
    kept.keep(key, point);
  }
}
