package hemline.shared.file;

import hemline.shared.problem.InputException;
import hemline.shared.problem.PlainText;
import hemline.shared.problem.Problem;
import hemline.shared.problem.Spelling;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * Reads the keys of one object of a file; every fault becomes a problem that names file, line and
 * key, and reading goes on with a stand-in value.
 */
final class JsonKeys {
  /** Largest size of a number that is read; keeps sums and squares finite. */
  private static final double LARGEST = 1e30;

  private final String file;
  private final String path;
  private final JsonItem.Members members;
  private final List<Problem> problems;

  JsonKeys(String file, String path, JsonItem.Members members, List<Problem> problems) {
    this.file = file;
    this.path = path;
    this.members = members;
    this.problems = problems;
  }

  /** Complains about keys outside a list. */
  void allow(String... known) {
    Set<String> allowed = Set.of(known);
    for (String key : members.values().keySet()) {
      if (!allowed.contains(key)) {
        String near = Spelling.nearest(key, List.of(known));
        fault(
            "file.key",
            keyLine(key),
            pathOf(key),
            "unknown key"
                + (near == null
                    ? "; keys here are "
                    : "; did you mean \"" + near + "\"? Keys here are ")
                + String.join(", ", known));
      }
    }
  }

  boolean has(String key) {
    return members.values().containsKey(key);
  }

  @Nullable JsonItem item(String key) {
    return members.values().get(key);
  }

  /** Line of a key, or of the object where it is absent. */
  int keyLine(String key) {
    return members.keyLines().getOrDefault(key, members.line());
  }

  String pathOf(String key) {
    return path.isEmpty() ? key : path + "." + key;
  }

  /** A text that must be there. */
  String text(String key, String example) {
    if (missing(key, "a text such as \"" + example + "\"")) {
      return "";
    }
    return text(key, "", example);
  }

  String text(String key, String absent, String example) {
    JsonItem item = item(key);
    if (item == null) {
      return absent;
    }
    if (item instanceof JsonItem.Text text) {
      String wrong =
          key.equals("name")
              ? PlainText.faultOfName(text.value())
              : PlainText.faultOfText(text.value());
      if (!wrong.isEmpty()) {
        fault("file.text", key, "the text " + wrong);
      }
      return text.value();
    }
    wrongType(key, item, "a text such as \"" + example + "\"");
    return absent;
  }

  boolean truth(String key, boolean absent) {
    JsonItem item = item(key);
    if (item == null) {
      return absent;
    }
    if (item instanceof JsonItem.Truth truth) {
      return truth.value();
    }
    wrongType(key, item, "true or false");
    return absent;
  }

  /** A number in the unit of the file that must be there, in metres. */
  double length(String key, FileUnit unit) {
    if (missing(key, "a number in " + unit.key())) {
      return Double.NaN;
    }
    return optionalLength(key, unit).orElse(Double.NaN);
  }

  OptionalDouble optionalLength(String key, FileUnit unit) {
    JsonItem item = item(key);
    if (item == null) {
      return OptionalDouble.empty();
    }
    BigDecimal value = decimal(item, pathOf(key), "a number in " + unit.key());
    return value == null ? OptionalDouble.empty() : OptionalDouble.of(unit.toMetres(value));
  }

  /** A plain number that must be there. */
  double number(String key, String meaning) {
    if (missing(key, meaning)) {
      return Double.NaN;
    }
    return number(key, Double.NaN, meaning);
  }

  double number(String key, double absent, String meaning) {
    JsonItem item = item(key);
    if (item == null) {
      return absent;
    }
    BigDecimal value = decimal(item, pathOf(key), meaning);
    return value == null ? Double.NaN : value.doubleValue();
  }

  /** A whole number from 0 on; -1 where it is none. */
  int index(String key, String meaning) {
    JsonItem item = item(key);
    if (item instanceof JsonItem.Number number && number.literal().matches("\\d{1,9}")) {
      return Integer.parseInt(number.literal());
    }
    if (!missing(key, meaning) && item != null) {
      String found = item instanceof JsonItem.Number n ? shortened(n.literal()) : item.noun();
      fault("file.type", item.line(), pathOf(key), "must be " + meaning + ", not " + found);
    }
    return -1;
  }

  /** The keys of a group, or null where it is absent or no group. */
  @Nullable JsonKeys group(String key) {
    JsonItem item = item(key);
    if (item == null) {
      return null;
    }
    return group(item, pathOf(key));
  }

  @Nullable JsonKeys group(JsonItem item, String at) {
    if (item instanceof JsonItem.Members inner) {
      return new JsonKeys(file, at, inner, problems);
    }
    wrongType(at, item, item.line(), "a group of keys in braces { }");
    return null;
  }

  /** The items of a list; empty where it is absent or no list. */
  List<JsonItem> list(String key) {
    JsonItem item = item(key);
    if (item == null) {
      return List.of();
    }
    if (item instanceof JsonItem.Array array) {
      return array.items();
    }
    wrongType(key, item, "a list in brackets [ ]");
    return new ArrayList<>();
  }

  /** A number of moderate size, or null after noting the problem. */
  @Nullable BigDecimal decimal(JsonItem item, String at, String meaning) {
    if (!(item instanceof JsonItem.Number number)) {
      wrongType(at, item, item.line(), meaning);
      return null;
    }
    double value = Double.parseDouble(number.literal());
    if (!(Math.abs(value) <= LARGEST)) {
      fault(
          "file.number",
          item.line(),
          at,
          "the number " + shortened(number.literal()) + " is too large");
      return null;
    }
    // a tiny number is zero for every use here, and cheap to handle as such
    return Math.abs(value) < 1e-200 ? BigDecimal.ZERO : new BigDecimal(number.literal());
  }

  /** Notes a missing key; true if it is missing. */
  boolean missing(String key, String right) {
    if (has(key)) {
      return false;
    }
    fault("file.missing", members.line(), pathOf(key), "this key is missing; give " + right);
    return true;
  }

  void wrongType(String key, JsonItem item, String right) {
    wrongType(pathOf(key), item, item.line(), right);
  }

  private void wrongType(String at, JsonItem item, int line, String right) {
    fault("file.type", line, at, "must be " + right + ", not " + item.noun());
  }

  /** Problems of a file that a key names: its own, or at the key where there is no such file. */
  void fault(String key, Path file, InputException e) {
    if (Files.isRegularFile(file)) {
      problems.addAll(e.problems());
    } else {
      e.problems().forEach(p -> fault(p.code(), key, p.place() + ": " + p.text()));
    }
  }

  void fault(String code, String key, String text) {
    JsonItem item = item(key);
    fault(code, item == null ? keyLine(key) : item.line(), pathOf(key), text);
  }

  void fault(String code, int line, String at, String text) {
    String where = line == ChangedValues.NO_LINE ? "" : ", line " + line;
    problems.add(new Problem(code, file + where + ", key " + at, text));
  }

  private static String shortened(String literal) {
    return literal.length() > 20 ? literal.substring(0, 20) + "…" : literal;
  }
}
