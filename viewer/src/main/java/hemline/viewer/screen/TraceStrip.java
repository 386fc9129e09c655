package hemline.viewer.screen;

import hemline.viewer.draw.BoardView;
import hemline.viewer.draw.FlowPicture;
import hemline.viewer.draw.FxSheet;
import hemline.viewer.draw.Palette;
import hemline.viewer.draw.PressureTrace;
import hemline.viewer.draw.TracePainter;
import hemline.viewer.model.Workbench;
import javafx.application.Platform;
import javafx.scene.canvas.Canvas;
import javafx.scene.canvas.GraphicsContext;
import javafx.scene.layout.Region;
import org.jspecify.annotations.Nullable;

/** Pressure along the ground and under the lip, below the board on the same x-axis. */
final class TraceStrip extends Region {
  private final SectionBoard board;
  private final Workbench bench;
  private final Canvas canvas = new Canvas();
  private @Nullable PressureTrace trace;
  private boolean asked;

  TraceStrip(SectionBoard board, Workbench bench) {
    this.board = board;
    this.bench = bench;
    setId("trace");
    setPrefHeight(118);
    setMinHeight(80);
    getChildren().add(canvas);
    board
        .picture()
        .subscribe(
            p -> {
              trace = p == null ? null : PressureTrace.of(p.shown());
              ask();
            });
    board.viewProperty().subscribe(v -> ask());
    board.palette().subscribe(p -> ask());
    bench.stale().subscribe(s -> ask());
  }

  private void ask() {
    if (!asked) {
      asked = true;
      Platform.runLater(this::paint);
    }
  }

  @Override
  protected void layoutChildren() {
    canvas.setWidth(getWidth());
    canvas.setHeight(getHeight());
    ask();
  }

  private void paint() {
    asked = false;
    GraphicsContext pen = canvas.getGraphicsContext2D();
    pen.clearRect(0, 0, canvas.getWidth(), canvas.getHeight());
    BoardView view = board.view();
    FlowPicture flow = board.picture().get();
    PressureTrace now = trace;
    Palette ink = board.palette().get();
    if (view == null) {
      return;
    }
    canvas.setOpacity(bench.stale().get() ? 0.4 : 1);
    TracePainter painter =
        new TracePainter(new FxSheet(pen, ink.paper()), ink, view, canvas.getHeight());
    painter.frame();
    if (flow != null && now != null) {
      painter.lines(now, flow.originX());
    }
  }
}
