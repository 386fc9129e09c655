package hemline.viewer.draw;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import hemline.viewer.draw.BoardPainter.Label;
import hemline.viewer.model.Placement;
import hemline.viewer.picture.TextWidth;
import java.awt.geom.Rectangle2D;
import java.util.List;
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
  void theArrowOfTheGroundStaysInView() {
    for (BoardView part : List.of(view, view.panned(0, 900), view.panned(0, -2000))) {
      Rectangle2D strip = BoardPainter.motionStrip(part, -2e-3);
      assertThat(new Rectangle2D.Double(0, 0, 900, 600).contains(strip)).as("%s", strip).isTrue();
    }
    assertThat(BoardPainter.motionStrip(view, -2e-3).getMinY())
        .as("in the ground where that is seen")
        .isCloseTo(view.py(-2e-3) + 3, within(EXACT));
  }

  @Test
  void dimensionsKeepOffOtherWordsAndEachOther() {
    BoardView small = BoardView.around(new Placement(0, 8e-3, 0, 10e-3), 2e-3, 608, 360);
    Rectangle2D key = FlowPicture.keyArea(small);
    Label inKey = new Label(key.getCenterX(), key.getCenterY(), "12.5 mm");
    List<Label> placed =
        BoardPainter.apart(
            small,
            List.of(inKey, new Label(100, 200, "8 mm"), new Label(104, 203, "7 mm")),
            List.of(key));
    assertThat(placed).extracting(Label::text).containsExactly("12.5 mm", "8 mm", "7 mm");
    assertThat(placed.get(1)).isEqualTo(new Label(100, 200, "8 mm"));
    for (int k = 0; k < placed.size(); k++) {
      assertThat(room(placed.get(k)).intersects(key)).isFalse();
      for (int other = 0; other < k; other++) {
        assertThat(room(placed.get(k)).intersects(room(placed.get(other)))).isFalse();
      }
    }
  }

  private static Rectangle2D room(Label label) {
    double width = TextWidth.of(label.text(), 12);
    return new Rectangle2D.Double(label.x() - 0.5 * width, label.y() - 10, width, 12);
  }

  @Test
  void otherFramesAreShifted() {
    var flow = view.projection(1e-3, -2e-3);
    assertThat(flow.x(0)).isCloseTo(view.px(1e-3), within(1e-6));
    assertThat(flow.y(0)).isCloseTo(view.py(-2e-3), within(1e-6));
  }
}
