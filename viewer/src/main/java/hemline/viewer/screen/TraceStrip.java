package hemline.viewer.screen;

import hemline.viewer.draw.BoardView;
import hemline.viewer.draw.FlowPicture;
import hemline.viewer.draw.FxSheet;
import hemline.viewer.draw.Palette;
import hemline.viewer.draw.PressureTrace;
import hemline.viewer.draw.TracePainter;
import hemline.viewer.model.Workbench;
import java.awt.geom.Rectangle2D;
import javafx.application.Platform;
import javafx.scene.canvas.Canvas;
import javafx.scene.canvas.GraphicsContext;
import javafx.scene.layout.Region;
import org.jspecify.annotations.Nullable;

/** Pressure along the ground and under the lip, below the board on the same x-axis. */
final class TraceStrip extends Region {
  private final SectionBoard board;
  private final KeptBoard beside;
  private final Workbench bench;
  private final Canvas canvas = new Canvas();
  private @Nullable PressureTrace trace;
  private @Nullable PressureTrace keptTrace;
  private boolean asked;

  TraceStrip(SectionBoard board, KeptBoard beside, Workbench bench) {
    this.board = board;
    this.beside = beside;
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
    bench.behind().subscribe(s -> ask());
    beside
        .traced()
        .subscribe(
            k -> {
              keptTrace = k == null ? null : PressureTrace.of(k.shown());
              ask();
            });
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
    canvas.setOpacity(bench.behind().get() ? 0.4 : 1);
    pen.save();
    BoardView other = beside.view();
    FlowPicture kept = other == null ? null : beside.picture();
    trace(pen, view, ink, flow, now, other == null ? null : keptTrace);
    if (other != null) {
      pen.translate(canvas.getWidth() - other.width(), 0);
      trace(pen, other, ink, kept, keptTrace, now);
    }
    pen.restore();
  }

  private void trace(
      GraphicsContext pen,
      BoardView view,
      Palette ink,
      @Nullable FlowPicture flow,
      @Nullable PressureTrace now,
      @Nullable PressureTrace shared) {
    FxSheet sheet = new FxSheet(pen, ink.paper());
    TracePainter painter = new TracePainter(sheet, ink, view, canvas.getHeight());
    sheet.clip(new Rectangle2D.Double(0, 0, view.width(), canvas.getHeight()));
    painter.frame();
    if (flow != null && now != null) {
      painter.lines(now, flow.originX(), shared);
    }
    sheet.unclip();
  }
}
