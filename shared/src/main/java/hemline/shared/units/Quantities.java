package hemline.shared.units;

import hemline.shared.problem.InputException;
import hemline.shared.problem.Problem;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.measure.IncommensurableException;
import javax.measure.Unit;
import org.jspecify.annotations.Nullable;

/**
 * Reads quantities written with their unit, such as {@code 2mm}, {@code 0.6 kPa} or {@code
 * 1mm..6mm}, into SI.
 *
 * <p>The decimal sign is the point, whatever the locale. A plain {@code 0} needs no unit, except as
 * a temperature. Every fault is one {@link Problem} with an example of what would be right.
 */
public final class Quantities {
  private static final Pattern NUMBER =
      Pattern.compile("([+-]?(?:\\d+\\.?\\d*|\\.\\d+)(?:[eE][+-]?\\d{1,3})?)\\s*(.*)");
  private static final Pattern BARE = Pattern.compile("[+-]?(?:\\d+[.,]?\\d*|[.,]\\d+)");
  private static final Pattern DECIMAL_COMMA = Pattern.compile("[+-]?\\d*,\\d+.*");

  /** What follows the first of several numbers. */
  private static final Pattern LISTED = Pattern.compile("[^0-9]*[,; ]\\s*[-+.]?[0-9].*");

  private static final Pattern FRACTION =
      Pattern.compile("(-?)(\\d{1,6}\\s+)?(\\d{1,6})\\s*/\\s*(\\d{1,6})(\\s*[^\\d\\s/].*)?");
  private static final int LONGEST = 100;

  private Quantities() {}

  /**
   * Reads one quantity.
   *
   * @param place where the text stands, for the message: an option or key
   * @param text number and unit
   * @return value in SI, finite
   * @throws InputException if the text is no quantity of this kind
   */
  public static double read(QuantityKind kind, String place, String text) throws InputException {
    Written written = split(kind, place, text);
    return toSi(kind, place, text, written.number(), written.unit());
  }

  /**
   * Reads one quantity as people type it into a field with a unit of its own: a bare number takes
   * that unit, and a comma is the decimal sign as well as the point.
   *
   * @param unit of the field, a spelling of the kind
   * @param place names the field, for the message
   * @return value in SI, finite
   * @throws InputException if the text is no quantity of this kind
   */
  public static double typed(QuantityKind kind, String unit, String place, String text)
      throws InputException {
    return read(kind, place, whole(unit, text));
  }

  /**
   * What was typed, with the unit of its field where it is a bare number, with a point, and with a
   * fraction such as {@code 1 1/16} as a decimal number.
   */
  public static String whole(String unit, String text) {
    String plain = decimal(text.strip().replace('\u2212', '-'));
    String whole = BARE.matcher(plain).matches() ? plain + unit : plain;
    boolean comma = DECIMAL_COMMA.matcher(whole).matches() && whole.indexOf('.') < 0;
    return comma ? whole.replaceFirst(",", ".") : whole;
  }

  private static String decimal(String text) {
    Matcher m = FRACTION.matcher(text);
    if (!m.matches() || Integer.parseInt(m.group(4)) == 0) {
      return text;
    }
    String whole = m.group(2) == null ? "0" : m.group(2).strip();
    BigDecimal part =
        new BigDecimal(m.group(3)).divide(new BigDecimal(m.group(4)), MathContext.DECIMAL64);
    return m.group(1)
        + new BigDecimal(whole).add(part).toPlainString()
        + Objects.requireNonNullElse(m.group(5), "");
  }

  /**
   * Reads a range such as {@code 1mm..6mm} or {@code 1..6mm}; a unit on the upper end alone holds
   * for both.
   *
   * @throws InputException if an end is no quantity of this kind or the lower end is not below the
   *     upper
   */
  public static QuantityRange readRange(QuantityKind kind, String place, String text)
      throws InputException {
    int dots = text.indexOf("..");
    if (dots < 0) {
      throw fault(
          "quantity.range",
          place,
          quoted(text) + " is no range; write it as " + rangeExample(kind));
    }
    Written low = split(kind, place, text.substring(0, dots));
    Written high = split(kind, place, text.substring(dots + 2));
    String lowUnit = low.unit().isEmpty() ? high.unit() : low.unit();
    double from = toSi(kind, place, text, low.number(), lowUnit);
    double to = toSi(kind, place, text, high.number(), high.unit());
    if (!(from < to)) {
      throw fault(
          "quantity.range",
          place,
          quoted(text) + " does not rise; put the smaller end first, as in " + rangeExample(kind));
    }
    return new QuantityRange(from, to);
  }

  /** True if the text is written as a range, well or badly. */
  public static boolean isRange(String text) {
    return text.contains("..");
  }

  private record Written(BigDecimal number, String unit) {}

