package hemline.validation.bench;

import java.util.Locale;

/** A white page of lines, dots and text as SVG 1.1 text, the same on every machine. */
final class SvgPage {
  /** Where a text stands against its point. */
  enum Anchor {
    START,
    MIDDLE,
    END
  }

  private final StringBuilder body = new StringBuilder();

  SvgPage(double width, double height) {
    add(
        "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"%.0f\" height=\"%.0f\" font-family=\"sans-serif\" font-size=\"12\">",
        width, height);
    add("<rect width=\"%.0f\" height=\"%.0f\" fill=\"#ffffff\"/>", width, height);
  }

  void line(double x1, double y1, double x2, double y2, String colour, double width, String dash) {
    add(
        "<line x1=\"%.1f\" y1=\"%.1f\" x2=\"%.1f\" y2=\"%.1f\" stroke=\"%s\" stroke-width=\"%.1f\"%s/>",
        x1, y1, x2, y2, colour, width, dash.isEmpty() ? "" : " stroke-dasharray=\"" + dash + "\"");
  }

  void dot(double x, double y, String colour) {
    add("<circle cx=\"%.1f\" cy=\"%.1f\" r=\"4\" fill=\"%s\"/>", x, y, colour);
  }

  /** A dot with a white inside, for a value that is not to be trusted fully. */
  void ring(double x, double y, String colour) {
    add(
        "<circle cx=\"%.1f\" cy=\"%.1f\" r=\"4\" fill=\"#ffffff\" stroke=\"%s\" stroke-width=\"1.5\"/>",
        x, y, colour);
  }

  void text(double x, double y, Anchor anchor, String colour, String text) {
    add(
        "<text x=\"%.1f\" y=\"%.1f\" text-anchor=\"%s\" fill=\"%s\">%s</text>",
        x, y, anchor.name().toLowerCase(Locale.ROOT), colour, escaped(text));
  }

  private void add(String format, Object... values) {
    body.append(String.format(Locale.ROOT, format, values)).append('\n');
  }

  private static String escaped(String text) {
    return text.replace("&", "&amp;").replace("<", "&lt;").replace(">", "&gt;");
  }

  /** The finished page. */
  String end() {
    return body + "</svg>\n";
  }
}
