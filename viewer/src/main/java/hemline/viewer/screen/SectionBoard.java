package hemline.viewer.screen;

import hemline.shared.profile.LipDrawing;
import hemline.viewer.draw.BoardLook;
import hemline.viewer.draw.BoardPainter;
import hemline.viewer.draw.BoardView;
import hemline.viewer.draw.FaultMarks;
import hemline.viewer.draw.FlowPicture;
import hemline.viewer.draw.FxSheet;
import hemline.viewer.draw.Palette;
import hemline.viewer.model.Placement;
import hemline.viewer.model.Selection;
import hemline.viewer.model.Sketch;
import hemline.viewer.model.Workbench;
import java.util.List;
import javafx.application.Platform;
import javafx.beans.property.ObjectProperty;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.SimpleObjectProperty;
import javafx.scene.canvas.Canvas;
import javafx.scene.canvas.GraphicsContext;
import javafx.scene.layout.Background;
import javafx.scene.layout.Region;
import org.jspecify.annotations.Nullable;

/**
 * The section at true scale: the flow below, lip and ground above it, in the frame of the drawing.
 */
public final class SectionBoard extends Region {
  private static final double BEHIND_OPACITY = 0.35;

  private final Workbench bench;
  private final Selection selection;
  private final Sketch sketch;
  private final FlowLayer flow = new FlowLayer(this::traced);
  private final TracerLayer tracers;
  private final GroundLayer groundLayer = new GroundLayer();
  private final Canvas solids = new Canvas();
  private final ObjectProperty<Palette> palette = new SimpleObjectProperty<>(Palette.LIGHT);
  private final ObjectProperty<BoardLook> look = new SimpleObjectProperty<>(BoardLook.USUAL);
  private final ReadOnlyObjectWrapper<@Nullable BoardView> view = new ReadOnlyObjectWrapper<>();
  private final ReadOnlyObjectWrapper<@Nullable FlowPicture> picture =
      new ReadOnlyObjectWrapper<>();
  private @Nullable FlowPicture beside;
  private List<BoardPainter.Label> labels = List.of();
  private double @Nullable [] pointer;
  private boolean asked;
  private boolean fitted;

  public SectionBoard(Workbench bench, Selection selection, Sketch sketch) {
    this.bench = bench;
    this.selection = selection;
    this.sketch = sketch;
    tracers = new TracerLayer(view::get, palette::get);
    setId("board");
    setFocusTraversable(true);
    setAccessibleText("Section of the lip over the ground");
    getStyleClass().add("board");
    setMinSize(200, 150);
    solids.setMouseTransparent(true);
    getChildren().addAll(flow.node(), tracers.canvas(), groundLayer.node(), solids);
    bench.shown().subscribe(s -> flow.show(s, look.get()));
    look.subscribe(l -> flow.show(bench.shown().get(), l));
    bench.drawing().subscribe(d -> ask());
    bench.setting().subscribe(s -> ask());
    bench.behind().subscribe(s -> ask());
    selection.corners().subscribe(c -> ask());
    sketch.points().subscribe(p -> ask());
    sketch.active().subscribe(a -> ask());
    palette.subscribe(
        p -> {
          setBackground(Background.fill(FxSheet.colour(p.paper(), 1)));
          ask();
        });
  }

  public ObjectProperty<Palette> palette() {
    return palette;
  }

  /** What is shown of the flow. */
  public ObjectProperty<BoardLook> look() {
    return look;
  }

  /** What the board shows; null before it has a size. */
  public ReadOnlyObjectProperty<@Nullable BoardView> viewProperty() {
    return view.getReadOnlyProperty();
  }

  /** What the board shows; null before it has a size. */
  public @Nullable BoardView view() {
    return view.get();
  }

  /** Moves the paper by pixels. */
  public void pan(double right, double down) {
    BoardView now = view.get();
    if (now != null) {
      look(now.panned(right, down));
    }
  }

  /** Shows another part; the fit to the lip is given up until {@link #fit}. */
  public void look(BoardView other) {
    view.set(other);
    ask();
  }