  private static Written split(QuantityKind kind, String place, String text) throws InputException {
    // the minus sign of typesetting, as results are written, counts as the one of keyboards
    String trimmed = text.strip().replace('\u2212', '-');
    if (trimmed.isEmpty()) {
      throw fault(
          "quantity.empty", place, kind.noun() + " is missing; write it as " + kind.example());
    }
    if (trimmed.length() > LONGEST) {
      throw fault(
          "quantity.number",
          place,
          "the text is too long for a quantity; write it as " + kind.example());
    }
    if (DECIMAL_COMMA.matcher(trimmed).matches()) {
      throw fault(
          "quantity.comma",
          place,
          quoted(text) + " has a comma; write decimals with a point, as in 1.5" + mainUnit(kind));
    }
    Matcher m = NUMBER.matcher(trimmed);
    if (!m.matches()) {
      throw fault(
          "quantity.number",
          place,
          quoted(text)
              + " does not begin with a number; write "
              + kind.noun()
              + " as "
              + kind.example());
    }
    return new Written(new BigDecimal(m.group(1)), m.group(2).replaceAll("\\s+", " "));
  }

  private static double toSi(
      QuantityKind kind, String place, String text, BigDecimal number, String unitText)
      throws InputException {
    if (unitText.isEmpty()) {
      if (kind == QuantityKind.NUMBER) {
        return finite(kind, place, text, number.doubleValue());
      }
      if (number.signum() == 0 && kind != QuantityKind.TEMPERATURE) {
        return 0;
      }
      throw fault(
          "quantity.unit",
          place,
          quoted(text)
              + " has no unit; write "
              + kind.noun()
              + " as "
              + kind.example()
              + " (units: "
              + unitList(kind)
              + ")");
    }
    Unit<?> unit = find(kind, unitText);
    if (unit == null) {
      throw fault("quantity.unit", place, unknownUnit(kind, text, unitText));
    }
    double value;
    try {
      value = unit.getConverterToAny(kind.si()).convert(number).doubleValue();
    } catch (IncommensurableException e) {
      throw new IllegalStateException(e);
    }
    finite(kind, place, text, value);
    if (kind == QuantityKind.TEMPERATURE && value <= 0) {
      throw fault(
          "quantity.size",
          place,
          quoted(text) + " is not above absolute zero; try " + kind.example());
    }
    return value;
  }

  private static double finite(QuantityKind kind, String place, String text, double value)
      throws InputException {
    if (!Double.isFinite(value)) {
      throw fault(
          "quantity.size", place, quoted(text) + " is too large; write it as " + kind.example());
    }
    return value;
  }

  private static @Nullable Unit<?> find(QuantityKind kind, String unitText) {
    Map<String, Unit<?>> units = kind.units();
    Unit<?> exact = units.get(unitText);
    return exact != null ? exact : units.get(unitText.replace(" ", "").replace("perm", "/m"));
  }

  private static String unknownUnit(QuantityKind kind, String text, String unitText) {
    for (QuantityKind other : QuantityKind.values()) {
      if (find(other, unitText) != null) {
        return quoted(text)
            + " is "
            + other.noun()
            + ", but "
            + kind.noun()
            + " is needed, such as "
            + kind.example();
      }
    }
    if (kind == QuantityKind.NUMBER) {
      return quoted(text) + " is more than a number; write it alone, as " + kind.example();
    }
    if (LISTED.matcher(unitText).matches()) {
      return quoted(text)
          + " is more than "
          + kind.noun()
          + "; write one, as "
          + kind.example()
          + ", or a range where one may stand, as "
          + rangeExample(kind);
    }
    TreeSet<String> near = new TreeSet<>();
    for (String known : kind.units().keySet()) {
      if (known.toLowerCase(Locale.ROOT).equals(unitText.toLowerCase(Locale.ROOT))) {
        near.add(known);
      }
    }
    String cure =
        near.isEmpty()
            ? "write " + kind.noun() + " as " + kind.example() + " (units: " + unitList(kind) + ")"
            : "the unit is written " + String.join(" or ", near);
    return quoted(unitText) + " in " + quoted(text) + " is no unit known here; " + cure;
  }

  private static String unitList(QuantityKind kind) {
    return String.join(", ", kind.units().keySet());
  }

  private static String mainUnit(QuantityKind kind) {
    return kind.units().keySet().iterator().next();
  }

  private static String rangeExample(QuantityKind kind) {
    String unit = mainUnit(kind);
    return "1" + unit + "..6" + unit;
  }

  /** The text in quotes, shortened and without control characters. */
  private static String quoted(String text) {
    String clean = text.strip().replaceAll("\\p{Cntrl}", "?");
    return "\"" + (clean.length() > 40 ? clean.substring(0, 40) + "…" : clean) + "\"";
  }

  private static InputException fault(String code, String place, String text) {
    return new InputException(code, place, text);
  }
}
