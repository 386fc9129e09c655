package hemline.viewer.app;

import static org.assertj.core.api.Assertions.assertThat;

import hemline.viewer.screen.SectionBoard;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import javafx.geometry.Bounds;
import javafx.geometry.Rectangle2D;
import javafx.scene.Node;
import javafx.scene.Parent;
import javafx.scene.Scene;
import javafx.scene.control.Labeled;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The bench in small and large windows. */
final class WindowSizesTest extends BenchJourney {
  /** Lays a window out that is not shown, since the screen in memory is small. */
  private HemlineWindow laidOut(double width, double height) {
    HemlineWindow[] made = new HemlineWindow[1];
    interact(
        () -> {
          made[0] = new HemlineWindow(bench, Examples.of(Path.of("../profiles")), ask);
          resize(new Scene(made[0].createContent(), width, height).getRoot(), width, height);
        });
    return made[0];
  }

  private static void resize(Parent root, double width, double height) {
    root.resize(width, height);
    for (int k = 0; k < 4; k++) {
      root.applyCss();
      root.layout();
    }
  }

  @ParameterizedTest
  @CsvSource({"900, 640", "1280, 800", "2560, 1440", "3840, 2160"})
  void nothingIsCutOff(double width, double height) {
    HemlineWindow laid = laidOut(width, height);
    Parent root = laid.benchScreen().board().getScene().getRoot();
    List<Node> controls = new ArrayList<>();
    for (String kind :
        List.of(
            ".button",
            ".toggle-button",
            ".text-field",
            ".slider",
            ".combo-box",
            ".menu-bar .label")) {
      root.lookupAll(kind).stream().filter(WindowSizesTest::shown).forEach(controls::add);
    }
    assertThat(controls).hasSizeGreaterThan(20);
    for (Node node : controls) {
      Bounds at = node.localToScene(node.getLayoutBounds());
      assertThat(at.getMinX()).as(node.toString()).isGreaterThanOrEqualTo(-0.5);
      assertThat(at.getMinY()).as(node.toString()).isGreaterThanOrEqualTo(-0.5);
      assertThat(at.getMaxX()).as(node.toString()).isLessThanOrEqualTo(width + 0.5);
      assertThat(at.getMaxY()).as(node.toString()).isLessThanOrEqualTo(height + 0.5);
      if (node instanceof Labeled label) {
        assertThat(label.getWidth())
            .as("%s is cut off", label.getText())
            .isGreaterThanOrEqualTo(label.prefWidth(-1) - 0.5);
      }
    }
    assertThat(controls).allSatisfy(WindowSizesTest::hasAName);
    var board = laid.benchScreen().board();
    assertThat(board.getAccessibleText()).isNotBlank();
    assertThat(board.getWidth()).isGreaterThan(0.55 * width);
    assertThat(board.getHeight()).isGreaterThan(0.5 * height);
  }

  /** What a screen reader says of a control: its words, or those given to it. */
  private static void hasAName(Node node) {
    String words = node instanceof Labeled label ? label.getText() : "";
    String given = node.getAccessibleText();
    assertThat(words + (given == null ? "" : given)).as(node.toString()).isNotBlank();
  }

  private static boolean shown(Node node) {
    for (Node one = node; one != null; one = one.getParent()) {
      if (!one.isVisible()) {
        return false;
      }
    }
    return true;
  }

  @Test
  void theWholeLipStaysWholeWhenTheWindowGrows() {
    SectionBoard board = laidOut(900, 640).benchScreen().board();
    Parent root = board.getScene().getRoot();
    double small = board.view().scale();
    interact(() -> resize(root, 1800, 1280));
    assertThat(board.view().scale()).isGreaterThan(1.5 * small);
    // a part that was chosen by hand stays as large as it is
    interact(() -> board.look(board.view().zoomed(2, 10, 10)));
    double zoomed = board.view().scale();
    interact(() -> resize(root, 900, 640));
    assertThat(board.view().scale()).isEqualTo(zoomed);
  }

  @Test
  void aWindowManagerThatTellsOfNoRoomGetsAWindowAllTheSame() {
    Rectangle2D whole = new Rectangle2D(0, 0, 1280, 800);
    assertThat(HemlineApplication.room(new Rectangle2D(0, 0, 200, 200), whole)).isEqualTo(whole);
    Rectangle2D beside = new Rectangle2D(0, 30, 1280, 770);
    assertThat(HemlineApplication.room(beside, whole)).isEqualTo(beside);
  }
}
