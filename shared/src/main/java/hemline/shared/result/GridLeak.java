package hemline.shared.result;

/**
 * Leak of a section on one grid of its family, to compare lips grid by grid: errors common to both
 * then cancel.
 *
 * @param place in the family, 0 the coarsest
 * @param cells fluid cells, at least 1
 * @param discharge discharge coefficient
 * @param spread half the spread of the coefficient over the closing iterations, not negative
 * @param lift upward force on the lip per metre of seal over the suction, m
 */
public record GridLeak(int place, int cells, double discharge, double spread, double lift) {
  public GridLeak {
    if (place < 0 || cells < 1 || !(spread >= 0) || !Double.isFinite(discharge + spread + lift)) {
      throw new IllegalArgumentException(
          "a leak on a grid needs finite figures, got " + discharge + ", " + spread + ", " + lift);
    }
  }
}
