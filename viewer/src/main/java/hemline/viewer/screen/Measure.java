package hemline.viewer.screen;

import hemline.shared.fluid.Air;
import hemline.shared.problem.InputException;
import hemline.shared.section.SectionLimits;
import hemline.shared.units.Quantities;
import hemline.shared.units.QuantityKind;
import hemline.viewer.format.Digits;
import hemline.viewer.format.LengthUnit;
import hemline.viewer.format.Wording;
import java.util.function.DoubleFunction;

/**
 * What a field asks for, and how it is written.
 *
 * @param kind of quantity
 * @param unit that a bare number takes; a spelling of the kind, empty for small lengths
 * @param writer of a value, SI
 * @param limits what would be right for a value out of range, SI; empty for one within
 */
record Measure(
    QuantityKind kind, String unit, DoubleFunction<String> writer, DoubleFunction<String> limits) {
  private static final String IN2 = "in2";

  /** Any length. */
  static final Measure LENGTH = length(v -> "");

  /** A length above 0. */
  static final Measure EXTENT = length(v -> v > 0 ? "" : "a length above 0 is needed, such as 2mm");

  /** A length that may be 0. */
  static final Measure STEP =
      new Measure(
          QuantityKind.LENGTH,
          "",
          LengthUnit::fraction,
          v -> v >= 0 ? "" : "a length of 0 or more is needed, such as 0.5mm or 1/64in");

  /** Length of a test coupon. */
  static final Measure COUPON =
      length(v -> v >= 1e-3 && v <= 1 ? "" : "a test coupon is 1 mm to 1 m long, such as 40mm");

  static final Measure GAP = length(SectionLimits::gap);
  static final Measure SUCTION =
      new Measure(QuantityKind.PRESSURE, "Pa", Wording::pressure, SectionLimits::suction);
  static final Measure SPEED =
      new Measure(
          QuantityKind.SPEED, "m/s", v -> Digits.plain(v, 4) + " m/s", SectionLimits::speed);
  static final Measure TEMPERATURE =
      new Measure(
          QuantityKind.TEMPERATURE,
          "degC",
          Wording::temperature,
          v ->
              v >= Air.COLDEST && v <= Air.HOTTEST
                  ? ""
                  : "air is known here from -73degC to 227degC, such as 15degC");

  private static Measure length(DoubleFunction<String> limits) {
    return new Measure(QuantityKind.LENGTH, "", LengthUnit::exactly, limits);
  }

  /** The unit of a bare number; that of small lengths and of areas follows the one in use. */
  @Override
  public String unit() {
    if (kind == QuantityKind.AREA && LengthUnit.now() == LengthUnit.INCH) {
      return IN2;
    }
    return kind == QuantityKind.LENGTH && unit.isEmpty() ? LengthUnit.unit() : unit;
  }

  /** A quantity in one of its units, within the limits of whoever takes it. */
  static Measure of(QuantityKind kind, String unit) {
    if (unit.equals(LengthUnit.MM.symbol())) {
      return LENGTH;
    }
    double zero = si(kind, unit, "0");
    double one = si(kind, unit, "1") - zero;
    String after = unit.isEmpty() ? "" : " " + unit;
    Measure own = new Measure(kind, unit, v -> Digits.plain((v - zero) / one, 6) + after, v -> "");
    return kind == QuantityKind.AREA ? own.orInches() : own;
  }

  /** An area, in square inches while those are in use. */
  private Measure orInches() {
    return new Measure(
        kind,
        unit,
        v ->
            LengthUnit.now() == LengthUnit.MM
                ? writer.apply(v)
                : Digits.plain(LengthUnit.areaFactor() * v, 5) + " " + IN2,
        limits);
  }

  private static double si(QuantityKind kind, String unit, String number) {
    try {
      return Quantities.typed(kind, unit, unit, number);
    } catch (InputException e) {
      throw new IllegalArgumentException(e);
    }
  }

  /** A plain number. */
  static Measure number(int digits, DoubleFunction<String> limits) {
    return new Measure(QuantityKind.NUMBER, "", v -> Digits.plain(v, digits), limits);
  }

  String text(double si) {
    return writer.apply(si);
  }
}
