package hemline.viewer.picture;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import org.junit.jupiter.api.Test;

class FreeSpotTest {
  private static final Rectangle2D BOX = new Rectangle2D.Double(0, 0, 400, 300);

  @Test
  void standsRightAboveWhereNothingIsInTheWay() {
    Rectangle2D spot = new FreeSpot(BOX).take(100, 100, 60, 13);
    assertThat(spot.getMinX()).isEqualTo(100 + FreeSpot.NEAR);
    assertThat(spot.getMaxY()).isEqualTo(100 - FreeSpot.NEAR);
  }

  @Test
  void keepsOffLinesNamesAndTheBorder() {
    FreeSpot free = new FreeSpot(BOX);
    Line2D leak = new Line2D.Double(0, 200, 400, 0);
    free.avoid(leak);
    Rectangle2D first = free.take(200, 100, 80, 13);
    Rectangle2D second = free.take(204, 98, 80, 13);
    assertThat(first.intersectsLine(leak)).isFalse();
    assertThat(second.intersectsLine(leak)).isFalse();
    assertThat(first.intersects(second)).isFalse();
    Rectangle2D corner = new FreeSpot(BOX).take(398, 2, 80, 13);
    assertThat(BOX.contains(corner)).isTrue();
  }
}
