package hemline.viewer.screen;

import hemline.shared.problem.Problem;
import hemline.shared.profile.LipDrawing;
import hemline.viewer.draw.FlowPicture;
import hemline.viewer.model.Selection;
import hemline.viewer.model.Setting;
import hemline.viewer.model.Sketch;
import hemline.viewer.model.Workbench;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.function.Consumer;
import javafx.beans.property.DoubleProperty;
import javafx.beans.property.ReadOnlyBooleanProperty;
import javafx.beans.property.ReadOnlyDoubleProperty;
import javafx.beans.property.SimpleDoubleProperty;
import javafx.geometry.Insets;
import javafx.geometry.Pos;
import javafx.scene.Node;
import javafx.scene.Parent;
import javafx.scene.control.Label;
import javafx.scene.layout.BorderPane;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.StackPane;
import javafx.scene.layout.VBox;
import org.jspecify.annotations.Nullable;

/** Drawing board and result at once. */
public final class BenchScreen implements Screen {
  private final Workbench bench;
  private final Selection selection;
  private final Sketch sketch = new Sketch();
  private final SectionBoard board;
  private final BoardActions actions;
  private final SketchMouse sketchHands;
  private final DoubleProperty coupon = new SimpleDoubleProperty(40e-3);
  private final StarterPanel starters;
  private final FirstSteps steps;
  private final LookBar look;

  private final SettingBar conditions;
  private @Nullable Parent root;
  private Consumer<Runnable> guard = Runnable::run;

  public BenchScreen(Workbench bench) {
    this.bench = bench;
    selection = new Selection(bench);
    board = new SectionBoard(bench, selection, sketch);
    actions = new BoardActions(bench, selection);
    sketchHands = new SketchMouse(board, bench, sketch);
    starters = new StarterPanel(bench, board::fit);
    new BoardMouse(board, bench, selection, actions, sketchHands);
    steps = new FirstSteps(bench);
    look = new LookBar(board, bench);
    conditions = new SettingBar(bench, this::run);
    new BoardKeys(board, bench, selection, actions, sketchHands, look, this::drawNew);
  }

  @Override
  public String title() {
    return "Bench";
  }

  /** The section itself. */
  public SectionBoard board() {
    return board;
  }

  public Selection selection() {
    return selection;
  }

  /** Length of a test coupon to print, m. */
  public ReadOnlyDoubleProperty coupon() {
    return coupon;
  }

  /** Changes of what is chosen. */
  public BoardActions actions() {
    return actions;
  }

  /** Begins with a shape, if the guard lets it. */
  public void begin(Consumer<StarterPanel> shape) {
    guard.accept(
        () -> {
          sketch.cancel();
          selection.clear();
          shape.accept(starters);
        });
  }

  /** True while an outline is being drawn. */
  public ReadOnlyBooleanProperty sketching() {
    return sketch.active();
  }

  /** Takes back the last point of a sketch, else the last change. */
  @Override
  public void undo() {
    if (sketch.active().get()) {
      sketch.back();
    } else {
      bench.undo();
    }
  }

  /** Makes again what was undone; nothing while an outline is being drawn. */
  @Override
  public void redo() {
    if (!sketch.active().get()) {
      bench.redo();
    }
  }

  /** Draws a detached part beside the lip. */
  public void drawPart() {
    selection.clear();
    starters.hide();
    sketchHands.beginPart();
  }

  /** Hands everything that would replace the lip on the bench to a guard of unsaved changes. */
  public void setGuard(Consumer<Runnable> unsaved) {
    guard = unsaved;
  }

  /** Puts a lip on the bench and shows it whole, if the guard lets it. */
  public void open(LipDrawing lip) {
    open(lip, () -> {});
  }

  /**
   * Puts a lip on the bench as {@link #open(LipDrawing)} does.
   *
   * @param then runs when the lip lies there
   */
  public void open(LipDrawing lip, Runnable then) {
    guard.accept(
        () -> {
          put(lip);
          then.run();
        });
  }

