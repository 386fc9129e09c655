package hemline.viewer.screen;

import hemline.shared.profile.LipDrawing;
import hemline.viewer.draw.BoardLook;
import hemline.viewer.draw.BoardPainter;
import hemline.viewer.draw.BoardView;
import hemline.viewer.draw.FlowPicture;
import hemline.viewer.draw.FxSheet;
import hemline.viewer.draw.Palette;
import hemline.viewer.draw.SizeMarks;
import hemline.viewer.model.Placement;
import hemline.viewer.model.Selection;
import hemline.viewer.model.Sketch;
import hemline.viewer.model.Workbench;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import javafx.application.Platform;
import javafx.beans.property.ObjectProperty;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.SimpleObjectProperty;
import javafx.scene.canvas.Canvas;
import javafx.scene.layout.Background;
import javafx.scene.layout.Region;
import org.jspecify.annotations.Nullable;

/**
 * The section at true scale: the flow below, lip and ground above it, in the frame of the drawing.
 */
public final class SectionBoard extends Region {
  private static final double BEHIND_OPACITY = 0.35;

  private final Workbench bench;
  private final Sketch sketch;
  private final FlowLayer flow = new FlowLayer(this::traced);
  private final TracerLayer tracers;
  private final GroundLayer groundLayer = new GroundLayer();
  private final Patch lipPatch = new Patch();
  private final Patch vortexPatch = new Patch();
  private final Patch rulerAlong = new Patch();
  private final Patch rulerUp = new Patch();
  private final Patch sides = new Patch();
  private final Patch gap = new Patch();
  private final Patch key = new Patch();
  private final Patch sizes = new Patch();
  private final BoardMarks marks;
  private final ObjectProperty<Palette> palette = new SimpleObjectProperty<>(Palette.LIGHT);
  private final ObjectProperty<BoardLook> look = new SimpleObjectProperty<>(BoardLook.USUAL);
  private final ReadOnlyObjectWrapper<@Nullable BoardView> view = new ReadOnlyObjectWrapper<>();
  private final ReadOnlyObjectWrapper<@Nullable FlowPicture> picture =
      new ReadOnlyObjectWrapper<>();
  private final ReadOnlyObjectWrapper<List<FlowPicture>> flows =
      new ReadOnlyObjectWrapper<>(List.of());
  private List<FlowPicture> others = List.of();
  private List<BoardPainter.Label> labels = List.of();
  private double @Nullable [] pointer;
  private boolean asked;
  private boolean fitted;

  /** True while the whole lip is on show, as {@link #fit} left it. */
  private boolean whole;

  public SectionBoard(Workbench bench, Selection selection, Sketch sketch) {
    this.bench = bench;
    this.sketch = sketch;
    marks = new BoardMarks(bench, selection, sketch);
    tracers = new TracerLayer(view::get, palette::get);
    setId("board");
    setFocusTraversable(true);
    setAccessibleText("Section of the lip over the ground");
    getStyleClass().add("board");
    setMinSize(120, 150);
    getChildren().addAll(flow.node(), tracers.canvas(), groundLayer.node());
    patches().forEach(patch -> getChildren().add(patch.node()));
    ShownUnit.follow(this, this::renew);
    bench.shown().subscribe(s -> flow.show(s, look.get()));
    look.subscribe(
        l -> {
          flow.show(bench.shown().get(), l);
          ask();
        });
    bench.drawing().subscribe(d -> ask());
    bench.findings().subscribe(f -> ask());
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
    whole = false;
    view.set(other);
    ask();
  }

  /** Shows the whole lip with its surroundings. */
  public void fit() {
    if (getWidth() > 10 && getHeight() > 10) {
      look(BoardView.around(lip(), bench.setting().get().gap(), getWidth(), getHeight()));
      fitted = true;
      whole = true;
    }
  }

  /** Shows the whole lip once the board has its new size. */
  void refit() {
    fitted = false;
    requestLayout();
  }

  /** Where the lip, or the sheet for a new one, lies in the drawing. */
  Placement lip() {
    return sketch.whole() ? new Placement(0, 12e-3, 0, 10e-3) : Placement.of(bench.drawing().get());
  }

  /** Height of the ground in the drawing, m. */
  double ground() {
    return lip().low() - bench.setting().get().gap();
  }

  /** The flow on show, ready to paint; null when there is none. */
  public ReadOnlyObjectProperty<@Nullable FlowPicture> picture() {
    return picture.getReadOnlyProperty();
  }

  /** All flows on show, which share one colour scale. */
  ReadOnlyObjectProperty<List<FlowPicture>> flows() {
    return flows.getReadOnlyProperty();
  }

  /** Shares the colour scale with the flows beside this one. */
  void share(List<FlowPicture> beside) {
    others = List.copyOf(beside);
    gather();
  }

