package hemline.viewer.screen;

import hemline.viewer.draw.BoardView;
import hemline.viewer.draw.FlowPicture;
import hemline.viewer.draw.Probe;
import hemline.viewer.format.Digits;
import hemline.viewer.format.LengthUnit;
import hemline.viewer.model.Workbench;
import javafx.scene.control.Label;
import javafx.scene.input.MouseEvent;

/** Values of the flow under the mouse, in one line on the ground strip of the board. */
final class ProbeLine {
  private final SectionBoard board;
  private final Workbench bench;
  private final Label label = new Label();
  private double lastX;
  private double lastY;

  ProbeLine(SectionBoard board, Workbench bench) {
    this.board = board;
    this.bench = bench;
    label.setId("probe");
    label.getStyleClass().add("probe");
    label.setMouseTransparent(true);
    label.setVisible(false);
    board.addEventHandler(MouseEvent.MOUSE_MOVED, e -> show(e.getX(), e.getY()));
    board.addEventHandler(MouseEvent.MOUSE_DRAGGED, e -> show(e.getX(), e.getY()));
    board.addEventHandler(MouseEvent.MOUSE_EXITED, e -> label.setVisible(false));
    board.picture().subscribe(p -> again());
    board.viewProperty().subscribe(v -> again());
    bench.stale().subscribe(s -> again());
  }

  Label label() {
    return label;
  }

  /** Tells what lies under a mouse that rests while the flow or the view changes. */
  private void again() {
    if (label.isVisible()) {
      show(lastX, lastY);
    }
  }

  private void show(double px, double py) {
    lastX = px;
    lastY = py;
    BoardView view = board.view();
    if (view == null) {
      return;
    }
    double x = view.x(px);
    double y = view.y(py);
    StringBuilder text = new StringBuilder();
    text.append(LengthUnit.drawn(x)).append(" | ").append(LengthUnit.drawn(y));
    text.append(" ").append(LengthUnit.unit());
    FlowPicture flow = board.picture().get();
    if (flow != null && !bench.stale().get()) {
      Probe probe = Probe.at(flow.shown(), flow.through(), x - flow.originX(), y - flow.originY());
      if (probe != null) {
        text.append("    ").append(Digits.plain(probe.speed(), 3)).append(" m/s");
        text.append("    ").append(Digits.fixed(probe.pressure(), 0)).append(" Pa");
        text.append("    ").append(Digits.fixed(100 * probe.below(), 0));
        text.append(" % of the leak below");
      }
    }
    label.setText(text.toString());
    label.setVisible(true);
  }
}
