package hemline.viewer.format;

import java.util.ArrayList;
import java.util.List;

/** A table of text with aligned columns. */
public final class TextTable {
  /** Side to which a column leans. */
  public enum Lean {
    LEFT,
    RIGHT
  }

  private static final String BETWEEN = "  ";
  private final List<Lean> columns;
  private final List<List<String>> rows = new ArrayList<>();

  public TextTable(Lean... columns) {
    this.columns = List.of(columns);
  }

  /** Adds a row; missing cells stay empty. */
  public TextTable row(String... cells) {
    if (cells.length > columns.size()) {
      throw new IllegalArgumentException(
          "row of " + cells.length + " cells in a table of " + columns.size() + " columns");
    }
    rows.add(List.of(cells));
    return this;
  }

  /**
   * Lines of the table without trailing blanks.
   *
   * @param indent put before each line
   */
  public List<String> lines(String indent) {
    int[] width = new int[columns.size()];
    for (List<String> row : rows) {
      for (int c = 0; c < row.size(); c++) {
        width[c] = Math.max(width[c], length(row.get(c)));
      }
    }
    List<String> lines = new ArrayList<>();
    for (List<String> row : rows) {
      StringBuilder line = new StringBuilder(indent);
      for (int c = 0; c < row.size(); c++) {
        String pad = " ".repeat(width[c] - length(row.get(c)));
        line.append(columns.get(c) == Lean.RIGHT ? pad + row.get(c) : row.get(c) + pad);
        line.append(BETWEEN);
      }
      lines.add(line.toString().stripTrailing());
    }
    return lines;
  }

  /**
   * A text broken into lines between words.
   *
   * @param first begins the first line
   * @param others begins the other lines
   * @param width most characters of a line; a longer word stays whole
   */
  public static List<String> wrapped(String text, String first, String others, int width) {
    List<String> lines = new ArrayList<>();
    StringBuilder line = new StringBuilder(first);
    boolean empty = true;
    for (String word : text.strip().split("\\s+", -1)) {
      if (!empty && length(line.toString()) + 1 + length(word) > width) {
        lines.add(line.toString());
        line = new StringBuilder(others);
        empty = true;
      }
      line.append(empty ? "" : " ").append(word);
      empty = false;
    }
    lines.add(line.toString());
    return lines;
  }

  private static int length(String text) {
    return text.codePointCount(0, text.length());
  }
}
