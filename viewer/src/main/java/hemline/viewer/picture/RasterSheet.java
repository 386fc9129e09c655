package hemline.viewer.picture;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.Shape;
import java.awt.font.TextAttribute;
import java.awt.font.TextLayout;
import java.awt.geom.AffineTransform;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.text.AttributedString;
import javax.imageio.ImageIO;

/** A sheet of pixels. */
public final class RasterSheet implements Sheet {
  private final BufferedImage image;
  private final Graphics2D pen;

  RasterSheet(double width, double height, double scale) {
    this(
        new BufferedImage(
            (int) Math.ceil(width * scale),
            (int) Math.ceil(height * scale),
            BufferedImage.TYPE_INT_RGB),
        scale);
    pen.setColor(new Color(Ink.PAPER));
    pen.fill(new Rectangle2D.Double(0, 0, width + 1, height + 1));
  }

  /**
   * Paints on an image, on what is there.
   *
   * @param image takes the painting. Modified.
   * @param scale pixels of the image for one of the painting
   */
  public RasterSheet(BufferedImage image, double scale) {
    this.image = image;
    pen = image.createGraphics();
    pen.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
    pen.setRenderingHint(
        RenderingHints.KEY_TEXT_ANTIALIASING, RenderingHints.VALUE_TEXT_ANTIALIAS_ON);
    pen.setRenderingHint(
        RenderingHints.KEY_FRACTIONALMETRICS, RenderingHints.VALUE_FRACTIONALMETRICS_ON);
    pen.setRenderingHint(RenderingHints.KEY_STROKE_CONTROL, RenderingHints.VALUE_STROKE_PURE);
    pen.scale(scale, scale);
  }

  @Override
  public void fill(Shape shape, int rgb, double opacity) {
    pen.setColor(colour(rgb, opacity));
    Path2D path = new Path2D.Double(Path2D.WIND_EVEN_ODD);
    path.append(shape, false);
    pen.fill(path);
  }

  @Override
  public void stroke(Shape shape, Pen line) {
    pen.setColor(colour(line.rgb(), line.opacity()));
    pen.setStroke(strokeOf(line.width(), line.dash()));
    pen.draw(shape);
  }

  @Override
  public void text(double x, double y, String text, Lettering lettering) {
    if (text.isEmpty()) {
      return;
    }
    TextLayout layout =
        new TextLayout(attributed(text, lettering).getIterator(), pen.getFontRenderContext());
    double shift =
        switch (lettering.anchor()) {
          case START -> 0;
          case MIDDLE -> -0.5 * layout.getAdvance();
          case END -> -layout.getAdvance();
        };
    AffineTransform before = pen.getTransform();
    pen.translate(x, y);
    pen.rotate(-Math.toRadians(lettering.angle()));
    if (lettering.halo()) {
      pen.setColor(colour(Ink.PAPER, 0.85));
      pen.setStroke(strokeOf(0.28 * lettering.size()));
      pen.draw(layout.getOutline(AffineTransform.getTranslateInstance(shift, 0)));
    }
    pen.setColor(new Color(lettering.rgb()));
    layout.draw(pen, (float) shift, 0);
    pen.setTransform(before);
  }

  @Override
  public void clip(Shape shape) {
    pen.setClip(shape);
  }

  @Override
  public void unclip() {
    pen.setClip(null);
  }

  byte[] png() throws IOException {
    pen.dispose();
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    if (!ImageIO.write(image, "png", bytes)) {
      throw new IOException("this Java has no PNG writer");
    }
    return bytes.toByteArray();
  }

  private static AttributedString attributed(String text, Lettering lettering) {
    StringBuilder plain = new StringBuilder();
    boolean[] low = new boolean[text.length()];
    for (int k = 0; k < text.length(); k++) {
      char c = text.charAt(k);
      if (lettering.subscripts() && c == '_') {
        while (k + 1 < text.length() && Character.isLowerCase(text.charAt(k + 1))) {
          low[plain.length()] = true;
          plain.append(text.charAt(++k));
        }
      } else {
        plain.append(c);
      }
    }
    AttributedString result = new AttributedString(plain.toString());
    result.addAttribute(TextAttribute.FAMILY, Font.SANS_SERIF);
    result.addAttribute(TextAttribute.SIZE, (float) lettering.size());
    if (lettering.bold()) {
      result.addAttribute(TextAttribute.WEIGHT, TextAttribute.WEIGHT_BOLD);
    }
    for (int k = 0; k < plain.length(); k++) {
      if (low[k]) {
        result.addAttribute(TextAttribute.SUPERSCRIPT, TextAttribute.SUPERSCRIPT_SUB, k, k + 1);
      }
    }
    return result;
  }

  private static Color colour(int rgb, double opacity) {
    return new Color(rgb >> 16 & 255, rgb >> 8 & 255, rgb & 255, (int) Math.round(255 * opacity));
  }

  private static BasicStroke strokeOf(double width, double... dash) {
    if (dash.length == 0) {
      return new BasicStroke((float) width, BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND);
    }
    float[] pattern = new float[dash.length];
    for (int k = 0; k < dash.length; k++) {
      pattern[k] = (float) dash[k];
    }
    return new BasicStroke(
        (float) width, BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND, 1, pattern, 0);
  }
}
