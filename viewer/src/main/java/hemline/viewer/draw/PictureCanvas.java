package hemline.viewer.draw;

import hemline.viewer.picture.Ink;
import hemline.viewer.picture.Picture;
import hemline.viewer.picture.Sheet;
import java.awt.geom.Rectangle2D;
import javafx.geometry.Orientation;
import javafx.scene.canvas.Canvas;
import javafx.scene.canvas.GraphicsContext;
import javafx.scene.control.Label;
import javafx.scene.layout.Region;
import org.jspecify.annotations.Nullable;

/** A picture as it is saved, painted as wide as there is room for it once it is looked at. */
public final class PictureCanvas extends Region {
  private static final double SMALLEST = 0.7;
  private static final double LARGEST = 1.3;

  private final Picture picture;
  private final Canvas canvas = new Canvas();
  private final Label said = new Label();
  private @Nullable Marks marks;
  private boolean dark;
  private boolean seen;
  private double painted;

  /** Room for a picture, which {@link #see} paints. */
  public PictureCanvas(Picture picture, boolean dark) {
    this.picture = picture;
    this.dark = dark;
    said.setId("chart-value");
    said.getStyleClass().add("chart-value");
    said.setManaged(false);
    said.setVisible(false);
    said.setMouseTransparent(true);
    getChildren().addAll(canvas, said);
    setOnMouseMoved(e -> tell(e.getX(), e.getY()));
    setOnMouseExited(e -> said.setVisible(false));
    getStyleClass().add("picture");
    setMinWidth(SMALLEST * picture.width());
  }

  /** Tells what stands under the mouse, beside it. */
  private void tell(double x, double y) {
    if (marks == null) {
      marks = Marks.of(picture);
    }
    String words = painted > 0 ? marks.at(x / painted, y / painted) : "";
    said.setVisible(!words.isEmpty());
    if (!words.isEmpty()) {
      said.setText(words);
      said.autosize();
      double right = x + 14 + said.getWidth();
      said.relocate(right > getWidth() ? x - 10 - said.getWidth() : x + 14, Math.max(0, y - 40));
    }
  }

  /** Light on dark, or dark on white. */
  public void setDark(boolean on) {
    if (on != dark) {
      dark = on;
      painted = 0;
      requestLayout();
    }
  }

  /** Paints the picture from now on, since it has come into view. */
  public void see() {
    if (!seen) {
      seen = true;
      requestLayout();
    }
  }

  /** True when the picture stands there. */
  public boolean painted() {
    return painted > 0;
  }

  @Override
  public Orientation getContentBias() {
    return Orientation.HORIZONTAL;
  }

  @Override
  protected double computePrefWidth(double height) {
    return picture.width();
  }

  @Override
  protected double computePrefHeight(double width) {
    return Math.ceil(scale(width < 0 ? picture.width() : width) * picture.height());
  }

  private double scale(double width) {
    return Math.max(SMALLEST, Math.min(LARGEST, width / picture.width()));
  }

  @Override
  protected void layoutChildren() {
    double scale = scale(getWidth());
    if (!seen || scale == painted) {
      return;
    }
    painted = scale;
    canvas.setWidth(scale * picture.width());
    canvas.setHeight(scale * picture.height());
    GraphicsContext pen = canvas.getGraphicsContext2D();
    pen.setTransform(scale, 0, 0, scale, 0, 0);
    pen.clearRect(0, 0, picture.width(), picture.height());
    Sheet screen = new FxSheet(pen, dark ? NightSheet.night(Ink.PAPER) : Ink.PAPER);
    Sheet sheet = dark ? new NightSheet(screen) : screen;
    sheet.fill(new Rectangle2D.Double(0, 0, picture.width(), picture.height()), Ink.PAPER, 1);
    picture.paint(sheet);
  }
}
