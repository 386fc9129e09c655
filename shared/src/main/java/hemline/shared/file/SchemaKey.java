package hemline.shared.file;

import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** The schema key with which every file begins. */
final class SchemaKey {
  private static final Pattern FORM = Pattern.compile("hemline\\.([a-z]+)/(\\d{1,6})");

  private SchemaKey() {}

  /** Notes a problem unless the file is of this kind and version; true if it is. */
  static boolean check(JsonKeys keys, String kind, int version) {
    String right = "hemline." + kind + "/" + version;
    if (keys.missing("schema", "\"" + right + "\"")) {
      return false;
    }
    String written = keys.text("schema", "", right);
    Matcher m = FORM.matcher(written);
    if (!(keys.item("schema") instanceof JsonItem.Text)) {
      return false;
    }
    if (!m.matches()) {
      keys.fault("file.schema", "schema", "must be \"" + right + "\"");
    } else if (!m.group(1).equals(kind)) {
      keys.fault(
          "file.schema",
          "schema",
          "is \"" + written + "\", but a file \"" + right + "\" is needed");
    } else if (Integer.parseInt(m.group(2)) > version) {
      keys.fault(
          "file.schema",
          "schema",
          "is \""
              + written
              + "\", written by a newer version; this one reads up to \""
              + right
              + "\": take a newer version of the program");
    } else if (Integer.parseInt(m.group(2)) != version) {
      keys.fault("file.schema", "schema", "is \"" + written + "\", but must be \"" + right + "\"");
    } else {
      return true;
    }
    return false;
  }

  /** Reads the unit of the lengths. */
  static FileUnit lengthUnit(JsonKeys keys) {
    String written = keys.text("lengthUnit", FileUnit.MM.key(), "mm");
    for (FileUnit unit : FileUnit.values()) {
      if (unit.key().equals(written)) {
        return unit;
      }
    }
    keys.fault("file.unit", "lengthUnit", "must be \"mm\" or \"m\"");
    return FileUnit.MM;
  }
}
