package hemline.viewer.draw;

import static org.assertj.core.api.Assertions.assertThat;

import hemline.viewer.picture.GridField;
import hemline.viewer.picture.PressureColours;
import hemline.viewer.picture.PressureScale;
import hemline.viewer.picture.Projection;
import hemline.viewer.picture.SectionWindow;
import java.awt.geom.Rectangle2D;
import java.util.List;
import org.junit.jupiter.api.Test;

final class FieldMapTest {
  private static final double[] X = {0, 0.1, 0.5, 1};
  private static final double[] Y = {0, 0.3, 1};

  /** A field that is linear in x and y, so that the lookup must be exact on any spacing. */
  private static GridField plane(double ax, double ay) {
    double[] values = new double[X.length * Y.length];
    boolean[] wet = new boolean[values.length];
    for (int j = 0; j < Y.length; j++) {
      for (int i = 0; i < X.length; i++) {
        values[j * X.length + i] = ax * X[i] + ay * Y[j];
        wet[j * X.length + i] = true;
      }
    }
    return new GridField(X, Y, values, wet, X, Y, values);
  }

  @Test
  void everyPixelHasTheColourOfItsBand() {
    FieldMap map = new FieldMap(plane(64, -32), -32, 64);
    Projection to = new Projection(new SectionWindow(0, 1, 0, 1), 0, 100, 100);
    int w = 50;
    int h = 40;
    int[] pixels = new int[w * h];
    PressureScale scale = map.scale(List.of());
    map.fill(
        to,
        new Rectangle2D.Double(20, 10, 60, 80),
        scale,
        PressureColours.curve(),
        w,
        h,
        pixels,
        0,
        w);
    for (int r = 0; r < h; r++) {
      for (int c = 0; c < w; c++) {
        double x = 0.2 + 0.6 * (c + 0.5) / w;
        double y = 0.9 - 0.8 * (r + 0.5) / h;
        double band = (64 * x - 32 * y - scale.edge(0)) / scale.step();
        if (Math.abs(band - Math.rint(band)) > 1e-6) {
          assertThat(pixels[r * w + c])
              .as("pixel %d, %d", c, r)
              .isEqualTo(0xFF000000 | scale.colour((int) band));
        }
      }
    }
  }

  @Test
  void twoMapsSideBySideShareOneScale() {
    FieldMap one = new FieldMap(plane(64, -32), -32, 64);
    FieldMap other = new FieldMap(plane(10, 500), -10, 900);
    PressureScale scale = one.scale(List.of(other));
    assertThat(scale).isEqualTo(other.scale(List.of(one)));
    assertThat(scale.edge(0)).isLessThanOrEqualTo(-32);
    assertThat(scale.edge(scale.count())).isGreaterThanOrEqualTo(900);
    assertThat(one.scale(List.of()).edge(one.scale(List.of()).count())).isLessThan(200);
  }
}
