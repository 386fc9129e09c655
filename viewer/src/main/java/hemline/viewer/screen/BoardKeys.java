package hemline.viewer.screen;

import hemline.shared.section.SectionLimits;
import hemline.viewer.draw.BoardView;
import hemline.viewer.format.LengthUnit;
import hemline.viewer.model.Selection;
import hemline.viewer.model.Workbench;
import javafx.scene.input.KeyEvent;

/** The keyboard on the board. */
final class BoardKeys {
  private final SectionBoard board;
  private final Selection selection;
  private final BoardActions actions;
  private final SketchMouse sketch;
  private final Workbench bench;
  private final LookBar look;
  private final Runnable drawNew;

  BoardKeys(
      SectionBoard board,
      Workbench bench,
      Selection selection,
      BoardActions actions,
      SketchMouse sketch,
      LookBar look,
      Runnable drawNew) {
    this.drawNew = drawNew;
    this.board = board;
    this.bench = bench;
    this.look = look;
    this.selection = selection;
    this.actions = actions;
    this.sketch = sketch;
    board.addEventHandler(KeyEvent.KEY_PRESSED, this::key);
  }

  private void key(KeyEvent e) {
    BoardView view = board.view();
    if (view == null || e.isShortcutDown()) {
      return;
    }
    boolean done = sketch.active() ? sketchKey(e) : shapeKey(e);
    if (done || viewKey(view, e) || (!sketch.active() && look.press(e.getCode()))) {
      e.consume();
    }
  }

  private boolean sketchKey(KeyEvent e) {
    switch (e.getCode()) {
      case ENTER -> sketch.close();
      case ESCAPE -> sketch.cancel();
      case BACK_SPACE, DELETE -> sketch.back();
      default -> {
        return false;
      }
    }
    return true;
  }

  private boolean shapeKey(KeyEvent e) {
    double grid = sketch.step().get() > 0 ? sketch.step().get() : 1e-5;
    double step = grid * (e.isShiftDown() ? 10 : 1);
    boolean chosen = !selection.get().isEmpty();
    switch (e.getCode()) {
      case PERIOD -> actions.choose(1);
      case COMMA -> actions.choose(-1);
      case N -> drawNew.run();
      case A -> sketch.beginPart();
      case PAGE_UP -> gap(1);
      case PAGE_DOWN -> gap(-1);
      case ESCAPE -> selection.clear();
      default -> {
        if (!chosen) {
          return false;
        }
        switch (e.getCode()) {
          case LEFT -> actions.nudge(-step, 0);
          case RIGHT -> actions.nudge(step, 0);
          case UP -> actions.nudge(0, step);
          case DOWN -> actions.nudge(0, -step);
          case DELETE, BACK_SPACE -> actions.delete();
          case INSERT, I -> actions.insert();
          case E -> actions.chooseEdgeAfter();
          case B -> actions.bend();
          default -> {
            return false;
          }
        }
      }
    }
    return true;
  }

  /** Lifts or lowers the lip by steps of a drawing grid. */
  private void gap(int steps) {
    double by = steps * LengthUnit.now().gridStep();
    double next = Math.rint((bench.setting().get().gap() + by) * 1e9) / 1e9;
    if (SectionLimits.gap(next).isEmpty()) {
      bench.set(bench.setting().get().withGap(next));
    }
  }

  private boolean viewKey(BoardView view, KeyEvent e) {
    double cx = 0.5 * view.width();
    double cy = 0.5 * view.height();
    switch (e.getCode()) {
      case PLUS, ADD, EQUALS -> board.look(view.zoomed(1.25, cx, cy));
      case MINUS, SUBTRACT -> board.look(view.zoomed(0.8, cx, cy));
      case DIGIT0, NUMPAD0, HOME -> board.fit();
      case LEFT -> board.pan(40, 0);
      case RIGHT -> board.pan(-40, 0);
      case UP -> board.pan(0, 40);
      case DOWN -> board.pan(0, -40);
      default -> {
        return false;
      }
    }
    return true;
  }
}
