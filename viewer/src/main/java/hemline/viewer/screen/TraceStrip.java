package hemline.viewer.screen;

import hemline.viewer.draw.BoardView;
import hemline.viewer.draw.FlowPicture;
import hemline.viewer.draw.FxSheet;
import hemline.viewer.draw.Palette;
import hemline.viewer.draw.PressureTrace;
import hemline.viewer.draw.TracePainter;
import hemline.viewer.model.Workbench;
import java.awt.geom.Rectangle2D;
import java.util.List;
import java.util.Map;
import java.util.WeakHashMap;
import javafx.application.Platform;
import javafx.scene.canvas.Canvas;
import javafx.scene.canvas.GraphicsContext;
import javafx.scene.layout.Region;
import org.jspecify.annotations.Nullable;

/** Pressure along the ground and under the lip, below the board on the same x-axis. */
final class TraceStrip extends Region {
  private final SectionBoard board;
  private final List<KeptBoard> beside;
  private final Workbench bench;
  private final Canvas canvas = new Canvas();
  private final Map<FlowPicture, PressureTrace> traces = new WeakHashMap<>();
  private boolean asked;

  TraceStrip(SectionBoard board, List<KeptBoard> beside, Workbench bench) {
    this.board = board;
    this.beside = beside;
    this.bench = bench;
    setId("trace");
    setPrefHeight(118);
    setMinHeight(80);
    getChildren().add(canvas);
    board.flows().subscribe(p -> ask());
    board.viewProperty().subscribe(v -> ask());
    board.palette().subscribe(p -> ask());
    bench.behind().subscribe(s -> ask());
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
    Palette ink = board.palette().get();
    if (view == null) {
      return;
    }
    canvas.setOpacity(bench.behind().get() ? 0.4 : 1);
    List<PressureTrace> all = board.flows().get().stream().map(this::trace).toList();
    trace(pen, view, ink, board.picture().get(), all);
    for (KeptBoard one : beside) {
      BoardView other = one.view();
      if (other != null && one.isVisible()) {
        pen.save();
        pen.translate(one.getLayoutX(), 0);
        trace(pen, other, ink, one.picture(), all);
        pen.restore();
      }
    }
  }

  /** Pressures of a flow, read off it once. */
  private PressureTrace trace(FlowPicture flow) {
    return traces.computeIfAbsent(flow, f -> PressureTrace.of(f.shown()));
  }

  private void trace(
      GraphicsContext pen,
      BoardView view,
      Palette ink,
      @Nullable FlowPicture flow,
      List<PressureTrace> shared) {
    FxSheet sheet = new FxSheet(pen, ink.paper());
    TracePainter painter = new TracePainter(sheet, ink, view, canvas.getHeight());
    sheet.clip(new Rectangle2D.Double(0, 0, view.width(), canvas.getHeight()));
    painter.frame();
    if (flow != null) {
      painter.lines(trace(flow), flow.originX(), shared);
    }
    sheet.unclip();
  }
}
