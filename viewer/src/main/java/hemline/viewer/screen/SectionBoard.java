package hemline.viewer.screen;

import hemline.viewer.draw.BoardPainter;
import hemline.viewer.draw.BoardView;
import hemline.viewer.draw.FlowPicture;
import hemline.viewer.draw.FxSheet;
import hemline.viewer.draw.Palette;
import hemline.viewer.model.Placement;
import hemline.viewer.model.Selection;
import hemline.viewer.model.Shown;
import hemline.viewer.model.Workbench;
import java.util.List;
import javafx.application.Platform;
import javafx.beans.property.ObjectProperty;
import javafx.beans.property.SimpleObjectProperty;
import javafx.scene.canvas.Canvas;
import javafx.scene.canvas.GraphicsContext;
import javafx.scene.layout.Region;
import org.jspecify.annotations.Nullable;

/**
 * The section at true scale: the flow below, lip and ground above it, in the frame of the drawing.
 */
public final class SectionBoard extends Region {
  private static final double STALE_OPACITY = 0.35;
  private final Workbench bench;
  private final Selection selection;
  private final Canvas flow = new Canvas();
  private final Canvas solids = new Canvas();
  private final ObjectProperty<Palette> palette = new SimpleObjectProperty<>(Palette.LIGHT);
  private final ObjectProperty<@Nullable BoardView> view = new SimpleObjectProperty<>();
  private @Nullable FlowPicture picture;
  private List<BoardPainter.Label> labels = List.of();
  private boolean flowDirty = true;
  private boolean asked;
  private boolean fitted;

  public SectionBoard(Workbench bench, Selection selection) {
    this.bench = bench;
    this.selection = selection;
    setId("board");
    setFocusTraversable(true);
    getChildren().addAll(flow, solids);
    flow.setMouseTransparent(true);
    solids.setMouseTransparent(true);
    bench.shown().subscribe(this::show);
    bench.drawing().subscribe(d -> ask(false));
    bench.setting().subscribe(s -> ask(false));
    bench.stale().subscribe(s -> ask(false));
    selection.corners().subscribe(c -> ask(false));
    palette.subscribe(p -> ask(true));
  }

  public ObjectProperty<Palette> palette() {
    return palette;
  }

  /** What the board shows; null before it has a size. */
  public @Nullable BoardView view() {
    return view.get();
  }

  /** Shows another part; the fit to the lip is given up until {@link #fit}. */
  public void look(BoardView other) {
    view.set(other);
    ask(true);
  }

  /** Shows the whole lip with its surroundings. */
  public void fit() {
    if (getWidth() > 10 && getHeight() > 10) {
      look(
          BoardView.around(
              Placement.of(bench.drawing().get()),
              bench.setting().get().gap(),
              getWidth(),
              getHeight()));
      fitted = true;
    }
  }

  /** The flow on show, ready to paint; null when there is none. */
  public @Nullable FlowPicture picture() {
    return picture;
  }

  /** Dimensions to write beside what is dragged. */
  void label(List<BoardPainter.Label> texts) {
    labels = texts;
    ask(false);
  }

  private void show(@Nullable Shown shown) {
    picture = shown == null ? null : new FlowPicture(shown);
    ask(true);
  }

  /** Paints before the next frame, however often it is asked. */
  void ask(boolean flowToo) {
    flowDirty |= flowToo;
    if (!asked) {
      asked = true;
      Platform.runLater(this::paint);
    }
  }

  @Override
  protected void layoutChildren() {
    double w = getWidth();
    double h = getHeight();
    if (flow.getWidth() != w || flow.getHeight() != h) {
      for (Canvas canvas : List.of(flow, solids)) {
        canvas.setWidth(w);
        canvas.setHeight(h);
      }
      BoardView now = view.get();
      if (now == null || !fitted) {
        fit();
      } else {
        look(now.resized(w, h));
      }
    }
  }

  private void paint() {
    asked = false;
    BoardView at = view.get();
    if (at == null) {
      return;
    }
    Palette ink = palette.get();
    FlowPicture now = picture;
    if (flowDirty) {
      flowDirty = false;
      FxSheet sheet = clean(flow, ink);
      new BoardPainter(sheet, ink, at).paper();
      if (now != null) {
        now.paint(sheet, at);
      }
    }
    flow.setOpacity(bench.stale().get() ? STALE_OPACITY : 1);
    FxSheet sheet = clean(solids, ink);
    BoardPainter painter = new BoardPainter(sheet, ink, at);
    var drawing = bench.drawing().get();
    Placement lip = Placement.of(drawing);
    double ground = lip.low() - bench.setting().get().gap();
    painter.skirt(drawing);
    painter.lip(drawing);
    painter.ground(ground, bench.setting().get(), 0);
    if (now != null && !bench.stale().get()) {
      now.paintLabels(sheet, at);
    }
    painter.rulers(lip.left(), ground);
    painter.names(drawing, ground);
    painter.handles(drawing, selection.get());
    painter.dimensions(labels);
  }

  private static FxSheet clean(Canvas canvas, Palette ink) {
    GraphicsContext pen = canvas.getGraphicsContext2D();
    pen.clearRect(0, 0, canvas.getWidth(), canvas.getHeight());
    return new FxSheet(pen, ink.paper());
  }
}
