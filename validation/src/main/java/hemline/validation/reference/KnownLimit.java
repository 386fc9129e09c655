package hemline.validation.reference;

import java.math.BigDecimal;
import java.math.MathContext;

/**
 * Why a method does not meet a tolerance, and by how much it missed when that was written down.
 *
 * <p>The reason names no figure of its own: {@code {value}} and {@code {error}} stand for the
 * computed value and the size of its error in per cent, so that text and figures cannot part.
 *
 * @param error computed minus reference over the size of the reference, as measured; not zero
 * @param reason text with those places
 * @param unsteady true where the flow is known not to settle and its mean is compared
 */
public record KnownLimit(double error, String reason, boolean unsteady) {
  /** How far beyond the measured error counts as the same: a tenth of it. */
  private static final double SAME = 1.1;

  private static final MathContext VALUE = new MathContext(3);
  private static final MathContext ERROR = new MathContext(2);

  public KnownLimit {
    if (!Double.isFinite(error) || error == 0 || reason.isBlank()) {
      throw new IllegalArgumentException(
          "a known limit needs its measured error and a reason, got " + error + ", " + reason);
    }
    String plain = reason.replace("{value}", "").replace("{error}", "");
    if (plain.chars().anyMatch(c -> Character.isDigit(c) || c == '{' || c == '}')) {
      throw new IllegalArgumentException(
          "the reason of a known limit takes its figures from {value} and {error}, got " + reason);
    }
  }

  /** A limit of a flow that settles. */
  public KnownLimit(double error, String reason) {
    this(error, reason, false);
  }

  /** True when an error lies on the same side as the measured one and is not worse. */
  public boolean bounds(double relativeError) {
    return relativeError * error > 0 && Math.abs(relativeError) <= SAME * Math.abs(error);
  }

  /** The reason with the figures of a run in their places. */
  public String told(double value, double relativeError) {
    return reason
        .replace("{value}", rounded(value, VALUE))
        .replace("{error}", rounded(Math.abs(100 * relativeError), ERROR) + " %");
  }

  private static String rounded(double value, MathContext digits) {
    return BigDecimal.valueOf(value).round(digits).toPlainString();
  }
}
