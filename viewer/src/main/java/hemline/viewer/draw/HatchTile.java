package hemline.viewer.draw;

import java.util.HashMap;
import java.util.Map;
import javafx.scene.image.Image;
import javafx.scene.image.PixelWriter;
import javafx.scene.image.WritableImage;

/**
 * A square that, side by side, makes a hatch; filling with it costs a tenth of stroking its lines.
 * For the screen's thread.
 */
final class HatchTile {
  /** Side, pixels of the board: the distance of lines along either axis. */
  static final double SIZE = 10;

  private static final int DENSITY = 2;
  private static final double LINE = 1;
  private static final Map<Integer, Image> TILES = new HashMap<>();

  private HatchTile() {}

  /** Tile with a line of a colour, 0xRRGGBB, from corner to corner. */
  static Image of(int rgb) {
    return TILES.computeIfAbsent(rgb, HatchTile::paint);
  }

  private static Image paint(int rgb) {
    int side = (int) SIZE * DENSITY;
    WritableImage image = new WritableImage(side, side);
    PixelWriter pixels = image.getPixelWriter();
    for (int row = 0; row < side; row++) {
      for (int column = 0; column < side; column++) {
        // distance of the pixel's centre from the nearest line x + y = k SIZE, pixels of the board
        double sum = (column + row + 1.0) / DENSITY;
        double away = Math.abs(sum - SIZE * Math.rint(sum / SIZE)) / Math.sqrt(2);
        double share = Math.max(0, Math.min(1, DENSITY * (0.5 * LINE - away) + 0.5));
        int alpha = (int) Math.round(230 * share);
        pixels.setArgb(column, row, alpha << 24 | rgb & 0xFFFFFF);
      }
    }
    return image;
  }
}
