package hemline.validation.bench;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.Locale;

/** Round steps of chart axes. */
final class AxisSteps {
  private AxisSteps() {}

  /** A step of 1, 2 or 5 times a power of ten that divides 0 to the largest value in 3 to 6. */
  static double linear(double largest) {
    double power = Math.pow(10, Math.floor(Math.log10(largest)));
    double lead = largest / power;
    if (lead <= 1.2) {
      return 0.2 * power;
    }
    if (lead <= 3) {
      return 0.5 * power;
    }
    return lead <= 6 ? power : 2 * power;
  }

  /** A number times a power of ten, exact where decimal text is. */
  static double power(double lead, int power) {
    return Double.parseDouble(lead + "e" + power);
  }

  /** Short text of an axis value: thousands as k. */
  static String label(double value) {
    if (value >= 1000 && value == 1000 * Math.rint(value / 1000)) {
      return String.format(Locale.ROOT, "%.0fk", value / 1000);
    }
    return new BigDecimal(value).round(new MathContext(3)).stripTrailingZeros().toPlainString();
  }
}
