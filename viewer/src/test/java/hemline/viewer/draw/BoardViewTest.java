package hemline.viewer.draw;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import hemline.viewer.model.Placement;
import org.junit.jupiter.api.Test;

final class BoardViewTest {
  private static final double EXACT = 1e-9;
  private final BoardView view = BoardView.around(new Placement(0, 8e-3, 0, 10e-3), 2e-3, 900, 600);

  @Test
  void theWholeLipAndTheGroundAreSeen() {
    assertThat(view.px(0)).isBetween(100.0, 450.0);
    assertThat(view.px(8e-3)).isBetween(450.0, 800.0);
    assertThat(view.py(10e-3)).isPositive();
    assertThat(view.py(-2e-3)).isLessThan(600);
  }

  @Test
  void pixelsAndPlacesAnswerEachOther() {
    assertThat(view.x(view.px(3e-3))).isCloseTo(3e-3, within(EXACT));
    assertThat(view.y(view.py(4e-3))).isCloseTo(4e-3, within(EXACT));
  }

  @Test
  void zoomKeepsThePointUnderTheHand() {
    BoardView near = view.zoomed(1.7, 320, 210);
    assertThat(near.x(320)).isCloseTo(view.x(320), within(EXACT));
    assertThat(near.y(210)).isCloseTo(view.y(210), within(EXACT));
    assertThat(near.scale()).isCloseTo(1.7 * view.scale(), within(1e-6));
    assertThat(view.zoomed(1e9, 1, 1).scale()).as("no closer than this").isLessThan(1e7);
  }

  @Test
  void thePaperFollowsTheHand() {
    BoardView moved = view.panned(30, -20);
    assertThat(moved.px(1e-3)).isCloseTo(view.px(1e-3) + 30, within(1e-6));
    assertThat(moved.py(1e-3)).isCloseTo(view.py(1e-3) - 20, within(1e-6));
  }

  @Test
  void otherFramesAreShifted() {
    var flow = view.projection(1e-3, -2e-3);
    assertThat(flow.x(0)).isCloseTo(view.px(1e-3), within(1e-6));
    assertThat(flow.y(0)).isCloseTo(view.py(-2e-3), within(1e-6));
  }
}
