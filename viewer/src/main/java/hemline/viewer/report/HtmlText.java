package hemline.viewer.report;

import hemline.shared.problem.PlainText;
import hemline.viewer.picture.Picture;
import java.nio.charset.StandardCharsets;
import java.util.Base64;
import java.util.List;

/** Pieces of a page that stands by itself: no script, no link to another file or place. */
final class HtmlText {
  private static final String STYLE =
      """
      :root { color-scheme: light; }
      body { font: 15px/1.5 Verdana, 'DejaVu Sans', sans-serif; color: #1f2533; background: #fff;
        max-width: 1040px; margin: 2rem auto; padding: 0 1.2rem; }
      h1 { font-size: 1.7rem; margin: 0 0 .2rem; }
      h2 { font-size: 1.15rem; margin: 2rem 0 .6rem; border-bottom: 1px solid #d5d2c8; }
      p.lead { color: #545b69; margin: 0; }
      table { border-collapse: collapse; margin: .4rem 0; }
      th { text-align: left; font-weight: 600; color: #545b69; }
      th, td { padding: .22rem 1.1rem .22rem 0; vertical-align: top; border-bottom: 1px solid #eceae3; }
      td.n { text-align: right; white-space: nowrap; }
      td.b { white-space: nowrap; }
      img { max-width: 100%; height: auto; }
      ul.warn li { color: #8a4b00; }
      td.m, footer { color: #545b69; font-size: .87em; }
      @media print { body { margin: 0; max-width: none; } h2 { break-after: avoid; } img { break-inside: avoid; } }
      """;
  private final StringBuilder page = new StringBuilder();

  /** Begins a page. */
  HtmlText(String title) {
    page.append("<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n<title>")
        .append(escaped(title))
        .append("</title>\n<style>\n")
        .append(STYLE)
        .append("</style>\n</head>\n<body>\n");
  }

  static String escaped(String text) {
    return PlainText.shown(text)
        .replace("&", "&amp;")
        .replace("<", "&lt;")
        .replace(">", "&gt;")
        .replace("\"", "&quot;");
  }

  HtmlText heading(String text) {
    page.append("<h2>").append(escaped(text)).append("</h2>\n");
    return this;
  }

  HtmlText title(String text) {
    page.append("<h1>").append(escaped(text)).append("</h1>\n");
    return this;
  }

  HtmlText lead(String text) {
    page.append("<p class=\"lead\">").append(escaped(text)).append("</p>\n");
    return this;
  }

  HtmlText text(String text) {
    page.append("<p>").append(escaped(text)).append("</p>\n");
    return this;
  }

  /** Begins a table; the names of its columns may be left out. */
  HtmlText table(String... columns) {
    page.append("<table>\n");
    if (columns.length > 0) {
      page.append("<tr>");
      for (String column : columns) {
        page.append("<th>").append(escaped(column)).append("</th>");
      }
      page.append("</tr>\n");
    }
    return this;
  }

  /**
   * A row.
   *
   * @param styles one letter a cell: n number, b band, m meaning, anything else plain
   */
  HtmlText row(String styles, String... cells) {
    page.append("<tr>");
    for (int k = 0; k < cells.length; k++) {
      char style = k < styles.length() ? styles.charAt(k) : ' ';
      page.append("nbm".indexOf(style) >= 0 ? "<td class=\"" + style + "\">" : "<td>");
      page.append(escaped(cells[k])).append("</td>");
    }
    page.append("</tr>\n");
    return this;
  }

  HtmlText endTable() {
    page.append("</table>\n");
    return this;
  }

  /** A list, marked as warnings where asked. */
  HtmlText list(List<String> lines, boolean warnings) {
    page.append(warnings ? "<ul class=\"warn\">\n" : "<ul>\n");
    lines.forEach(line -> page.append("<li>").append(escaped(line)).append("</li>\n"));
    page.append("</ul>\n");
    return this;
  }

  /** A picture inside the page; as an image of its own, so that names in it cannot clash. */
  HtmlText picture(Picture picture, String description) {
    String data =
        Base64.getEncoder().encodeToString(picture.svg().getBytes(StandardCharsets.UTF_8));
    page.append("<p><img alt=\"")
        .append(escaped(description))
        .append("\" src=\"data:image/svg+xml;base64,")
        .append(data)
        .append("\"></p>\n");
    return this;
  }

  /** Ends the page with a closing line. */
  String end(String closing) {
    return page.append("<footer><p>")
        .append(escaped(closing))
        .append("</p></footer>\n</body>\n</html>\n")
        .toString();
  }
}
