package hemline.viewer.screen;

import hemline.shared.geometry.Arc;
import hemline.shared.geometry.Vertex;
import hemline.shared.profile.LipDrawing;
import hemline.viewer.draw.BoardPainter.Label;
import hemline.viewer.draw.BoardView;
import hemline.viewer.edit.Corner;
import hemline.viewer.edit.LipEdit;
import hemline.viewer.edit.Parts;
import hemline.viewer.edit.Snap;
import hemline.viewer.format.Digits;
import hemline.viewer.model.Placement;
import hemline.viewer.model.Selection;
import hemline.viewer.model.Workbench;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import javafx.scene.input.KeyEvent;
import javafx.scene.input.MouseButton;
import javafx.scene.input.MouseEvent;
import javafx.scene.input.ScrollEvent;
import org.jspecify.annotations.Nullable;

/** Mouse and keyboard on the board. */
final class BoardHands {
  private static final double NEAR = 9;
  private final SectionBoard board;
  private final Workbench bench;
  private final Selection selection;
  private double gridStep = 0.1e-3;
  private @Nullable Grip grip;
  private double lastX;
  private double lastY;

  /** What the mouse holds. */
  private sealed interface Grip {
    /** Vertices; the one under the mouse leads. */
    record Vertices(Corner lead, Set<Corner> all) implements Grip {}

    /** Middle of an edge. */
    record Bow(Corner edge) implements Grip {}

    /** The ground line. */
    record Ground() implements Grip {}

    /** The paper. */
    record Paper() implements Grip {}
  }

  BoardHands(SectionBoard board, Workbench bench, Selection selection) {
    this.board = board;
    this.bench = bench;
    this.selection = selection;
    board.addEventHandler(MouseEvent.MOUSE_PRESSED, this::press);
    board.addEventHandler(MouseEvent.MOUSE_DRAGGED, this::drag);
    board.addEventHandler(MouseEvent.MOUSE_RELEASED, e -> release());
    board.addEventHandler(ScrollEvent.SCROLL, this::scroll);
    board.addEventHandler(KeyEvent.KEY_PRESSED, this::key);
  }

  void setGridStep(double step) {
    gridStep = step;
  }

  private void press(MouseEvent e) {
    board.requestFocus();
    BoardView view = board.view();
    if (view == null) {
      return;
    }
    lastX = e.getX();
    lastY = e.getY();
    Corner corner = cornerAt(view, e.getX(), e.getY());
    if (e.getButton() != MouseButton.PRIMARY) {
      grip = new Grip.Paper();
      return;
    }
    if (corner != null) {
      if (e.isShiftDown()) {
        selection.toggle(corner);
      } else if (!selection.get().contains(corner)) {
        selection.set(Set.of(corner));
      }
      grip = new Grip.Vertices(corner, selection.get());
      bench.beginDrag();
      return;
    }
    Corner edge = edgeAt(view, e.getX(), e.getY());
    if (edge != null && e.getClickCount() == 2) {
      insert(view, edge, e.getX(), e.getY());
    } else if (edge != null) {
      selection.set(Set.of(edge, Parts.next(bench.drawing().get(), edge)));
      grip =
          nearMiddle(view, edge, e) ? new Grip.Bow(edge) : new Grip.Vertices(edge, selection.get());
      bench.beginDrag();
    } else if (Math.abs(view.py(ground()) - e.getY()) < 6) {
      grip = new Grip.Ground();
      bench.beginDrag();
    } else {
      selection.clear();
      grip = new Grip.Paper();
    }
  }

  private void insert(BoardView view, Corner edge, double px, double py) {
    double x = view.x(px);
    double y = view.y(py);
    LipDrawing before = bench.drawing().get();
    Vertex a = Parts.vertex(before, edge);
    Vertex b = Parts.vertex(before, Parts.next(before, edge));
    double[] foot = foot(a, b, x, y);
    bench.edit(
        d -> LipEdit.insert(d, edge, a.bulge() == 0 ? foot[0] : x, a.bulge() == 0 ? foot[1] : y));
    selection.set(Set.of(new Corner(edge.part(), edge.index() + 1)));
  }

  private void drag(MouseEvent e) {
    BoardView view = board.view();
    if (view == null || grip == null) {
      return;
    }
    double x = view.x(e.getX());
    double y = view.y(e.getY());
    if (grip instanceof Grip.Vertices held) {
      moveTo(view, held, e, x, y);
    } else if (grip instanceof Grip.Bow bow) {
      bench.edit(d -> LipEdit.bendThrough(d, bow.edge(), x, y));
      board.label(List.of(arcLabel(view, bow.edge())));
    } else if (grip instanceof Grip.Ground) {
      double gap = Math.max(0.1e-3, Math.rint((low() - y) * 2e4) / 2e4);
      bench.set(bench.setting().get().withGap(gap));
    } else {
      board.look(view.panned(e.getX() - lastX, e.getY() - lastY));
    }
    lastX = e.getX();
    lastY = e.getY();
  }

