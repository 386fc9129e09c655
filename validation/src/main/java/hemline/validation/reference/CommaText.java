package hemline.validation.reference;

import java.util.ArrayList;
import java.util.List;

/** Comma-separated text, RFC 4180: cells with commas or quotes stand in double quotes. */
final class CommaText {
  private CommaText() {}

  /** Cells by line; empty lines are skipped. A quoted cell may not span lines. */
  static List<List<String>> parse(String text) {
    return text.lines().filter(line -> !line.isBlank()).map(CommaText::cells).toList();
  }

  private static List<String> cells(String line) {
    List<String> cells = new ArrayList<>();
    StringBuilder cell = new StringBuilder();
    boolean quoted = false;
    for (int i = 0; i < line.length(); i++) {
      char c = line.charAt(i);
      if (c == '"') {
        boolean doubled = quoted && i + 1 < line.length() && line.charAt(i + 1) == '"';
        if (doubled) {
          cell.append('"');
          i++;
        } else {
          quoted = !quoted;
        }
      } else if (c == ',' && !quoted) {
        cells.add(cell.toString());
        cell.setLength(0);
      } else {
        cell.append(c);
      }
    }
    if (quoted) {
      throw new IllegalStateException("a quote is not closed: " + line);
    }
    cells.add(cell.toString());
    return cells;
  }
}
