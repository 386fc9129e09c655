package hemline.viewer.screen;

import hemline.shared.geometry.Rounding;
import hemline.viewer.edit.Corner;
import java.util.Locale;
import javafx.scene.control.ContextMenu;
import javafx.scene.control.MenuItem;

/** What the right mouse button offers on the board. */
final class BoardMenu {
  private static final double SMALL = 0.5e-3;
  private static final double LARGE = 1e-3;
  private final SectionBoard board;
  private final BoardActions actions;
  private final Runnable drawPart;
  private final ContextMenu menu = new ContextMenu();

  BoardMenu(SectionBoard board, BoardActions actions, Runnable drawPart) {
    this.drawPart = drawPart;
    this.board = board;
    this.actions = actions;
  }

  void hide() {
    menu.hide();
  }

  void corner(Corner corner, double x, double y) {
    menu.getItems()
        .setAll(
            item("Round by 0.5 mm", () -> actions.dress(Rounding.Kind.ROUND, SMALL)),
            item("Round by 1 mm", () -> actions.dress(Rounding.Kind.ROUND, LARGE)),
            item("Break by 0.5 mm", () -> actions.dress(Rounding.Kind.CHAMFER, SMALL)),
            item("Leave sharp", () -> actions.dress(Rounding.Kind.ROUND, 0)),
            item("Delete corner", actions::delete));
    part(corner);
    menu.show(board, x, y);
  }

  void edge(Corner edge, double atX, double atY, double x, double y) {
    menu.getItems()
        .setAll(
            item("Add a corner here", () -> actions.insert(edge, atX, atY)),
            item("Bend or straighten", actions::bend));
    if (edge.part() == 0) {
      menu.getItems().add(item("Fix to the skirt here", actions::mount));
    }
    menu.getItems().add(item("Delete both corners", actions::delete));
    part(edge);
    menu.show(board, x, y);
  }

  void paper(double x, double y) {
    menu.getItems().setAll(item("Draw a detached part", drawPart), item("Whole lip", board::fit));
    menu.show(board, x, y);
  }

  private void part(Corner of) {
    if (of.part() > 0) {
      menu.getItems().add(item("Delete this part", actions::deletePart));
    }
  }

  private static MenuItem item(String text, Runnable action) {
    MenuItem item = new MenuItem(text);
    item.setId("board-" + text.toLowerCase(Locale.ROOT).replace(' ', '-').replace('.', '-'));
    item.setOnAction(e -> action.run());
    return item;
  }
}
