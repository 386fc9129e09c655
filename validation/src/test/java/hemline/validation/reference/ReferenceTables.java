package hemline.validation.reference;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Tables of the package, for tests elsewhere. */
public final class ReferenceTables {
  private ReferenceTables() {}

  /** The rows of a comma-separated text with a head line. */
  public static List<CitedRow> rows(String text, String name) {
    return CitedTable.rows(text, name);
  }

  /** The rows of a table with its source, such as {@code step/driver1985_friction}. */
  public static List<CitedRow> table(String name) {
    return CitedTable.read(name).rows();
  }

  /** The folders of cases with class, title and what they stand against, in their order. */
  public static Map<String, CitedRow> folders() {
    Map<String, CitedRow> folders = new LinkedHashMap<>();
    for (CitedRow row : CitedTable.rows(Resource.text("cases/index.csv"), "index")) {
      folders.put(row.text("folder"), row);
    }
    return folders;
  }
}
