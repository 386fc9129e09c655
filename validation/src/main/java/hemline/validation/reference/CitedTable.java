package hemline.validation.reference;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * A table with its source.
 *
 * @param name path of the table, such as {@code cavity/ghia1982_table1_u}
 * @param source text on origin, meaning of the columns, confidence and fit tolerance (Markdown)
 * @param columns in order
 * @param rows in order
 */
public record CitedTable(String name, String source, List<String> columns, List<CitedRow> rows) {
  public CitedTable {
    columns = List.copyOf(columns);
    rows = List.copyOf(rows);
  }

  /**
   * Reads a table that comes with the program.
   *
   * @param name path of the table without extension
   * @throws IllegalArgumentException when there is no such table
   */
  public static CitedTable read(String name) {
    String text = Resource.text(name + ".csv");
    return new CitedTable(
        name, Resource.text(name + ".md"), CommaText.parse(text).get(0), rows(text, name));
  }

  /** The rows of a table without a source of its own. */
  static List<CitedRow> rows(String text, String name) {
    List<List<String>> lines = CommaText.parse(text);
    List<String> columns = lines.get(0);
    List<CitedRow> rows = new ArrayList<>();
    for (List<String> line : lines.subList(1, lines.size())) {
      if (line.size() != columns.size()) {
        throw new IllegalStateException(
            name
                + ": a row has "
                + line.size()
                + " cells instead of "
                + columns.size()
                + ": "
                + line);
      }
      Map<String, String> cells = new LinkedHashMap<>();
      for (int i = 0; i < line.size(); i++) {
        cells.put(columns.get(i), line.get(i));
      }
      rows.add(new CitedRow(cells));
    }
    return rows;
  }

  /** First line of the source text that names where the numbers come from. */
  public String citation() {
    return Resource.citation(source);
  }

  /** The paragraph of the source text that begins with a word and a colon, without them. */
  String paragraph(String word) {
    return Resource.paragraph(source, word);
  }
}
