package hemline.viewer.edit;

import static org.assertj.core.api.Assertions.assertThat;

import hemline.shared.profile.LipDrawing;
import hemline.shared.profile.Starter;
import java.util.Set;
import org.junit.jupiter.api.Test;

final class SnapTest {
  private final LipDrawing flat = new Starter.Flat(8e-3, 10e-3).drawing();

  @Test
  void pointsFallOnTheGridWithExactDecimals() {
    Snap.Point p = new Snap(0.1e-3, true, 0.04e-3).of(flat, Set.of(), 3.13e-3, 2.27e-3);
    assertThat(p).isEqualTo(new Snap.Point(3.1e-3, 2.3e-3, false, false));
  }

  @Test
  void pointsComeInLineWithOtherVerticesOffTheGrid() {
    LipDrawing odd = LipEdit.place(flat, new Corner(0, 1), 7.77e-3, 0);
    Snap.Point p = new Snap(0.5e-3, true, 0.1e-3).of(odd, Set.of(), 7.71e-3, 4.9e-3);
    assertThat(p).isEqualTo(new Snap.Point(7.77e-3, 5e-3, true, false));
  }

  @Test
  void aMovingVertexDoesNotHoldItself() {
    Snap.Point p = new Snap(0, true, 0.2e-3).of(flat, Set.of(new Corner(0, 1)), 8.1e-3, 0.35e-3);
    assertThat(p.x()).as("in line with the other corner at 8 mm").isEqualTo(8e-3);
    assertThat(p.y()).isEqualTo(0.35e-3);
  }

  @Test
  void freeHandIsLeftAlone() {
    Snap.Point p = new Snap(0, false, 0).of(flat, Set.of(), 1.23456e-3, 7e-9);
    assertThat(p).isEqualTo(new Snap.Point(1.23456e-3, 7e-9, false, false));
  }
}
