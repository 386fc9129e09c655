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
import hemline.viewer.format.LengthUnit;
import hemline.viewer.model.Placement;
import hemline.viewer.model.Selection;
import hemline.viewer.model.Workbench;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import javafx.application.Platform;
import javafx.scene.Cursor;
import javafx.scene.input.MouseButton;
import javafx.scene.input.MouseEvent;
import javafx.scene.input.ScrollEvent;
import org.jspecify.annotations.Nullable;

/** The mouse on the board: drags of corners, edges, the ground and the paper; the wheel. */
final class BoardMouse {
  private static final double SMALLEST_GAP = 0.1e-3;
  private final SectionBoard board;
  private final Workbench bench;
  private final Selection selection;
  private final BoardActions actions;
  private final SketchMouse sketch;
  private final BoardMenu menu;
  private @Nullable Grip grip;
  private @Nullable MouseEvent move;
  private @Nullable Corner pressed;
  private double lastX;
  private double lastY;
  private double startX;
  private double startY;

  /** What the mouse holds. */
  private sealed interface Grip {
    /** Vertices; the one under the mouse leads. */
    record Vertices(Corner lead, Set<Corner> all, double offX, double offY) implements Grip {}

    /** Middle of an edge. */
    record Bow(Corner edge) implements Grip {}

    /** The ground line. */
    record Ground() implements Grip {}

    /** The paper. */
    record Paper() implements Grip {}
  }

  BoardMouse(
      SectionBoard board,
      Workbench bench,
      Selection selection,
      BoardActions actions,
      SketchMouse sketch) {
    this.board = board;
    this.bench = bench;
    this.selection = selection;
    this.actions = actions;
    this.sketch = sketch;
    this.menu = new BoardMenu(board, actions, sketch::beginPart);
    board.addEventHandler(MouseEvent.MOUSE_PRESSED, this::press);
    board.addEventHandler(MouseEvent.MOUSE_DRAGGED, this::drag);
    board.addEventHandler(MouseEvent.MOUSE_RELEASED, this::release);
    board.addEventHandler(MouseEvent.MOUSE_MOVED, this::hover);
    board.addEventHandler(ScrollEvent.SCROLL, this::scroll);
  }

  private void press(MouseEvent e) {
    board.requestFocus();
    menu.hide();
    BoardView view = board.view();
    if (view == null) {
      return;
    }
    lastX = startX = e.getX();
    lastY = startY = e.getY();
    if (e.getButton() != MouseButton.PRIMARY) {
      grip = new Grip.Paper();
    } else if (sketch.active()) {
      sketch.press(view, e);
    } else {
      hold(view, e);
    }
  }

  private void hold(BoardView view, MouseEvent e) {
    LipDrawing drawing = bench.drawing().get();
    Corner corner = BoardFind.corner(drawing, view, e.getX(), e.getY());
    Corner edge = corner == null ? BoardFind.edge(drawing, view, e.getX(), e.getY()) : null;
    if (corner != null) {
      if (e.isShiftDown()) {
        selection.toggle(corner);
      } else if (!selection.get().contains(corner)) {
        selection.set(Set.of(corner));
      }
      pressed = corner;
      holdVertices(view, corner, e);
    } else if (edge != null && e.getClickCount() == 2) {
      actions.insert(edge, view.x(e.getX()), view.y(e.getY()));
    } else if (edge != null) {
      boolean bow = BoardFind.onMiddle(drawing, view, edge, e.getX(), e.getY());
      actions.chooseEdge(edge);
      if (bow) {
        grip = new Grip.Bow(edge);
        bench.beginDrag();
      } else {
        holdVertices(view, edge, e);
      }
    } else if (Math.abs(view.py(board.ground()) - e.getY()) < 6) {
      grip = new Grip.Ground();
      bench.beginDrag();
    } else {
      selection.clear();
      grip = new Grip.Paper();
    }
  }

  private void holdVertices(BoardView view, Corner lead, MouseEvent e) {
    Vertex v = Parts.vertex(bench.drawing().get(), lead);
    grip =
        new Grip.Vertices(
            lead, selection.get(), v.x() - view.x(e.getX()), v.y() - view.y(e.getY()));
    bench.beginDrag();
  }

  /** A mouse may tell of more moves than there is time to follow: the newest counts. */
  private void drag(MouseEvent e) {
    if (move == null) {
      Platform.runLater(this::followNewest);
    }
    move = e;
  }

  private void followNewest() {
    MouseEvent newest = move;
    move = null;
    if (newest != null) {
      follow(newest);
    }
  }

  private void follow(MouseEvent e) {
    BoardView view = board.view();
    if (view == null || grip == null) {
      return;
    }
    double x = view.x(e.getX());
    double y = view.y(e.getY());
    if (grip instanceof Grip.Vertices held) {
      if (Math.hypot(e.getX() - startX, e.getY() - startY) > 2) {
        moveTo(view, held, e, x + held.offX(), y + held.offY());
      }
    } else if (grip instanceof Grip.Bow bow) {
      if (Math.hypot(e.getX() - startX, e.getY() - startY) > 2) {
        bench.edit(d -> LipEdit.bendThrough(d, bow.edge(), x, y));
        board.label(List.of(arcLabel(view, bow.edge())));
      }
    } else if (grip instanceof Grip.Ground) {
      double low = Placement.of(bench.drawing().get()).low();
      double gap = Math.max(SMALLEST_GAP, near(low - y));
      bench.set(bench.setting().get().withGap(gap));
    } else {
      board.pan(e.getX() - lastX, e.getY() - lastY);
    }
    lastX = e.getX();
    lastY = e.getY();
  }

