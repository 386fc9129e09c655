package hemline.shared.units;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;

/** Numbers and quantities as text for people; the decimal sign is the point in every locale. */
public final class NumberText {
  private static final int MOST_ZEROS = 6;

  private NumberText() {}

  /**
   * A number rounded to some significant digits, without needless zeros; an exponent only where the
   * plain form would need many zeros.
   *
   * @param digits significant digits, at least 1
   */
  public static String significant(double value, int digits) {
    if (!Double.isFinite(value)) {
      return "not a number";
    }
    if (value == 0) {
      return "0";
    }
    BigDecimal rounded =
        new BigDecimal(value).round(new MathContext(digits, RoundingMode.HALF_EVEN));
    return text(rounded.stripTrailingZeros());
  }

  /**
   * A number with as many decimals as its uncertainty deserves: two significant digits of the
   * half-width.
   *
   * @param halfWidth of the band, same unit as the value; 0 or not finite gives four digits
   */
  public static String within(double value, double halfWidth) {
    double width = Math.abs(halfWidth);
    if (!Double.isFinite(value) || !Double.isFinite(width) || width == 0) {
      return significant(value, 4);
    }
    BigDecimal band = new BigDecimal(width).round(new MathContext(2, RoundingMode.UP));
    int decimals = band.scale() + 2 - band.precision();
    return text(new BigDecimal(value).setScale(decimals, RoundingMode.HALF_EVEN));
  }

  /** A length in mm with its unit, from metres: {@code 2 mm}. */
  public static String millimetres(double metres) {
    return bareMillimetres(metres) + " mm";
  }

  /** A point as {@code (8, 10) mm}, from metres. */
  public static String point(double x, double y) {
    return "(" + bareMillimetres(x) + ", " + bareMillimetres(y) + ") mm";
  }

  /** A pressure in Pa, or in kPa from 10 kPa on. */
  public static String pressure(double pascals) {
    return Math.abs(pascals) < 1e4
        ? significant(pascals, 4) + " Pa"
        : significant(pascals / 1000, 4) + " kPa";
  }

  /** A length in mm, rounded to six digits. */
  private static String bareMillimetres(double metres) {
    return significant(1000 * metres, 6);
  }

  private static String text(BigDecimal value) {
    if (value.signum() == 0) {
      return value.scale() > 0 && value.scale() <= MOST_ZEROS ? value.toPlainString() : "0";
    }
    int exponent = value.precision() - value.scale() - 1;
    if (exponent < -MOST_ZEROS || exponent > 9) {
      return value.toString();
    }
    return value.toPlainString();
  }
}