  private void moveTo(BoardView view, Grip.Vertices held, MouseEvent e, double x, double y) {
    LipDrawing now = bench.drawing().get();
    Vertex lead = Parts.vertex(now, held.lead());
    double toX = x;
    double toY = y;
    if (held.all().size() == 1) {
      Snap.Point p = snap(view, e).of(now, held.all(), x, y);
      toX = p.x();
      toY = p.y();
    } else {
      double dx = (e.getX() - lastX) / view.scale();
      double dy = -(e.getY() - lastY) / view.scale();
      toX = lead.x() + dx;
      toY = lead.y() + dy;
    }
    double dx = toX - lead.x();
    double dy = toY - lead.y();
    bench.edit(d -> LipEdit.move(d, held.all(), dx, dy));
    board.label(lengths(view, held.lead()));
  }

  private Snap snap(BoardView view, MouseEvent e) {
    return e.isAltDown()
        ? new Snap(0, false, 0)
        : new Snap(gridStep, true, Math.min(0.49 * gridStep, 7 / view.scale()));
  }

  private void release() {
    Grip was = grip;
    grip = null;
    board.label(List.of());
    if (was != null && !(was instanceof Grip.Paper)) {
      bench.endDrag();
    }
  }

  private void scroll(ScrollEvent e) {
    BoardView view = board.view();
    if (view != null && e.getDeltaY() != 0) {
      board.look(view.zoomed(Math.pow(1.0022, e.getDeltaY()), e.getX(), e.getY()));
    }
    e.consume();
  }

  private void key(KeyEvent e) {
    BoardView view = board.view();
    if (view == null || e.isShortcutDown()) {
      return;
    }
    double step = gridStep * (e.isShiftDown() ? 10 : 1);
    boolean done = true;
    switch (e.getCode()) {
      case LEFT -> nudge(-step, 0);
      case RIGHT -> nudge(step, 0);
      case UP -> nudge(0, step);
      case DOWN -> nudge(0, -step);
      case DELETE, BACK_SPACE -> deleteChosen();
      case PERIOD -> choose(1);
      case COMMA -> choose(-1);
      case INSERT -> insertAfterChosen();
      case PLUS, ADD, EQUALS -> board.look(view.zoomed(1.25, view.width() / 2, view.height() / 2));
      case MINUS, SUBTRACT -> board.look(view.zoomed(0.8, view.width() / 2, view.height() / 2));
      case DIGIT0, NUMPAD0, HOME -> board.fit();
      case ESCAPE -> selection.clear();
      default -> done = false;
    }
    if (done) {
      e.consume();
    }
  }

  private void nudge(double dx, double dy) {
    Set<Corner> chosen = selection.get();
    if (chosen.isEmpty()) {
      BoardView view = board.view();
      if (view != null) {
        board.look(view.panned(-40 * Math.signum(dx), 40 * Math.signum(dy)));
      }
      return;
    }
    bench.edit(d -> LipEdit.move(d, chosen, dx, dy));
  }

  private void deleteChosen() {
    List<Corner> chosen = new ArrayList<>(selection.get());
    // from the back, so that earlier indices stay true
    chosen.sort((a, b) -> a.part() != b.part() ? b.part() - a.part() : b.index() - a.index());
    bench.edit(
        d -> {
          LipDrawing out = d;
          for (Corner corner : chosen) {
            out = LipEdit.delete(out, corner);
          }
          return out;
        });
    selection.clear();
  }

  private void choose(int by) {
    List<Corner> all = Parts.corners(bench.drawing().get());
    Corner now = selection.get().stream().findFirst().orElse(null);
    int at = now == null ? (by > 0 ? -1 : 0) : all.indexOf(now);
    selection.set(Set.of(all.get(Math.floorMod(at + by, all.size()))));
  }

  private void insertAfterChosen() {
    Corner edge = selection.get().stream().findFirst().orElse(null);
    if (edge != null) {
      LipDrawing d = bench.drawing().get();
      Vertex a = Parts.vertex(d, edge);
      Vertex b = Parts.vertex(d, Parts.next(d, edge));
      double x = 0.5 * (a.x() + b.x());
      double y = 0.5 * (a.y() + b.y());
      bench.edit(now -> LipEdit.insert(now, edge, x, y));
      selection.set(Set.of(new Corner(edge.part(), edge.index() + 1)));
    }
  }