  /** Shows the whole lip with its surroundings. */
  public void fit() {
    if (getWidth() > 10 && getHeight() > 10) {
      look(BoardView.around(lip(), bench.setting().get().gap(), getWidth(), getHeight()));
      fitted = true;
    }
  }

  /** Shows the whole lip once the board has its new size. */
  void refit() {
    fitted = false;
    requestLayout();
  }

  /** Where the lip, or the sheet for a new one, lies in the drawing. */
  Placement lip() {
    return newLip() ? new Placement(0, 12e-3, 0, 10e-3) : Placement.of(bench.drawing().get());
  }

  private boolean newLip() {
    return sketch.active().get() && !sketch.part();
  }

  /** Height of the ground in the drawing, m. */
  double ground() {
    return lip().low() - bench.setting().get().gap();
  }

  /** The flow on show, ready to paint; null when there is none. */
  public ReadOnlyObjectProperty<@Nullable FlowPicture> picture() {
    return picture.getReadOnlyProperty();
  }

  /** Shares the colour scale with a flow beside this one; null for none. */
  void share(@Nullable FlowPicture other) {
    if (other != beside) {
      beside = other;
      ask();
    }
  }

  /** Dimensions to write beside what is dragged. */
  void label(List<BoardPainter.Label> texts) {
    if (!texts.equals(labels)) {
      labels = texts;
      ask();
    }
  }

  /** Place in the drawing where the next point of a sketch would come; null for nowhere. */
  void point(double @Nullable [] at) {
    pointer = at;
    ask();
  }

  private void traced() {
    picture.set(flow.picture());
    ask();
  }

  /** Paints before the next frame, however often it is asked. */
  void ask() {
    if (!asked) {
      asked = true;
      Platform.runLater(this::paint);
    }
  }

  @Override
  protected void layoutChildren() {
    double w = getWidth();
    double h = getHeight();
    if (solids.getWidth() != w || solids.getHeight() != h) {
      flow.resize(w, h);
      for (Canvas canvas : List.of(tracers.canvas(), solids)) {
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
    BoardLook shown = look.get();
    FlowPicture now = flow.picture();
    boolean sketching = newLip();
    boolean behind = bench.behind().get();
    flow.paint(at, shown, ink, beside);
    flow.node().setVisible(!sketching);
    flow.fade(behind ? BEHIND_OPACITY : 1);
    boolean drifting = shown.tracers() && !bench.stale().get() && now != null && !sketching;
    tracers.canvas().setVisible(drifting);
    tracers.follow(drifting ? now : null);
    GraphicsContext pen = solids.getGraphicsContext2D();
    pen.clearRect(0, 0, solids.getWidth(), solids.getHeight());
    FxSheet sheet = new FxSheet(pen, ink.paper());
    BoardPainter painter = new BoardPainter(sheet, ink, at);
    Placement lip = lip();
    groundLayer.show(at, ink, ground(), lip.right() - lip.left(), bench.setting().get());
    if (sketching) {
      painter.rulers(0, ground());
    } else {
      paintLip(sheet, painter, at, ink, lip, behind ? null : now);
    }
    if (sketch.active().get()) {
      painter.sketch(sketch.points().get(), pointer);
    }
    painter.dimensions(labels);
  }

  private void paintLip(
      FxSheet sheet,
      BoardPainter painter,
      BoardView at,
      Palette ink,
      Placement lip,
      @Nullable FlowPicture now) {
    LipDrawing drawing = bench.drawing().get();
    painter.skirt(drawing);
    painter.lip(drawing);
    // the dimensions of what is dragged would run over the names of vortices
    if (now != null && labels.isEmpty()) {
      now.paintLabels(sheet, at, ink);
    }
    painter.rulers(0, ground());
    painter.names(lip, ground());
    FaultMarks.paint(sheet, at, ink, drawing, bench.findings().get());
    if (now != null) {
      now.paintKey(sheet, at, look.get(), ink, beside);
    }
    painter.handles(drawing, selection.get());
  }
}
