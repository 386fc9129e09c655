package hemline.validation.reference;

import java.util.OptionalDouble;

/**
 * What a figure of a case should be.
 *
 * @param quantity name of the figure in result files, such as {@code pressureDrop}
 * @param reference SI
 * @param referenceUncertainty half-width of the reference itself, SI, not negative
 * @param relativeTolerance largest difference that passes, over the reference, positive
 */
public record ExpectedFigure(
    String quantity, double reference, double referenceUncertainty, double relativeTolerance) {
  public ExpectedFigure {
    if (!Double.isFinite(reference)
        || !(referenceUncertainty >= 0)
        || !(relativeTolerance > 0)
        || reference == 0) {
      throw new IllegalArgumentException(
          "a reference must be finite and not zero, its uncertainty not negative and the tolerance"
              + " positive, got "
              + reference
              + ", "
              + referenceUncertainty
              + ", "
              + relativeTolerance);
    }
  }

  /** Largest difference that passes, SI. */
  public double tolerance() {
    return relativeTolerance * Math.abs(reference);
  }

  /**
   * Judges a computed figure.
   *
   * @param computed empty when the solve gave none
   */
  public boolean passes(OptionalDouble computed) {
    return computed.isPresent() && Math.abs(computed.getAsDouble() - reference) <= tolerance();
  }

  /**
   * True when the reference, within its own uncertainty, lies inside a computed band.
   *
   * @param low lower end of the computed band
   * @param high upper end of the computed band
   */
  public boolean insideBand(double low, double high) {
    return low - referenceUncertainty <= reference && reference <= high + referenceUncertainty;
  }
}
