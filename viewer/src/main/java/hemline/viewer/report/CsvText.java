package hemline.viewer.report;

/** Texts in tables of comma-separated values (RFC 4180). */
final class CsvText {
  private CsvText() {}

  /**
   * A text as a cell. One that a spreadsheet would take for a formula gets an apostrophe before it,
   * which spreadsheets take for "this is a text".
   */
  static String cell(String text) {
    boolean formula = !text.isEmpty() && "=+-@\t\r".indexOf(text.charAt(0)) >= 0;
    String safe = formula ? "'" + text : text;
    boolean plain = safe.chars().noneMatch(c -> c == ',' || c == '"' || c == '\n' || c == '\r');
    return plain ? safe : "\"" + safe.replace("\"", "\"\"") + "\"";
  }
}
