package hemline.viewer.format;

import hemline.shared.result.Estimate;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Locale;

/** Numbers with as many digits as they deserve. */
public final class Digits {
  private static final int MOST_SIGNIFICANT = 5;
  private static final int MOST_DECIMALS = 12;

  private Digits() {}

  /** A plain number with up to the given count of significant digits and no trailing zeros. */
  public static String plain(double value, int significant) {
    if (value == 0) {
      return "0";
    }
    int decimals = Math.max(0, significant - 1 - exponent(value));
    String text = fixed(value, Math.min(decimals, MOST_DECIMALS));
    if (text.indexOf('.') >= 0) {
      text = text.replaceAll("0+$", "").replaceAll("\\.$", "");
    }
    return text;
  }

  /** A number with a fixed count of decimals, a true minus sign and no negative zero. */
  public static String fixed(double value, int decimals) {
    BigDecimal rounded = BigDecimal.valueOf(value).setScale(decimals, RoundingMode.HALF_EVEN);
    String text = rounded.abs().toPlainString();
    return rounded.signum() < 0 ? "\u2212" + text : text;
  }

  /** Three digits with a power of ten; a dash where there is no number. */
  public static String scientific(double value) {
    return Double.isFinite(value)
        ? String.format(Locale.ROOT, "%.2e", value).replace('-', '\u2212')
        : "-";
  }

  /**
   * Decimals that fit the band of an estimate: the band shows one digit, or two when it begins with
   * 1 or 2.
   *
   * @param factor unit factor: shown number over SI value
   */
  public static int decimals(Estimate estimate, double factor) {
    double value = Math.abs(estimate.value() * factor);
    double half = 0.5 * (estimate.high() - estimate.low()) * Math.abs(factor);
    int most = value > 0 ? MOST_SIGNIFICANT - 1 - exponent(value) : 3;
    int wanted = most;
    if (half > 0) {
      int e = exponent(half);
      int lead = (int) Math.floor(half / Math.pow(10, e) + 1e-9);
      wanted = lead <= 2 ? 1 - e : -e;
    }
    return Math.max(0, Math.min(MOST_DECIMALS, Math.min(wanted, most)));
  }

  /** The value of an estimate, rounded as its band asks. */
  public static String value(Estimate estimate, double factor) {
    return exact(estimate, factor)
        ? plain(estimate.value() * factor, MOST_SIGNIFICANT)
        : fixed(estimate.value() * factor, decimals(estimate, factor));
  }

  /** The band of an estimate: "± 0.4", or "(+0.6/−0.2)" when it is lopsided; empty when exact. */
  public static String band(Estimate estimate, double factor) {
    double up = (estimate.high() - estimate.value()) * Math.abs(factor);
    double down = (estimate.value() - estimate.low()) * Math.abs(factor);
    if (exact(estimate, factor)) {
      return "";
    }
    if (factor < 0) {
      double swap = up;
      up = down;
      down = swap;
    }
    int decimals = decimals(estimate, factor);
    // a difference below the last shown digit is no lopsidedness
    if (Math.abs(up - down) < 1.5 * Math.pow(10, -decimals)) {
      return "\u00b1 " + upwards(Math.max(up, down), decimals);
    }
    return "(+" + upwards(up, decimals) + "/\u2212" + upwards(down, decimals) + ")";
  }

  /** Value and band in one text: "43.1 ± 0.4". */
  public static String withBand(Estimate estimate, double factor) {
    String band = band(estimate, factor);
    return band.isEmpty() ? value(estimate, factor) : value(estimate, factor) + " " + band;
  }

  /**
   * Which part of a band comes from where: "grid ± 0.4, model ± 1.2", unfinished iteration counted
   * with the grid; empty when there is no model part.
   */
  public static String parts(Estimate estimate, double factor) {
    if (estimate.model() == 0 || exact(estimate, factor)) {
      return "";
    }
    int decimals = decimals(estimate, factor);
    double size = Math.abs(factor);
    return "grid \u00b1 "
        + upwards(estimate.grid() * size, decimals)
        + ", model \u00b1 "
        + upwards(estimate.model() * size, decimals);
  }

  /** Low and high ends: "42.7 to 43.5". */
  public static String range(Estimate estimate, double factor) {
    int decimals = decimals(estimate, factor);
    double a = estimate.low() * factor;
    double b = estimate.high() * factor;
    return fixed(Math.min(a, b), decimals) + " to " + fixed(Math.max(a, b), decimals);
  }

  /** True when the band is too narrow to show beside the most digits that are ever shown. */
  public static boolean exact(Estimate estimate, double factor) {
    double half = Math.max(estimate.high() - estimate.value(), estimate.value() - estimate.low());
    return half * Math.abs(factor) < 0.05 * Math.pow(10, -decimals(estimate, factor));
  }

  /** Rounds a half-width away from zero, so that a shown band never gets narrower. */
  private static String upwards(double half, int decimals) {
    double unit = Math.pow(10, -decimals);
    return fixed(Math.ceil(half / unit - 0.05) * unit, decimals);
  }

  /** Power of ten of the leading digit. */
  private static int exponent(double value) {
    return (int) Math.floor(Math.log10(Math.abs(value)) + 1e-12);
  }
}