  /** A gap on half the steps of a drawing grid, m. */
  private static double near(double gap) {
    double step = LengthUnit.now().gridStep() / 2;
    return Math.rint(step * Math.rint(gap / step) * 1e10) / 1e10;
  }

  private void moveTo(BoardView view, Grip.Vertices held, MouseEvent e, double x, double y) {
    LipDrawing now = bench.drawing().get();
    Vertex lead = Parts.vertex(now, held.lead());
    Snap.Point to = sketch.snap(view, e).of(now, held.all(), x, y);
    double dx = to.x() - lead.x();
    double dy = to.y() - lead.y();
    // one vertex is put, so that it lies on the grid to the last bit
    bench.edit(
        d ->
            held.all().size() == 1
                ? LipEdit.place(d, held.lead(), to.x(), to.y())
                : LipEdit.move(d, held.all(), dx, dy));
    board.label(lengths(view, held.lead()));
  }

  private void release(MouseEvent e) {
    followNewest();
    Grip was = grip;
    grip = null;
    Corner clicked = pressed;
    pressed = null;
    board.label(List.of());
    if (was == null) {
      return;
    }
    boolean still = Math.hypot(e.getX() - startX, e.getY() - startY) <= 2;
    if (!(was instanceof Grip.Paper)) {
      bench.endDrag();
      if (still && clicked != null && !e.isShiftDown()) {
        selection.set(Set.of(clicked));
      }
    } else if (e.getButton() == MouseButton.SECONDARY
        && !sketch.active()
        && Math.hypot(e.getX() - startX, e.getY() - startY) < 4) {
      openMenu(e);
    }
  }

  private void openMenu(MouseEvent e) {
    BoardView view = board.view();
    if (view == null) {
      return;
    }
    LipDrawing drawing = bench.drawing().get();
    Corner corner = BoardFind.corner(drawing, view, e.getX(), e.getY());
    Corner edge = corner == null ? BoardFind.edge(drawing, view, e.getX(), e.getY()) : null;
    if (corner != null) {
      if (!selection.get().contains(corner)) {
        selection.set(Set.of(corner));
      }
      menu.corner(corner, e.getScreenX(), e.getScreenY());
    } else if (edge != null) {
      actions.chooseEdge(edge);
      menu.edge(edge, view.x(e.getX()), view.y(e.getY()), e.getScreenX(), e.getScreenY());
    } else {
      menu.paper(e.getScreenX(), e.getScreenY());
    }
  }

  private void hover(MouseEvent e) {
    BoardView view = board.view();
    if (view == null) {
      return;
    }
    if (sketch.active()) {
      sketch.hover(view, e);
      board.setCursor(Cursor.CROSSHAIR);
      return;
    }
    LipDrawing drawing = bench.drawing().get();
    Corner corner = BoardFind.corner(drawing, view, e.getX(), e.getY());
    Corner edge = corner == null ? BoardFind.edge(drawing, view, e.getX(), e.getY()) : null;
    boolean ground = Math.abs(view.py(board.ground()) - e.getY()) < 6;
    board.setCursor(
        corner != null || edge != null ? Cursor.HAND : ground ? Cursor.V_RESIZE : Cursor.DEFAULT);
  }

  private void scroll(ScrollEvent e) {
    BoardView view = board.view();
    if (view != null && e.getDeltaY() != 0) {
      board.look(view.zoomed(Math.pow(1.0022, e.getDeltaY()), e.getX(), e.getY()));
    }
    e.consume();
  }

  private List<Label> lengths(BoardView view, Corner corner) {
    LipDrawing d = bench.drawing().get();
    List<Label> labels = new ArrayList<>();
    Vertex v = Parts.vertex(d, corner);
    for (Corner edge : List.of(corner, Parts.previous(d, corner))) {
      Vertex a = Parts.vertex(d, edge);
      Vertex b = Parts.vertex(d, Parts.next(d, edge));
      double[] m = BoardFind.middle(d, edge);
      double length = Math.hypot(b.x() - a.x(), b.y() - a.y());
      boolean upright = Math.abs(b.y() - a.y()) > Math.abs(b.x() - a.x());
      double x = view.px(m[0]) + (upright ? 34 : 0);
      double y = view.py(m[1]) + (upright ? 4 : -8);
      // two short edges: one length above the other
      boolean over =
          labels.stream().anyMatch(l -> Math.abs(l.x() - x) < 70 && Math.abs(l.y() - y) < 15);
      labels.add(new Label(x, over ? y - 16 : y, LengthUnit.text(length, 4)));
    }
    labels.add(
        new Label(
            view.px(v.x()) + 46,
            view.py(v.y()) + 22,
            LengthUnit.bare(v.x(), 4) + " | " + LengthUnit.bare(v.y(), 4)));
    return labels;
  }

  private Label arcLabel(BoardView view, Corner edge) {
    LipDrawing d = bench.drawing().get();
    Vertex a = Parts.vertex(d, edge);
    Vertex b = Parts.vertex(d, Parts.next(d, edge));
    double[] m = BoardFind.middle(d, edge);
    String text =
        a.bulge() == 0 ? "straight" : "radius " + LengthUnit.text(Arc.of(a, b).radius(), 3);
    return new Label(view.px(m[0]), view.py(m[1]) - 12, text);
  }
}
