package hemline.shared.file;

import hemline.shared.problem.InputException;
import hemline.shared.problem.Problem;
import hemline.shared.units.NumberText;
import hemline.shared.units.Quantities;
import hemline.shared.units.QuantityKind;
import org.jspecify.annotations.Nullable;

/** Reads keys whose values are quantities written with their unit, such as "2mm". */
final class QuantityKeys {
  private QuantityKeys() {}

  /** A quantity that must be there, in SI; not a number after a problem. */
  static double needed(JsonKeys keys, String key, QuantityKind kind, String least, String most) {
    if (keys.missing(key, kind.noun() + " such as \"" + kind.example() + "\"")) {
      return Double.NaN;
    }
    return optional(keys, key, kind, least, most, Double.NaN);
  }

  /**
   * A quantity that may be there, in SI; not a number after a problem.
   *
   * @param least smallest value that is taken, written with its unit
   * @param most largest value that is taken, written with its unit
   * @param absent value where the key is missing, SI
   */
  static double optional(
      JsonKeys keys, String key, QuantityKind kind, String least, String most, double absent) {
    JsonItem item = keys.item(key);
    if (item == null) {
      return absent;
    }
    if (!(item instanceof JsonItem.Text text)) {
      keys.wrongType(
          key, item, kind.noun() + " with its unit in quotes, such as \"" + kind.example() + "\"");
      return Double.NaN;
    }
    Double value = read(keys, key, kind, text.value());
    if (value == null) {
      return Double.NaN;
    }
    if (value < constant(kind, least) || value > constant(kind, most)) {
      keys.fault(
          "machine.range",
          key,
          "is \"" + text.value() + "\", but must lie between " + least + " and " + most);
      return Double.NaN;
    }
    return value;
  }

  /** A pure number between two limits; not a number after a problem. */
  static double share(JsonKeys keys, String key, double least, double most, String meaning) {
    if (keys.missing(
        key,
        meaning
            + " between "
            + NumberText.significant(least, 6)
            + " and "
            + NumberText.significant(most, 6))) {
      return Double.NaN;
    }
    return share(keys, key, least, most, meaning, Double.NaN);
  }

  /** A pure number between two limits that may be missing. */
  static double share(
      JsonKeys keys, String key, double least, double most, String meaning, double absent) {
    double value = keys.number(key, absent, "a number (" + meaning + ")");
    if (keys.has(key) && Double.isFinite(value) && (value < least || value > most)) {
      keys.fault(
          "machine.range",
          key,
          "is "
              + NumberText.significant(value, 6)
              + ", but "
              + meaning
              + " lies between "
              + NumberText.significant(least, 6)
              + " and "
              + NumberText.significant(most, 6));
      return Double.NaN;
    }
    return value;
  }

  private static @Nullable Double read(JsonKeys keys, String key, QuantityKind kind, String text) {
    try {
      return Quantities.read(kind, key, text);
    } catch (InputException e) {
      for (Problem p : e.problems()) {
        keys.fault(p.code(), key, p.text());
      }
      return null;
    }
  }

  private static double constant(QuantityKind kind, String text) {
    try {
      return Quantities.read(kind, "limit", text);
    } catch (InputException e) {
      throw new IllegalArgumentException(e);
    }
  }
}
