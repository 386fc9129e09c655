package hemline.viewer.draw;

import java.util.HashMap;
import java.util.Map;
import javafx.scene.image.Image;
import javafx.scene.image.PixelWriter;
import javafx.scene.image.WritableImage;

/**
 * A hatched square that, side by side, fills a shape with a colour and its hatch at once; a tenth
 * of the cost of stroking lines. It has the pixels of the screen, so that they are copied and not
 * blended. For the screen's thread.
 */
final class HatchTile {
  /** Side, pixels of the board: the distance of lines along either axis. */
  static final double SIZE = 10;

  private static final double LINE = 1;
  private static final double LINE_OPACITY = 230.0 / 255;
  private static final Map<Key, Image> TILES = new HashMap<>();

  private record Key(int ground, int line, int density) {}

  private HatchTile() {}

  /**
   * Tile with a line from corner to corner.
   *
   * @param ground colour, 0xRRGGBB
   * @param line colour of the line, 0xRRGGBB
   * @param density pixels of the tile for one of the board
   */
  static Image of(int ground, int line, int density) {
    return TILES.computeIfAbsent(new Key(ground, line, density), HatchTile::paint);
  }

  private static Image paint(Key key) {
    int side = (int) SIZE * key.density();
    WritableImage image = new WritableImage(side, side);
    PixelWriter pixels = image.getPixelWriter();
    for (int row = 0; row < side; row++) {
      for (int column = 0; column < side; column++) {
        // distance of the pixel's centre from the nearest line x + y = k SIZE, pixels of the board
        double sum = (column + row + 1.0) / key.density();
        double away = Math.abs(sum - SIZE * Math.rint(sum / SIZE)) / Math.sqrt(2);
        double share = Math.max(0, Math.min(1, key.density() * (0.5 * LINE - away) + 0.5));
        pixels.setArgb(column, row, mix(key.ground(), key.line(), LINE_OPACITY * share));
      }
    }
    return image;
  }

  /** A share of the second colour over the first one, opaque. */
  private static int mix(int under, int over, double share) {
    int argb = 255;
    for (int shift = 16; shift >= 0; shift -= 8) {
      double from = under >> shift & 255;
      double to = over >> shift & 255;
      argb = argb << 8 | (int) Math.round(from + share * (to - from));
    }
    return argb;
  }
}
