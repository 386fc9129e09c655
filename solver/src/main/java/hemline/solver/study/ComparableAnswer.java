package hemline.solver.study;

import hemline.shared.result.Estimate;
import org.jspecify.annotations.Nullable;

/** A solved section, whose leak can be set over that of another one with a band of its own. */
public final class ComparableAnswer {
  private final Solved solved;

  ComparableAnswer(Solved solved) {
    this.solved = solved;
  }

  public SectionAnswer answer() {
    return solved.answer();
  }

  /**
   * Leak of this section over that of another one. Errors that are common to both cancel, so that
   * the band is narrower than those of the two leaks.
   *
   * @return null when either leak is not usable or they run in different directions
   */
  public @Nullable Estimate leakOver(ComparableAnswer other) {
    return LeakRatio.of(solved, other.solved);
  }
}
