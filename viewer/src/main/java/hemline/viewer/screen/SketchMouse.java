package hemline.viewer.screen;

import hemline.shared.geometry.DrawnOutline;
import hemline.shared.geometry.Vertex;
import hemline.shared.profile.LipDrawing;
import hemline.viewer.draw.BoardPainter.Label;
import hemline.viewer.draw.BoardView;
import hemline.viewer.edit.LipEdit;
import hemline.viewer.edit.Snap;
import hemline.viewer.format.LengthUnit;
import hemline.viewer.model.Sketch;
import hemline.viewer.model.Workbench;
import java.util.List;
import java.util.Set;
import javafx.beans.property.DoubleProperty;
import javafx.beans.property.SimpleDoubleProperty;
import javafx.scene.input.MouseEvent;

/** Drawing a new outline point by point, and the snapping that all drawing shares. */
final class SketchMouse {
  private static final double CLOSE = 10;
  private static final double PULL = 7;
  private final SectionBoard board;
  private final Workbench bench;
  private final Sketch sketch;
  private final DoubleProperty step = new SimpleDoubleProperty(LengthUnit.now().gridStep());

  SketchMouse(SectionBoard board, Workbench bench, Sketch sketch) {
    this.board = board;
    this.bench = bench;
    this.sketch = sketch;
    ShownUnit.follow(board, () -> step.set(LengthUnit.now().gridStep()));
    sketch
        .active()
        .subscribe(
            on -> {
              board.label(List.of());
              board.point(null);
            });
  }

  /** Step of the drawing grid, m; 0 for none. */
  DoubleProperty step() {
    return step;
  }

  boolean active() {
    return sketch.active().get();
  }

  /** Clears the board for a new outline. */
  void begin() {
    bench.stop();
    sketch.begin();
    board.fit();
    board.requestFocus();
  }

  /** Begins a detached part beside the lip on the bench. */
  void beginPart() {
    sketch.beginPart();
    board.requestFocus();
  }

  /** Puts the finished outline on the bench. */
  void close() {
    if (sketch.part()) {
      DrawnOutline part = sketch.closePart();
      if (part != null) {
        bench.edit(d -> LipEdit.addPart(d, part));
      }
      return;
    }
    LipDrawing lip = sketch.close("my lip");
    if (lip != null) {
      bench.draw(lip);
      board.fit();
    }
  }

  void cancel() {
    boolean part = sketch.part();
    sketch.cancel();
    if (!part) {
      board.fit();
    }
  }

  void back() {
    sketch.back();
  }

  /** Snapping at a zoom; the Alt key switches it off. */
  Snap snap(BoardView view, MouseEvent e) {
    if (e.isAltDown()) {
      return new Snap(0, false, 0);
    }
    double reach = PULL / view.scale();
    return new Snap(step.get(), true, step.get() > 0 ? Math.min(0.49 * step.get(), reach) : reach);
  }

  void press(BoardView view, MouseEvent e) {
    List<Vertex> points = sketch.points().get();
    if (sketch.closable()) {
      Vertex first = points.get(0);
      boolean home =
          Math.hypot(view.px(first.x()) - e.getX(), view.py(first.y()) - e.getY()) < CLOSE;
      if (home || e.getClickCount() == 2) {
        close();
        return;
      }
    }
    Snap.Point at = at(view, e);
    sketch.add(at.x(), at.y());
    hover(view, e);
  }

  void hover(BoardView view, MouseEvent e) {
    Snap.Point at = at(view, e);
    board.point(new double[] {at.x(), at.y()});
    List<Vertex> points = sketch.points().get();
    String text = LengthUnit.bare(at.x(), 4) + " | " + LengthUnit.bare(at.y(), 4);
    if (!points.isEmpty()) {
      Vertex last = points.get(points.size() - 1);
      double length = Math.hypot(at.x() - last.x(), at.y() - last.y());
      text += "   " + LengthUnit.text(length, 4) + " long";
    }
    board.label(List.of(new Label(e.getX() + 20, e.getY() - 14, text)));
  }

  private Snap.Point at(BoardView view, MouseEvent e) {
    List<Vertex> points = sketch.points().get();
    DrawnOutline drawn = new DrawnOutline(points);
    LipDrawing sheet =
        sketch.part()
            ? LipEdit.addPart(bench.drawing().get(), drawn)
            : new LipDrawing("", "", "", false, "", drawn, 0, List.of());
    return snap(view, e).of(sheet, Set.of(), view.x(e.getX()), view.y(e.getY()));
  }
}
