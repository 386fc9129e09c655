package hemline.viewer.draw;

import hemline.viewer.picture.ColourCurve;
import hemline.viewer.picture.PressureScale;
import hemline.viewer.picture.Projection;
import java.awt.geom.Rectangle2D;
import javafx.scene.canvas.GraphicsContext;
import javafx.scene.image.PixelFormat;
import javafx.scene.image.WritableImage;
import org.jspecify.annotations.Nullable;

/** Pixels of a map, kept from one painting to the next. */
public final class MapRaster {
  private int[] pixels = new int[0];
  private @Nullable WritableImage image;

  /**
   * Paints a map into a frame.
   *
   * @param density pixels of the screen for one of the board
   */
  public void paint(
      GraphicsContext pen,
      FieldMap map,
      Projection to,
      Rectangle2D frame,
      PressureScale scale,
      ColourCurve colours,
      double density) {
    int w = (int) Math.ceil(frame.getWidth() * density);
    int h = (int) Math.ceil(frame.getHeight() * density);
    if (w < 1 || h < 1) {
      return;
    }
    if (pixels.length < w * h) {
      pixels = new int[w * h];
    }
    map.fill(to, frame, scale, colours, w, h, pixels);
    WritableImage canvas = image;
    if (canvas == null || canvas.getWidth() != w || canvas.getHeight() != h) {
      canvas = new WritableImage(w, h);
      image = canvas;
    }
    canvas.getPixelWriter().setPixels(0, 0, w, h, PixelFormat.getIntArgbInstance(), pixels, 0, w);
    pen.drawImage(canvas, frame.getX(), frame.getY(), frame.getWidth(), frame.getHeight());
  }
}
