package hemline.solver.rig;

import java.util.List;

/**
 * Which of the usual faults of a rig the comparison errors look like.
 *
 * @param fits each fault alone, the likeliest first
 * @param points number of points
 * @param chiSquareWithout what is left with no fault at all
 * @param weightWithout likelihood of no fault among all
 * @param finding what can be said
 * @param named the fault that stands out, or two that do together, with their sizes; empty
 *     otherwise
 * @param alike faults of which one is needed, besides the named one if there is one, but which of
 *     them cannot be told; empty for none
 */
public record Diagnosis(
    List<FaultFit> fits,
    int points,
    double chiSquareWithout,
    double weightWithout,
    Finding finding,
    List<FaultFit> named,
    List<FaultFit> alike) {

  /** What the pattern says. */
  public enum Finding {
    /** No fault is needed. */
    NONE("none"),
    /** One fault, or two together, stand in all that explains the points about as well. */
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
    named = List.copyOf(named);
    alike = List.copyOf(alike);
  }

  /** True where more is left than the stated uncertainties explain, fault or not. */
  public boolean leftOver() {
    double best =
        !named.isEmpty()
            ? named.get(0).chiSquare()
            : fits.isEmpty() ? chiSquareWithout : fits.get(0).chiSquare();
    return points > 1 && best > ComparisonStudy.chiSquareLimit(points - 1);
  }

  /**
   * True where a calibration may be kept: no fault was named but the scale of the flow, which has
   * the pattern of a prediction that is off by the same share everywhere.
   */
  public boolean teaches() {
    return named.stream().allMatch(f -> f.fault() == Fault.FLOW_SCALE);
  }
}
