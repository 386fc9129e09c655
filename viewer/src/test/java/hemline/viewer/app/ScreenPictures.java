package hemline.viewer.app;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.Set;
import java.util.concurrent.TimeUnit;
import javafx.geometry.Rectangle2D;
import javafx.scene.image.WritableImage;
import javafx.scene.robot.Robot;
import javafx.stage.Screen;
import javafx.stage.Stage;
import javax.imageio.ImageIO;
import org.testfx.util.WaitForAsyncUtils;

/** Pictures of what a real screen shows, kept in {@code viewer/target/screenshots}. */
final class ScreenPictures {
  private static final Path PICTURES = Path.of("target", "screenshots");
  private static final int FEWEST_COLOURS = 40;

  /** Makes a stage as large as the screen. */
  static void fill(Stage stage) {
    Rectangle2D screen = Screen.getPrimary().getBounds();
    stage.setX(0);
    stage.setY(0);
    stage.setWidth(screen.getWidth());
    stage.setHeight(screen.getHeight());
  }

  /**
   * Takes a picture of the screen; one that is nearly of one colour shows that nothing is drawn.
   */
  void picture(String name) {
    WaitForAsyncUtils.waitForFxEvents(8);
    WaitForAsyncUtils.sleep(1200, TimeUnit.MILLISECONDS);
    WaitForAsyncUtils.waitForAsyncFx(20_000, () -> take(name));
  }

  private static void take(String name) {
    Screen primary = Screen.getPrimary();
    WritableImage seen = new Robot().getScreenCapture(null, primary.getBounds(), false);
    int w = (int) seen.getWidth();
    int h = (int) seen.getHeight();
    BufferedImage image = new BufferedImage(w, h, BufferedImage.TYPE_INT_RGB);
    Set<Integer> colours = new HashSet<>();
    for (int y = 0; y < h; y++) {
      for (int x = 0; x < w; x++) {
        int rgb = seen.getPixelReader().getArgb(x, y);
        colours.add(rgb);
        image.setRGB(x, y, rgb);
      }
    }
    assertThat(colours).as("colours of %s", name).hasSizeGreaterThan(FEWEST_COLOURS);
    double scale = primary.getOutputScaleX();
    String size =
        Math.round(primary.getBounds().getWidth() * scale)
            + "x"
            + Math.round(primary.getBounds().getHeight() * scale);
    try {
      Files.createDirectories(PICTURES);
      ImageIO.write(image, "png", PICTURES.resolve(name + "-" + size + ".png").toFile());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