  private void gather() {
    List<FlowPicture> all = new ArrayList<>(others);
    FlowPicture own = flow.picture();
    if (own != null) {
      all.add(0, own);
    }
    flows.set(List.copyOf(all));
    ask();
  }

  /** Paints everything anew, in another unit. */
  private void renew() {
    patches().forEach(Patch::forget);
    ask();
  }

  private List<Patch> patches() {
    return List.of(
        lipPatch, vortexPatch, rulerAlong, rulerUp, sides, gap, key, sizes, marks.patch());
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
    gather();
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
    Canvas drift = tracers.canvas();
    if (drift.getWidth() == w && drift.getHeight() == h) {
      return;
    }
    flow.resize(w, h);
    drift.setWidth(w);
    drift.setHeight(h);
    BoardView now = view.get();
    if (now == null || !fitted || whole) {
      fit();
    } else {
      look(now.resized(w, h));
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
    boolean sketching = sketch.whole();
    boolean behind = bench.behind().get();
    flow.paint(at, shown, ink, flows.get());
    flow.node().setVisible(!sketching);
    flow.fade(behind ? BEHIND_OPACITY : 1);
    boolean drifting = shown.tracers() && !bench.stale().get() && now != null && !sketching;
    tracers.canvas().setVisible(drifting);
    tracers.follow(drifting ? now : null);
    Placement lip = lip();
    groundLayer.show(at, ink, ground(), lip.right() - lip.left(), bench.setting().get());
    rulerAlong.show(at, ink, BoardPainter.rulerAlongArea(at), 0, p -> p.rulerAlong(0));
    rulerUp.show(at, ink, BoardPainter.rulerUpArea(at), 0, p -> p.rulerUp(0));
    if (sketching) {
      for (Patch patch : List.of(lipPatch, vortexPatch, sides, gap, key, sizes)) {
        patch.hide();
      }
    } else {
      showLip(at, ink, lip);
      showSizes(at, ink);
      showFlowMarks(at, ink, behind ? null : now);
    }
    marks.show(at, ink, BoardPainter.apart(at, labels, words(at)), pointer);
  }

  private void showLip(BoardView at, Palette ink, Placement lip) {
    LipDrawing drawing = bench.drawing().get();
    double ground = ground();
    Rectangle2D box = BoardMarks.box(at, lip.left(), lip.right(), lip.low(), lip.high());
    box.add(box.getX(), 0); // the skirt
    lipPatch.show(
        at,
        ink,
        box,
        List.of(drawing.body(), drawing.mountEdge(), drawing.detached()),
        p -> {
          p.skirt(drawing);
          p.lip(drawing);
        });
    sides.show(at, ink, BoardPainter.sidesArea(at, lip), lip, p -> p.sides(lip));
    gap.show(
        at,
        ink,
        BoardPainter.gapArea(at, lip, ground),
        List.of(lip, ground),
        p -> p.gap(lip, ground));
  }

  /** Lengths of edges; the dimensions of what is dragged would run over them. */
  private void showSizes(BoardView at, Palette ink) {
    if (look.get().sizes() && labels.isEmpty()) {
      LipDrawing drawing = bench.drawing().get();
      sizes.show(
          at,
          ink,
          new Rectangle2D.Double(0, 0, at.width(), at.height()),
          List.of(drawing.body(), drawing.detached()),
          p -> SizeMarks.paint(p.sheet(), at, ink, drawing));
    } else {
      sizes.hide();
    }
  }

  /** Names of vortices and the meaning of the colours. */
  private void showFlowMarks(BoardView at, Palette ink, @Nullable FlowPicture now) {
    // dimensions would run over the names of vortices
    if (now == null || !labels.isEmpty() || look.get().sizes()) {
      vortexPatch.hide();
    } else {
      List<Rectangle2D> words = words(at);
      vortexPatch.show(
          at,
          ink,
          now.labelsArea(at),
          List.of(now, words),
          p -> now.paintLabels(p.sheet(), at, ink, words));
    }
    if (now == null) {
      key.hide();
    } else {
      BoardLook shown = look.get();
      List<FlowPicture> other = flows.get();
      key.show(
          at,
          ink,
          FlowPicture.keyArea(at),
          Arrays.asList(now, shown, other),
          p -> now.paintKey(p.sheet(), at, shown, ink, other));
    }
  }

  /** Rooms of the words that stay while something is dragged. */
  private List<Rectangle2D> words(BoardView at) {
    List<Rectangle2D> rooms = new ArrayList<>();
    rooms.add(BoardPainter.gapWords(at, lip(), ground()));
    if (flow.picture() != null && look.get().map() != BoardLook.ColourMap.NONE) {
      rooms.add(FlowPicture.keyArea(at));
    }
    return rooms;
  }
}
