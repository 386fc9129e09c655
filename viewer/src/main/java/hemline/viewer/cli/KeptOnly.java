package hemline.viewer.cli;

import hemline.shared.result.LeakOrigin;
import hemline.shared.result.LeakPoint;
import hemline.solver.study.ResultStore;

/**
 * Leak points that must all be kept already: at the first one that is not, the study ends.
 *
 * @param kept where they are kept
 */
record KeptOnly(ResultStore<LeakPoint> kept) implements ResultStore<LeakPoint> {

  /** Tells that a point would have to be solved. */
  static final class MissingException extends RuntimeException {
    private static final long serialVersionUID = 1;
  }

  @Override
  public LeakPoint find(LeakOrigin asked) {
    LeakPoint found = kept.find(asked);
    if (found == null) {
      throw new MissingException();
    }
    return found;
  }

  @Override
  public void keep(LeakOrigin asked, LeakPoint point) {
    kept.keep(asked, point);
  }
}
