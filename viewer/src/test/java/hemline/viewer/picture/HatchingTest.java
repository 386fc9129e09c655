package hemline.viewer.picture;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.awt.geom.Path2D;
import java.awt.geom.PathIterator;
import java.awt.geom.Rectangle2D;
import org.junit.jupiter.api.Test;

final class HatchingTest {

  @Test
  void linesStayInsideAndCoverTheShapeEvenly() {
    // an L: the hatch must leave out the notch
    Path2D shape = new Path2D.Double();
    shape.moveTo(0, 0);
    shape.lineTo(100, 0);
    shape.lineTo(100, 40);
    shape.lineTo(40, 40);
    shape.lineTo(40, 100);
    shape.lineTo(0, 100);
    shape.closePath();
    Path2D hatch = Hatching.of(shape, shape.getBounds2D(), 2);
    double length = 0;
    double[] c = new double[6];
    double x = 0;
    double y = 0;
    for (PathIterator it = hatch.getPathIterator(null); !it.isDone(); it.next()) {
      if (it.currentSegment(c) == PathIterator.SEG_LINETO) {
        double midX = 0.5 * (x + c[0]);
        double midY = 0.5 * (y + c[1]);
        assertThat(shape.contains(midX, midY)).isTrue();
        length += Math.hypot(c[0] - x, c[1] - y);
      }
      x = c[0];
      y = c[1];
    }
    // length times spacing is the area
    assertThat(2 * length).isCloseTo(6400, within(130.0));
  }

  @Test
  void nothingOutsideTheBounds() {
    Rectangle2D shape = new Rectangle2D.Double(0, 0, 10, 10);
    Path2D hatch = Hatching.of(shape, new Rectangle2D.Double(50, 50, 10, 10), 2);
    assertThat(hatch.getBounds2D().isEmpty()).isTrue();
  }
}
