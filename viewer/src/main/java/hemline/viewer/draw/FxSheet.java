package hemline.viewer.draw;

import hemline.viewer.picture.Sheet;
import java.awt.Shape;
import java.awt.geom.PathIterator;
import javafx.geometry.VPos;
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
    trace(shape);
    pen.fill();
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
   * Hatches a shape with lines at 45 degrees.
   *
   * @param rgb colour of the lines
   * @param x of a point that a line goes through, so that the hatch can move with what it fills
   * @param y of that point
   */
  public void hatch(Shape shape, int rgb, double x, double y) {
    pen.setFill(new ImagePattern(HatchTile.of(rgb), x, y, HatchTile.SIZE, HatchTile.SIZE, false));
    trace(shape);
    pen.fill();
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