  private double low() {
    return Placement.of(bench.drawing().get()).low();
  }

  private double ground() {
    return low() - bench.setting().get().gap();
  }

  private @Nullable Corner cornerAt(BoardView view, double px, double py) {
    Corner best = null;
    double nearest = NEAR;
    LipDrawing drawing = bench.drawing().get();
    for (Corner corner : Parts.corners(drawing)) {
      Vertex v = Parts.vertex(drawing, corner);
      double d = Math.hypot(view.px(v.x()) - px, view.py(v.y()) - py);
      if (d < nearest) {
        nearest = d;
        best = corner;
      }
    }
    return best;
  }

  private @Nullable Corner edgeAt(BoardView view, double px, double py) {
    Corner best = null;
    double nearest = 6 / view.scale();
    LipDrawing drawing = bench.drawing().get();
    double x = view.x(px);
    double y = view.y(py);
    for (Corner corner : Parts.corners(drawing)) {
      Vertex a = Parts.vertex(drawing, corner);
      Vertex b = Parts.vertex(drawing, Parts.next(drawing, corner));
      double d = distance(a, b, x, y);
      if (d < nearest) {
        nearest = d;
        best = corner;
      }
    }
    return best;
  }

  private static double distance(Vertex a, Vertex b, double x, double y) {
    if (a.bulge() != 0) {
      Arc arc = Arc.of(a, b);
      boolean beside = arc.passes(Math.atan2(y - arc.yc(), x - arc.xc()));
      return beside
          ? Math.abs(Math.hypot(x - arc.xc(), y - arc.yc()) - arc.radius())
          : Double.POSITIVE_INFINITY;
    }
    double[] foot = foot(a, b, x, y);
    return Math.hypot(x - foot[0], y - foot[1]);
  }

  private static double[] foot(Vertex a, Vertex b, double x, double y) {
    double dx = b.x() - a.x();
    double dy = b.y() - a.y();
    double square = dx * dx + dy * dy;
    double t = square == 0 ? 0 : ((x - a.x()) * dx + (y - a.y()) * dy) / square;
    double along = Math.max(0, Math.min(1, t));
    return new double[] {a.x() + along * dx, a.y() + along * dy};
  }

  private boolean nearMiddle(BoardView view, Corner edge, MouseEvent e) {
    double[] m = middle(edge);
    return Math.hypot(view.px(m[0]) - e.getX(), view.py(m[1]) - e.getY()) < NEAR;
  }

  private double[] middle(Corner edge) {
    LipDrawing d = bench.drawing().get();
    Vertex a = Parts.vertex(d, edge);
    Vertex b = Parts.vertex(d, Parts.next(d, edge));
    double half = 0.5 * a.bulge();
    return new double[] {
      0.5 * (a.x() + b.x()) + half * (b.y() - a.y()), 0.5 * (a.y() + b.y()) - half * (b.x() - a.x())
    };
  }

  private List<Label> lengths(BoardView view, Corner corner) {
    LipDrawing d = bench.drawing().get();
    List<Label> labels = new ArrayList<>();
    Placement lip = Placement.of(d);
    Vertex v = Parts.vertex(d, corner);
    for (Corner edge : List.of(corner, Parts.previous(d, corner))) {
      Vertex a = Parts.vertex(d, edge);
      Vertex b = Parts.vertex(d, Parts.next(d, edge));
      double[] m = middle(edge);
      labels.add(
          new Label(
              view.px(m[0]),
              view.py(m[1]) - 8,
              Digits.plain(1000 * Math.hypot(b.x() - a.x(), b.y() - a.y()), 4) + " mm"));
    }
    labels.add(
        new Label(
            view.px(v.x()),
            view.py(v.y()) - 16,
            Digits.plain(1000 * (v.x() - lip.left()), 4)
                + ", "
                + Digits.plain(1000 * (v.y() - lip.low()), 4)));
    return labels;
  }

  private Label arcLabel(BoardView view, Corner edge) {
    LipDrawing d = bench.drawing().get();
    Vertex a = Parts.vertex(d, edge);
    Vertex b = Parts.vertex(d, Parts.next(d, edge));
    double[] m = middle(edge);
    String text =
        a.bulge() == 0
            ? "straight"
            : "radius " + Digits.plain(1000 * Arc.of(a, b).radius(), 3) + " mm";
    return new Label(view.px(m[0]), view.py(m[1]) - 12, text);
  }
}
