package hemline.viewer.format;

import hemline.shared.result.Estimate;
import hemline.validation.reference.ExpectedFigure;
import hemline.validation.reference.ExpectedFigure.Comparison;
import hemline.validation.run.CheckRow;
import hemline.validation.run.CheckSummary;
import java.util.OptionalDouble;
import java.util.stream.Collectors;

/** Numbers and sentences of a check. */
public final class CheckWords {
  private static final int DIGITS = 5;
  private static final double PLAIN_FROM = 1e-4;
  private static final double PLAIN_TO = 1e6;

  private CheckWords() {}

  /** A number with five digits; powers of ten where it is very small or large. */
  public static String number(double value) {
    double size = Math.abs(value);
    if (size == 0 || size >= PLAIN_FROM && size < PLAIN_TO) {
      return Digits.plain(value, DIGITS);
    }
    int power = (int) Math.floor(Math.log10(size));
    return Digits.plain(value * Math.pow(10, -power), DIGITS - 1) + "e" + Digits.fixed(power, 0);
  }

  /** Value and half-width of the band. */
  public static String value(Estimate estimate) {
    double half = 0.5 * (estimate.high() - estimate.low());
    double size = Math.max(Math.abs(estimate.value()), half);
    if (!(half > 1e-6 * size)) {
      return number(estimate.value());
    }
    if (size >= PLAIN_FROM && size < PLAIN_TO) {
      return Digits.withBand(estimate, 1);
    }
    int power = (int) Math.floor(Math.log10(size));
    return "(" + Digits.withBand(estimate, Math.pow(10, -power)) + ")e" + Digits.fixed(power, 0);
  }

  /** Comparison error over the size of the reference, or the scale where that is zero. */
  public static String error(CheckRow row) {
    return share(row.comparisonError(), row.expected(), true);
  }

  /** Validation uncertainty over the same size; empty for orders and distances. */
  public static String uncertainty(CheckRow row) {
    return row.calibrates() ? share(row.validationUncertainty(), row.expected(), false) : "";
  }

  /** Unit of a component of the flow for an axis, "1" for a coefficient. */
  public static String unit(String component) {
    return switch (component) {
      case "p" -> "Pa";
      case "eddyViscosity", "nut" -> "m\u00b2/s";
      case "u", "v", "w" -> "m/s";
      default -> "1";
    };
  }

  /** What is allowed over the same size: "1 %"; or "at least". */
  public static String tolerance(ExpectedFigure expected) {
    return expected.tolerance().comparison() == Comparison.WITHIN
        ? percent(expected.tolerance().largest() / expected.size(), false)
        : expected.tolerance().comparison().key();
  }

  private static String share(OptionalDouble value, ExpectedFigure expected, boolean signed) {
    if (value.isEmpty()) {
      return "";
    }
    return percent(value.getAsDouble() / expected.size(), signed);
  }

  private static String percent(double share, boolean signed) {
    double percent = 100 * share;
    String text =
        Math.abs(percent) < 0.001 ? "0" : Digits.plain(percent, Math.abs(percent) < 0.1 ? 1 : 2);
    return (signed && percent >= 0.001 ? "+" : "") + text + " %";
  }

  /** One sentence or two with the counts. */
  public static String counts(CheckSummary s) {
    StringBuilder text = new StringBuilder();
    text.append(s.rows()).append(" rows: ").append(s.passed()).append(" passed");
    part(text, s.knownLimits(), s.knownLimits() == 1 ? "known limit" : "known limits");
    part(text, s.orientation(), "off but for orientation only");
    part(text, s.failed(), "failed");
    text.append(". ");
    if (!s.coverage().isEmpty()) {
      text.append("Our band holds the reference, of the rows that have one: ")
          .append(coverage(s))
          .append('.');
    }
    return text.toString().strip();
  }

  /** How often bands hold the reference, class by class: "exact 30 of 30, laminar 90 of 91". */
  public static String coverage(CheckSummary summary) {
    return summary.coverage().stream()
        .map(c -> c.flow().key() + " " + c.covered() + " of " + c.bands())
        .collect(Collectors.joining(", "));
  }

  private static void part(StringBuilder text, int count, String what) {
    if (count > 0) {
      text.append(", ").append(count).append(' ').append(what);
    }
  }
}
