package hemline.validation.reference;

import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;

/**
 * What a quantity of a case should be.
 *
 * @param quantity a figure by its name in result files, such as {@code pressureDrop}, or a place in
 *     the flow, such as {@code u at 0.5,0.2}
 * @param reference value to be met
 * @param tolerance how far a value may lie from it
 * @param evidence where the reference comes from
 * @param knownLimit why the method does not meet the tolerance, and by how much; null when it does
 */
public record ExpectedFigure(
    String quantity,
    Reference reference,
    Tolerance tolerance,
    Evidence evidence,
    @Nullable KnownLimit knownLimit) {
  private static final double ROUND_OFF = 1e-9;

  /**
   * A published value, SI.
   *
   * @param value of it
   * @param uncertainty half-width of the reference itself, not negative
   */
  public record Reference(double value, double uncertainty) {}

  /**
   * How far a value may lie from its reference.
   *
   * @param relative largest difference that passes, over the scale, not negative
   * @param scale what the tolerance is relative to, SI, positive; the size of the reference as a
   *     rule
   * @param comparison on which side of the reference a value passes
   * @param reason why the tolerance is what it is
   */
  public record Tolerance(double relative, double scale, Comparison comparison, String reason) {
    /** Largest difference that passes, SI. */
    public double largest() {
      return relative * scale;
    }
  }

  /** On which side of the reference a value passes. */
  public enum Comparison {
    /** Not further from it than the tolerance. */
    WITHIN("within"),
    /** Not below it. */
    AT_LEAST("at least"),
    /** Not above it. */
    AT_MOST("at most");

    private final String key;

    Comparison(String key) {
      this.key = key;
    }

    /** Name in tables. */
    public String key() {
      return key;
    }
  }

  public ExpectedFigure {
    boolean within = tolerance.comparison == Comparison.WITHIN;
    if (!Double.isFinite(reference.value)
        || !(reference.uncertainty >= 0)
        || !(tolerance.relative >= 0)
        || within && !(tolerance.relative > 0)
        || !(tolerance.scale > 0)) {
      throw new IllegalArgumentException(
          quantity
              + ": a reference must be finite, its uncertainty not negative, the tolerance and its"
              + " scale positive, got "
              + reference.value
              + ", "
              + reference.uncertainty
              + ", "
              + tolerance.relative
              + ", "
              + tolerance.scale);
    }
  }

  /** What errors are told relative to, SI: the reference, or the scale where that is zero. */
  public double size() {
    return reference.value == 0 ? tolerance.scale : Math.abs(reference.value);
  }

  /**
   * Natural size of a computed value, SI, which bands are judged by: its own, or the scale where
   * that is given because the reference is zero or nearly so.
   *
   * @param value computed
   */
  public double natural(double value) {
    return tolerance.scale > size() || reference.value == 0 ? tolerance.scale : Math.abs(value);
  }

  /**
   * Judges a computed figure.
   *
   * @param computed empty when the solve gave none
   */
  public boolean passes(OptionalDouble computed) {
    if (computed.isEmpty()) {
      return false;
    }
    double value = computed.getAsDouble();
    return switch (tolerance.comparison) {
      case WITHIN -> Math.abs(value - reference.value) <= tolerance.largest();
      case AT_LEAST -> value >= reference.value - tolerance.largest();
      case AT_MOST -> value <= reference.value + tolerance.largest();
    };
  }

  /**
   * True when the reference, within its own uncertainty, lies inside a computed band that says
   * something: one as wide as the value holds nothing.
   *
   * @param value computed
   * @param low lower end of the computed band
   * @param high upper end of the computed band
   */
  public boolean insideBand(double value, double low, double high) {
    if (high - low >= natural(value)) {
      return false;
    }
    double slack = reference.uncertainty + ROUND_OFF * tolerance.scale;
    return low - slack <= reference.value && reference.value <= high + slack;
  }
}
