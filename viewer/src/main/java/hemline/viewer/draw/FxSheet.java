package hemline.viewer.draw;

import hemline.viewer.picture.Sheet;
import java.awt.Shape;
import java.awt.geom.PathIterator;
import java.awt.geom.Rectangle2D;
import javafx.geometry.VPos;
import javafx.scene.Scene;
import javafx.scene.canvas.GraphicsContext;
import javafx.scene.paint.Color;
import javafx.scene.paint.ImagePattern;
import javafx.scene.shape.FillRule;
import javafx.scene.shape.StrokeLineCap;
import javafx.scene.shape.StrokeLineJoin;
import javafx.scene.text.Font;
import javafx.scene.text.FontWeight;
import javafx.scene.text.TextAlignment;

/** A sheet on screen. */
public final class FxSheet implements Sheet {
  /** Reach of the rim around lifted text, in parts of its size. */
  private static final double HALO = 0.13;

  private static final double HALO_OPACITY = 0.6;
  private static final int HALO_COPIES = 8;

  private final GraphicsContext pen;
  private final int paper;

  /**
   * Paints on a canvas.
   *
   * @param paper colour of the rim around lifted text
   */
  public FxSheet(GraphicsContext pen, int paper) {
    this.pen = pen;
    this.paper = paper;
    pen.setFillRule(FillRule.EVEN_ODD);
    pen.setLineJoin(StrokeLineJoin.ROUND);
    pen.setTextBaseline(VPos.BASELINE);
  }

  /** Colour of an 0xRRGGBB number. */
  public static Color colour(int rgb, double opacity) {
    return Color.rgb(rgb >> 16 & 255, rgb >> 8 & 255, rgb & 255, opacity);
  }

  @Override
  public void fill(Shape shape, int rgb, double opacity) {
    pen.setFill(colour(rgb, opacity));
    fill(shape);
  }

  @Override
  public void stroke(Shape shape, Pen line) {
    pen.setStroke(colour(line.rgb(), line.opacity()));
    pen.setLineWidth(line.width());
    pen.setLineDashes(line.dash());
    pen.setLineCap(line.dash().length == 0 ? StrokeLineCap.ROUND : StrokeLineCap.BUTT);
    trace(shape);
    pen.stroke();
  }

  /**
   * Fills a shape with a colour and lines at 45 degrees.
   *
   * @param rgb colour between the lines
   * @param lines colour of the lines
   * @param x of a point that a line goes through, to the next pixel of the screen, so that the
   *     hatch can move with what it fills
   * @param y of that point
   */
  public void hatch(Shape shape, int rgb, int lines, double x, double y) {
    int density = density();
    pen.setFill(
        new ImagePattern(
            HatchTile.of(rgb, lines, density),
            Math.rint(x * density) / density,
            Math.rint(y * density) / density,
            HatchTile.SIZE,
            HatchTile.SIZE,
            false));
    fill(shape);
  }

  /** Whole pixels of the screen for one of the canvas, at least. */
  private int density() {
    Scene scene = pen.getCanvas().getScene();
    return scene == null || scene.getWindow() == null
        ? 1
        : (int) Math.ceil(scene.getWindow().getOutputScaleX());
  }

  /** Rectangles as such, since the renderer needs no mask for them. */
  private void fill(Shape shape) {
    if (shape instanceof Rectangle2D r) {
      pen.fillRect(r.getX(), r.getY(), r.getWidth(), r.getHeight());
    } else {
      trace(shape);
      pen.fill();
    }
  }

  private void trace(Shape shape) {
    pen.beginPath();
    double[] c = new double[6];
    for (PathIterator it = shape.getPathIterator(null); !it.isDone(); it.next()) {
      switch (it.currentSegment(c)) {
        case PathIterator.SEG_MOVETO -> pen.moveTo(c[0], c[1]);
        case PathIterator.SEG_LINETO -> pen.lineTo(c[0], c[1]);
        case PathIterator.SEG_QUADTO -> pen.quadraticCurveTo(c[0], c[1], c[2], c[3]);
        case PathIterator.SEG_CUBICTO -> pen.bezierCurveTo(c[0], c[1], c[2], c[3], c[4], c[5]);
        default -> pen.closePath();
      }
    }
  }

  @Override
  public void text(double x, double y, String text, Lettering lettering) {
    String plain = lettering.subscripts() ? text.replace("_", "") : text;
    pen.save();
    pen.translate(x, y);
    pen.rotate(-lettering.angle());
    pen.setFont(
        Font.font(
            Font.getDefault().getFamily(),
            lettering.bold() ? FontWeight.BOLD : FontWeight.NORMAL,
            lettering.size()));
    pen.setTextAlign(
        switch (lettering.anchor()) {
          case START -> TextAlignment.LEFT;
          case MIDDLE -> TextAlignment.CENTER;
          case END -> TextAlignment.RIGHT;
        });
    if (lettering.halo()) {
      // shifted copies cost far less than a stroke around the letters
      double reach = HALO * lettering.size();
      pen.setFill(colour(paper, HALO_OPACITY));
      for (int k = 0; k < HALO_COPIES; k++) {
        double angle = 2 * Math.PI * k / HALO_COPIES;
        pen.fillText(plain, reach * Math.cos(angle), reach * Math.sin(angle));
      }
    }
    pen.setFill(colour(lettering.rgb(), 1));
    pen.fillText(plain, 0, 0);
    pen.restore();
  }

  @Override
  public void clip(Shape shape) {
    pen.save();
    trace(shape);
    pen.clip();
  }

  @Override
  public void unclip() {
    pen.restore();
  }
}
