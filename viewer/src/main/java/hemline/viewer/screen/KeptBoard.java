package hemline.viewer.screen;

import hemline.viewer.draw.BoardPainter;
import hemline.viewer.draw.BoardView;
import hemline.viewer.draw.FlowPicture;
import hemline.viewer.draw.FxSheet;
import hemline.viewer.draw.Palette;
import hemline.viewer.model.Kept;
import hemline.viewer.model.Placement;
import hemline.viewer.model.Workbench;
import hemline.viewer.picture.Sheet.Lettering;
import hemline.viewer.picture.TextWidth;
import java.util.List;
import javafx.application.Platform;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.scene.canvas.Canvas;
import javafx.scene.canvas.GraphicsContext;
import javafx.scene.layout.Background;
import javafx.scene.layout.Region;
import org.jspecify.annotations.Nullable;

/** A lip set aside, beside the board at the same scale, its ground level with the board's. */
final class KeptBoard extends Region {
  /** Names of the lips set aside; the one on the bench is A. */
  static final String LETTERS = "BCD";

  private final SectionBoard board;
  private final Workbench bench;
  private final FlowLayer flow = new FlowLayer(this::ready);
  private final Canvas solids = new Canvas();
  private final ReadOnlyObjectWrapper<@Nullable FlowPicture> traced = new ReadOnlyObjectWrapper<>();
  private final int place;
  private boolean asked;

  /**
   * An empty board.
   *
   * @param place among the lips set aside
   */
  KeptBoard(SectionBoard board, Workbench bench, int place) {
    this.place = place;
    this.board = board;
    this.bench = bench;
    setId(place == 0 ? "kept-board" : "kept-board-" + LETTERS.charAt(place));
    setMinSize(120, 150);
    getChildren().addAll(flow.node(), solids);
    ShownUnit.follow(this, this::ask);
    bench.beside().subscribe(k -> trace());
    board.look().subscribe(l -> trace());
    board.viewProperty().subscribe(v -> ask());
    board.flows().subscribe(p -> ask());
    board
        .palette()
        .subscribe(
            p -> {
              setBackground(Background.fill(FxSheet.colour(p.paper(), 1)));
              ask();
            });
  }

  private @Nullable Kept kept() {
    List<Kept> all = bench.beside().get();
    return place < all.size() ? all.get(place) : null;
  }

  private void trace() {
    Kept kept = kept();
    flow.show(kept == null ? null : kept.shown(), board.look().get());
  }

  private void ready() {
    traced.set(flow.picture());
    ask();
  }

  /** The flow on show, ready to paint. */
  ReadOnlyObjectProperty<@Nullable FlowPicture> traced() {
    return traced.getReadOnlyProperty();
  }

  private void ask() {
    if (!asked) {
      asked = true;
      Platform.runLater(this::paint);
    }
  }

  @Override
  protected void layoutChildren() {
    flow.resize(getWidth(), getHeight());
    solids.setWidth(getWidth());
    solids.setHeight(getHeight());
    ask();
  }

  /** Part of the kept drawing on show; null for none. */
  @Nullable BoardView view() {
    Kept kept = kept();
    return kept == null ? null : view(kept);
  }

  /** The flow on show; null for none. */
  @Nullable FlowPicture picture() {
    return flow.picture();
  }

  private @Nullable BoardView view(Kept kept) {
    BoardView main = board.view();
    if (main == null || getWidth() < 10) {
      return null;
    }
    Placement lip = Placement.of(kept.drawing());
    Placement other = board.lip();
    double left = main.left() - other.left() + lip.left();
    double bottom = main.bottom() - board.ground() + lip.low() - kept.setting().gap();
    return new BoardView(left, bottom, main.scale(), getWidth(), getHeight());
  }

  private void paint() {
    asked = false;
    Kept kept = kept();
    GraphicsContext pen = solids.getGraphicsContext2D();
    pen.clearRect(0, 0, solids.getWidth(), solids.getHeight());
    BoardView view = kept == null ? null : view(kept);
    if (kept == null || view == null) {
      return;
    }
    Palette ink = board.palette().get();
    flow.paint(view, board.look().get(), ink, board.flows().get());
    FxSheet sheet = new FxSheet(pen, ink.paper());
    BoardPainter painter = new BoardPainter(sheet, ink, view);
    Placement lip = Placement.of(kept.drawing());
    double ground = lip.low() - kept.setting().gap();
    painter.skirt(kept.drawing());
    painter.lip(kept.drawing());
    painter.ground(ground, 0);
    painter.motion(ground, kept.setting().ground());
    FlowPicture now = flow.picture();
    if (now != null) {
      now.paintLabels(sheet, view, ink, List.of(BoardPainter.gapWords(view, lip, ground)));
    }
    painter.rulerAlong(0);
    painter.rulerUp(0);
    painter.sides(lip);
    painter.gap(lip, ground);
    if (now != null) {
      now.paintKey(sheet, view, board.look().get(), ink, board.flows().get());
    }
    String name = LETTERS.charAt(place) + ": " + kept.drawing().name();
    sheet.text(
        60,
        108,
        TextWidth.fitted(name, 13, view.width() - 66),
        Lettering.of(13, ink.text()).heavy().lifted());
  }
}
