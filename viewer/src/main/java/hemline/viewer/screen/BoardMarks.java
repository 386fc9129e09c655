package hemline.viewer.screen;

import hemline.shared.geometry.Vertex;
import hemline.shared.profile.LipDrawing;
import hemline.shared.profile.LipFindings;
import hemline.viewer.draw.BoardPainter;
import hemline.viewer.draw.BoardView;
import hemline.viewer.draw.FaultMarks;
import hemline.viewer.draw.Palette;
import hemline.viewer.edit.Corner;
import hemline.viewer.edit.LipShape;
import hemline.viewer.model.Selection;
import hemline.viewer.model.Sketch;
import hemline.viewer.model.Workbench;
import java.awt.geom.Rectangle2D;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** What lies over the lip on the board: what is wrong, handles, a sketch, dimensions. */
final class BoardMarks {
  private final Workbench bench;
  private final Selection selection;
  private final Sketch sketch;
  private final Patch patch = new Patch();

  BoardMarks(Workbench bench, Selection selection, Sketch sketch) {
    this.bench = bench;
    this.selection = selection;
    this.sketch = sketch;
  }

  Patch patch() {
    return patch;
  }

  /**
   * Shows them.
   *
   * @param texts dimensions of what is dragged
   * @param pointer place where the next point of a sketch would come; null for nowhere
   */
  void show(
      BoardView at, Palette ink, List<BoardPainter.Label> texts, double @Nullable [] pointer) {
    boolean sketching = sketch.whole();
    LipDrawing drawing = bench.drawing().get();
    LipFindings found = bench.findings().get();
    Set<Corner> chosen = selection.get();
    List<Vertex> points = sketch.active().get() ? sketch.points().get() : List.of();
    double[] next = sketch.active().get() ? pointer : null;
    boolean anywhere =
        sketch.active().get()
            || !found.problems().isEmpty()
            || !found.thinWalls().isEmpty()
            || !found.narrowSlots().isEmpty();
    patch.show(
        at,
        ink,
        anywhere
            ? new Rectangle2D.Double(0, 0, at.width(), at.height())
            : marksArea(at, drawing, texts),
        Arrays.asList(drawing, found, chosen, sketching, points, next, texts),
        p -> {
          if (!sketching) {
            FaultMarks.paint(p.sheet(), at, ink, drawing, found);
            p.handles(drawing, chosen);
          }
          p.sketch(points, next);
          p.dimensions(texts);
        });
  }

  private static Rectangle2D marksArea(
      BoardView at, LipDrawing drawing, List<BoardPainter.Label> texts) {
    double[] lip = LipShape.box(drawing);
    Rectangle2D area = box(at, lip[0], lip[1], lip[2], lip[3]);
    for (BoardPainter.Label label : texts) {
      area.add(new Rectangle2D.Double(label.x() - 90, label.y() - 16, 180, 24));
    }
    return area;
  }

  /** A part of the drawing, m, with room for lines around it, pixels. */
  static Rectangle2D box(BoardView at, double left, double right, double low, double high) {
    double rim = 8;
    return new Rectangle2D.Double(
        at.px(left) - rim,
        at.py(high) - rim,
        (right - left) * at.scale() + 2 * rim,
        (high - low) * at.scale() + 2 * rim);
  }
}