  /**
   * Solves what is shown; an entry that cannot be taken, or a fault of the lip, is told instead.
   */
  public void run() {
    Node typing = root == null ? null : root.getScene().getFocusOwner();
    if (typing instanceof ValueField field) {
      field.commit();
    }
    Node wrong = root == null ? null : root.lookup(".text-field.bad");
    if (wrong != null) {
      wrong.requestFocus();
    } else if (sketch.active().get()) {
      conditions.refuse("the outline is not closed yet; Enter closes it, Esc gives it up");
    } else if (bench.section() == null) {
      bench.findings().get().problems().stream()
          .findFirst()
          .map(Problem::text)
          .ifPresent(conditions::refuse);
    } else {
      bench.run();
    }
  }

  /** Runs a lip under conditions; one that lies on the bench stays as it is. */
  public void run(LipDrawing lip, Setting setting) {
    Runnable then =
        () -> {
          bench.set(setting);
          bench.run();
        };
    if (lip.equals(bench.drawing().get())) {
      then.run();
    } else {
      open(lip, then);
    }
  }

  private void put(LipDrawing lip) {
    sketch.cancel();
    selection.clear();
    starters.hide();
    bench.open(lip);
    board.fit();
  }

  /** Shows the first steps; {@code done} runs when they are done or hidden. */
  public void teach(Runnable done) {
    steps.begin(done);
  }

  /** Switches for what is seen of the flow. */
  public Node lookBar() {
    return look.content();
  }

  /** Clears the board to draw a lip from nothing. */
  public void drawNew() {
    guard.accept(
        () -> {
          selection.clear();
          starters.hide();
          sketchHands.begin();
        });
  }

  private static List<FlowPicture> pictures(List<KeptBoard> boards) {
    return boards.stream().map(KeptBoard::picture).filter(Objects::nonNull).toList();
  }

  /** Two boards in a row, all as large. */
  private static void place(GridPane boards, Region one, int place) {
    boards.add(one, place % 2, place / 2);
    GridPane.setHgrow(one, Priority.ALWAYS);
    GridPane.setVgrow(one, Priority.ALWAYS);
    one.setPrefSize(100, 100);
    one.setMaxSize(Double.MAX_VALUE, Double.MAX_VALUE);
  }

  /** Shows as many boards as lips are set aside; below two rows there is no room for pressures. */
  private void show(List<KeptBoard> boards, Region strip, int count) {
    strip.setManaged(count < 2);
    strip.setVisible(count < 2);
    boolean changed = false;
    for (int place = 0; place < boards.size(); place++) {
      KeptBoard one = boards.get(place);
      boolean on = place < count;
      changed |= one.isManaged() != on;
      one.setManaged(on);
      one.setVisible(on);
    }
    if (changed) {
      board.refit();
    }
  }

  @Override
  public Parent createContent() {
    Label probe = new ProbeLine(board, bench).label();
    StackPane middle = new StackPane(board, probe, steps.content());
    StackPane.setAlignment(probe, Pos.BOTTOM_RIGHT);
    StackPane.setAlignment(steps.content(), Pos.TOP_LEFT);
    StackPane.setMargin(steps.content(), new Insets(30, 0, 0, 64));
    GridPane boards = new GridPane(2, 2);
    place(boards, middle, 0);
    List<KeptBoard> beside = new ArrayList<>();
    for (int place = 0; place < Workbench.MOST_BESIDE; place++) {
      KeptBoard one = new KeptBoard(board, bench, place);
      beside.add(one);
      place(boards, one, place + 1);
      one.traced().subscribe(p -> board.share(pictures(beside)));
    }
    TraceStrip strip = new TraceStrip(board, beside, bench);
    bench.beside().subscribe(lips -> show(beside, strip, lips.size()));
    BorderPane left = new BorderPane(boards);
    left.setBottom(strip);
    BorderPane pane = new BorderPane(left);
    Region shape = new ShapePanel(bench, selection, sketch, sketchHands, actions, coupon).content();
    Region figures = new FiguresPanel(bench).content();
    VBox.setVgrow(figures, Priority.ALWAYS);
    VBox right = new VBox(shape, starters.content(), figures);
    right.getStyleClass().add("right");
    right.setPrefWidth(292);
    pane.setRight(right);
    pane.setBottom(conditions.content());
    root = pane;
    return pane;
  }
}
