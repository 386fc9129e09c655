package hemline.solver.rig;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Which of the usual faults of a rig the comparison errors look like.
 *
 * @param fits each fault alone, the likeliest first
 * @param points number of points
 * @param chiSquareWithout what is left with no fault at all
 * @param weightWithout likelihood of no fault among all
 * @param finding what can be said
 * @param named the fault where one stands out; null otherwise
 * @param alike faults that explain the points about as well as the best one; empty unless the
 *     finding is that they cannot be told apart
 */
public record Diagnosis(
    List<FaultFit> fits,
    int points,
    double chiSquareWithout,
    double weightWithout,
    Finding finding,
    @Nullable FaultFit named,
    List<FaultFit> alike) {

  /** What the pattern says. */
  public enum Finding {
    /** No fault is needed. */
    NONE("none"),
    /** One fault explains the points, and no other does as well. */
    NAMED("named"),
    /** Several explain them, or none does well enough. */
    CANNOT_TELL("cannotTell"),
    /** Too few points for a pattern. */
    TOO_FEW("tooFew"),
    /** Without a flow faults leave no pattern that could be told. */
    NO_FLOW("noFlow");

    private final String key;

    Finding(String key) {
      this.key = key;
    }

    /** Name in files. */
    public String key() {
      return key;
    }
  }

  public Diagnosis {
    fits = List.copyOf(fits);
    alike = List.copyOf(alike);
  }

  /** True where more is left than the stated uncertainties explain, fault or not. */
  public boolean leftOver() {
    double best = fits.isEmpty() ? chiSquareWithout : fits.get(0).chiSquare();
    return points > 1 && best > ComparisonStudy.chiSquareLimit(points - 1);
  }
}
