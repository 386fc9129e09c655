package hemline.viewer.screen;

import java.awt.image.BufferedImage;
import java.awt.image.DataBufferInt;
import java.nio.IntBuffer;
import java.util.Arrays;
import javafx.scene.image.Image;
import javafx.scene.image.PixelBuffer;
import javafx.scene.image.PixelFormat;
import javafx.scene.image.WritableImage;

/** One array of pixels that a background thread paints on and the screen shows, without a copy. */
final class PixelImage {
  private final BufferedImage canvas;
  private final int[] pixels;
  private final PixelBuffer<IntBuffer> buffer;
  private final WritableImage image;

  /** An empty, transparent image. */
  PixelImage(int width, int height) {
    canvas = new BufferedImage(width, height, BufferedImage.TYPE_INT_ARGB_PRE);
    pixels = ((DataBufferInt) canvas.getRaster().getDataBuffer()).getData();
    buffer =
        new PixelBuffer<>(
            width, height, IntBuffer.wrap(pixels), PixelFormat.getIntArgbPreInstance());
    image = new WritableImage(buffer);
  }

  /** For painting; not while the screen shows it. */
  BufferedImage canvas() {
    return canvas;
  }

  boolean fits(int width, int height) {
    return canvas.getWidth() == width && canvas.getHeight() == height;
  }

  void clear() {
    Arrays.fill(pixels, 0);
  }

  /** The image with what was painted; on the screen's thread. */
  Image show() {
    buffer.updateBuffer(b -> null);
    return image;
  }
}
