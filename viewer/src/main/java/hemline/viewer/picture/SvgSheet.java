package hemline.viewer.picture;

import hemline.shared.problem.PlainText;
import java.awt.Shape;
import java.awt.geom.PathIterator;
import java.util.Locale;

/**
 * A sheet that writes SVG 1.1 text (W3C recommendation); the same strokes give the same text on any
 * machine.
 */
final class SvgSheet implements Sheet {
  private static final String FONTS = "'DejaVu Sans', Verdana, sans-serif";
  private final StringBuilder body = new StringBuilder();
  private final double width;
  private final double height;
  private int clips;

  SvgSheet(double width, double height) {
    this.width = Math.ceil(width);
    this.height = Math.ceil(height);
  }

  @Override
  public void fill(Shape shape, int rgb, double opacity) {
    String data = data(shape);
    if (data.isEmpty()) {
      return;
    }
    body.append("<path fill=\"").append(hex(rgb)).append("\" fill-rule=\"evenodd\"");
    if (opacity < 1) {
      body.append(" fill-opacity=\"").append(number(opacity)).append('"');
    }
    body.append(" d=\"").append(data).append("\"/>\n");
  }

  @Override
  public void stroke(Shape shape, Pen pen) {
    String data = data(shape);
    if (data.isEmpty()) {
      return;
    }
    body.append("<path fill=\"none\" stroke=\"").append(hex(pen.rgb()));
    body.append("\" stroke-width=\"").append(number(pen.width()));
    body.append("\" stroke-linejoin=\"round\"");
    if (pen.opacity() < 1) {
      body.append(" stroke-opacity=\"").append(number(pen.opacity())).append('"');
    }
    if (pen.dash().length == 0) {
      body.append(" stroke-linecap=\"round\"");
    } else {
      body.append(" stroke-dasharray=\"");
      for (int k = 0; k < pen.dash().length; k++) {
        body.append(k == 0 ? "" : " ").append(number(pen.dash()[k]));
      }
      body.append('"');
    }
    body.append(" d=\"").append(data).append("\"/>\n");
  }

  @Override
  public void text(double x, double y, String text, Lettering lettering) {
    if (text.isEmpty()) {
      return;
    }
    if (lettering.halo()) {
      // a rim of its own below the letters: the order of rim and letters is not settled in SVG 1.1
      open(x, y, lettering, Ink.PAPER);
      body.append(" stroke=\"").append(hex(Ink.PAPER)).append("\" stroke-opacity=\"0.85\"");
      body.append(" fill-opacity=\"0.85\" stroke-width=\"").append(number(0.28 * lettering.size()));
      body.append("\" stroke-linejoin=\"round\"");
      close(text, lettering);
    }
    open(x, y, lettering, lettering.rgb());
    close(text, lettering);
  }

  private void open(double x, double y, Lettering lettering, int rgb) {
    body.append("<text x=\"").append(number(x)).append("\" y=\"").append(number(y));
    body.append("\" font-size=\"").append(number(lettering.size())).append('"');
    body.append(" fill=\"").append(hex(rgb)).append('"');
    if (lettering.bold()) {
      body.append(" font-weight=\"bold\"");
    }
    if (lettering.anchor() != Anchor.START) {
      body.append(" text-anchor=\"");
      body.append(lettering.anchor().name().toLowerCase(Locale.ROOT)).append('"');
    }
    if (lettering.angle() != 0) {
      body.append(" transform=\"rotate(").append(number(-lettering.angle())).append(' ');
      body.append(number(x)).append(' ').append(number(y)).append(")\"");
    }
  }

  private void close(String text, Lettering lettering) {
    body.append('>').append(content(text, lettering)).append("</text>\n");
  }

  @Override
  public void clip(Shape shape) {
    clips++;
    body.append("<clipPath id=\"clip").append(clips).append("\"><path clip-rule=\"evenodd\" d=\"");
    body.append(data(shape)).append("\"/></clipPath>\n<g clip-path=\"url(#clip");
    body.append(clips).append(")\">\n");
  }

  @Override
  public void unclip() {
    body.append("</g>\n");
  }

  /** The whole file. */
  String text() {
    String size = number(width) + "\" height=\"" + number(height);
    return "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n"
        + "<svg xmlns=\"http://www.w3.org/2000/svg\" version=\"1.1\" width=\""
        + size
        + "\" viewBox=\"0 0 "
        + number(width)
        + " "
        + number(height)
        + "\" font-family=\""
        + FONTS
        + "\" shape-rendering=\"geometricPrecision\" xml:space=\"preserve\">\n<rect width=\""
        + size
        + "\" fill=\""
        + hex(Ink.PAPER)
        + "\"/>\n"
        + body
        + "</svg>\n";
  }

  private static String content(String given, Lettering lettering) {
    String text = PlainText.shown(given);
    StringBuilder out = new StringBuilder();
    for (int k = 0; k < text.length(); k++) {
      char c = text.charAt(k);
      if (lettering.subscripts() && c == '_') {
        String drop = number(0.22 * lettering.size());
        out.append("<tspan font-size=\"").append(number(0.72 * lettering.size()));
        out.append("\" dy=\"").append(drop).append("\">");
        while (k + 1 < text.length() && Character.isLowerCase(text.charAt(k + 1))) {
          out.append(escaped(text.charAt(++k)));
        }
        out.append("</tspan><tspan dy=\"-").append(drop).append("\">\u200b</tspan>");
      } else {
        out.append(escaped(c));
      }
    }
    return out.toString();
  }

  private static String escaped(char c) {
    return switch (c) {
      case '&' -> "&amp;";
      case '<' -> "&lt;";
      case '>' -> "&gt;";
      default -> String.valueOf(c);
    };
  }

  private static String data(Shape shape) {
    StringBuilder out = new StringBuilder();
    double[] c = new double[6];
    for (PathIterator it = shape.getPathIterator(null); !it.isDone(); it.next()) {
      switch (it.currentSegment(c)) {
        case PathIterator.SEG_MOVETO -> points(out.append('M'), c, 1);
        case PathIterator.SEG_LINETO -> points(out.append('L'), c, 1);
        case PathIterator.SEG_QUADTO -> points(out.append('Q'), c, 2);
        case PathIterator.SEG_CUBICTO -> points(out.append('C'), c, 3);
        default -> out.append('Z');
      }
    }
    return out.toString();
  }

  private static void points(StringBuilder out, double[] c, int count) {
    for (int k = 0; k < 2 * count; k++) {
      out.append(k == 0 ? "" : " ").append(number(c[k]));
    }
  }

  private static String hex(int rgb) {
    return String.format(Locale.ROOT, "#%06x", rgb);
  }

  /** Two decimals at most, no exponent, no negative zero. */
  private static String number(double value) {
    long hundredths = Math.round(value * 100);
    long whole = Math.abs(hundredths) / 100;
    long rest = Math.abs(hundredths) % 100;
    String sign = hundredths < 0 ? "-" : "";
    if (rest == 0) {
      return sign + whole;
    }
    return sign + whole + (rest % 10 == 0 ? "." + rest / 10 : rest < 10 ? ".0" + rest : "." + rest);
  }
}
