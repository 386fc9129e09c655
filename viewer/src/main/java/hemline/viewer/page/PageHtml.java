package hemline.viewer.page;

import hemline.shared.problem.PlainText;
import hemline.viewer.format.Version;
import hemline.viewer.page.Page.Tone;
import hemline.viewer.picture.Picture;
import java.nio.charset.StandardCharsets;
import java.util.Base64;
import java.util.List;
import java.util.Locale;
import java.util.function.Supplier;

/** A page as HTML that stands by itself: no script, no link to another file or place. */
public final class PageHtml implements Page.Face {
  private static final String STYLE =
      """
      :root { color-scheme: light; }
      body { font: 15px/1.5 Verdana, 'DejaVu Sans', sans-serif; color: #1f2533; background: #fff;
        max-width: 1080px; margin: 2rem auto; padding: 0 1.2rem; }
      h1 { font-size: 1.7rem; margin: 0 0 .2rem; }
      h2 { font-size: 1.15rem; margin: 2rem 0 .6rem; border-bottom: 1px solid #d5d2c8; }
      p { margin: .4rem 0; max-width: 60rem; }
      p.quiet, footer { color: #545b69; }
      p.finding { font-weight: 600; }
      p.notice { color: #8a4b00; padding-left: 1rem; text-indent: -1rem; }
      p.notice::before { content: '\\2013\\00a0\\00a0'; }
      p.caution { border-left: 4px solid #c8501e; background: #fbf3ee; padding: .3rem .8rem; }
      .wide { overflow-x: auto; }
      table { border-collapse: collapse; margin: .4rem 0; font-size: .93em;
        font-variant-numeric: tabular-nums; }
      th { text-align: left; font-weight: 600; color: #545b69; }
      th, td { padding: .22rem 1.1rem .22rem 0; vertical-align: top; border-bottom: 1px solid #eceae3; }
      .n { text-align: right; }
      td.s, td.n { white-space: nowrap; }
      td.g { font-weight: 600; padding-top: .7rem; }
      tr.marked { color: #b8431f; }
      img { max-width: 100%; height: auto; }
      footer { font-size: .87em; margin-top: 2rem; }
      @media print { body { margin: 0; max-width: none; font-size: 12px; } .wide { overflow: visible; }
        td.s, td.n { white-space: normal; } h2 { break-after: avoid; } img, p.caution { break-inside: avoid; } }
      """;

  /** Longer cells are broken into lines. */
  private static final int SHORT = 40;

  private final StringBuilder out = new StringBuilder();

  private PageHtml() {}

  /** The whole file; the same page gives the same text. */
  public static String of(Page page) {
    PageHtml html = new PageHtml();
    String title = escaped(page.title());
    html.out
        .append("<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n<title>")
        .append(title)
        .append(" \u2013 Hemline report</title>\n<style>\n")
        .append(STYLE)
        .append("</style>\n</head>\n<body>\n");
    html.element("h1", "", page.title());
    page.show(html);
    return html.out
        .append("<footer><p>Hemline ")
        .append(Version.TEXT)
        .append("</p></footer>\n</body>\n</html>\n")
        .toString();
  }

  /** The same in UTF-8. */
  public static byte[] bytes(Page page) {
    return of(page).getBytes(StandardCharsets.UTF_8);
  }

  @Override
  public boolean roomy() {
    return true;
  }

  @Override
  public void heading(String text) {
    element("h2", "", text);
  }

  @Override
  public void text(String text, Tone tone) {
    element("p", tone == Tone.PLAIN ? "" : tone.name().toLowerCase(Locale.ROOT), text);
  }

  @Override
  public void table(PageTable table) {
    boolean[] numbers = table.numbers();
    out.append("<div class=\"wide\"><table>\n");
    if (!table.head().isEmpty()) {
      row("th", table.head(), numbers, "<tr>");
    }
    for (PageTable.Row row : table.rows()) {
      if (row.kind() == PageTable.Kind.GROUP) {
        out.append("<tr><td class=\"g\" colspan=\"").append(numbers.length).append("\">");
        out.append(escaped(row.cells().get(0))).append("</td></tr>\n");
      } else {
        String style = row.kind() == PageTable.Kind.MARKED ? " class=\"marked\"" : "";
        String help = row.help().isEmpty() ? "" : " title=\"" + escaped(row.help()) + "\"";
        row("td", row.cells(), numbers, "<tr" + style + help + ">");
      }
    }
    out.append("</table></div>\n");
  }

  private void row(String tag, List<String> cells, boolean[] numbers, String begin) {
    out.append(begin);
    for (int c = 0; c < cells.size(); c++) {
      String cell = cells.get(c);
      out.append('<').append(tag);
      out.append(numbers[c] ? " class=\"n\"" : cell.length() < SHORT ? " class=\"s\"" : "");
      out.append('>').append(escaped(cell)).append("</").append(tag).append('>');
    }
    out.append("</tr>\n");
  }

  /** An image of its own, so that names in it cannot clash with those of others. */
  @Override
  public void plot(Supplier<? extends Picture> picture, String description) {
    String svg = picture.get().svg();
    out.append("<p><img alt=\"")
        .append(escaped(description))
        .append("\" src=\"data:image/svg+xml;base64,")
        .append(Base64.getEncoder().encodeToString(svg.getBytes(StandardCharsets.UTF_8)))
        .append("\"></p>\n");
  }

  private void element(String tag, String style, String text) {
    out.append('<').append(tag).append(style.isEmpty() ? "" : " class=\"" + style + "\"");
    out.append('>').append(escaped(text)).append("</").append(tag).append(">\n");
  }

  private static String escaped(String text) {
    return PlainText.shown(text)
        .replace("&", "&amp;")
        .replace("<", "&lt;")
        .replace(">", "&gt;")
        .replace("\"", "&quot;");
  }
}
