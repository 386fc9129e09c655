package hemline.viewer.app;

import hemline.viewer.edit.LipShape;
import hemline.viewer.model.Workbench;
import hemline.viewer.screen.BenchScreen;
import hemline.viewer.screen.Screen;
import hemline.viewer.screen.StarterPanel;
import hemline.viewer.screen.Thumbnail;
import java.util.List;
import javafx.beans.binding.Bindings;
import javafx.beans.binding.BooleanBinding;
import javafx.beans.value.ObservableObjectValue;
import javafx.scene.control.Menu;
import javafx.scene.control.MenuItem;
import javafx.scene.control.SeparatorMenuItem;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyCodeCombination;
import javafx.scene.input.KeyCombination;
import org.jspecify.annotations.Nullable;

/** Menus of the bench: lips to begin with, changes of the drawing, solving. */
final class BenchMenus {
  private final Workbench bench;
  private final BenchScreen screen;
  private final Examples examples;
  private final ObservableObjectValue<Screen> front;

  /**
   * Menus.
   *
   * @param front the page in front, whose changes are undone
   */
  BenchMenus(
      Workbench bench, BenchScreen screen, Examples examples, ObservableObjectValue<Screen> front) {
    this.bench = bench;
    this.front = front;
    this.screen = screen;
    this.examples = examples;
  }

  List<Menu> menus() {
    return List.of(lips(), edit(), solve());
  }

  private Menu lips() {
    Menu lips = new Menu("_Lips");
    lips.setId("menu-lips");
    lips.getItems()
        .addAll(
            item("Draw a new lip", shortcut(KeyCode.N), screen::drawNew),
            item("Flat lip with sliders", null, () -> screen.begin(StarterPanel::flat)),
            item("Teeth with sliders", null, () -> screen.begin(StarterPanel::teeth)),
            item("Pockets with sliders", null, () -> screen.begin(StarterPanel::pockets)),
            new SeparatorMenuItem());
    int fixed = lips.getItems().size();
    lips.setOnShowing(
        e -> {
          if (lips.getItems().size() == fixed) {
            for (Examples.Example example : examples.all()) {
              MenuItem lip = item(example.name(), null, () -> screen.open(example.drawing()));
              lip.setMnemonicParsing(false);
              lip.setGraphic(Thumbnail.of(example.drawing()));
              lips.getItems().add(lip);
            }
          }
        });
    return lips;
  }

  private Menu edit() {
    MenuItem undo = item("Undo", shortcut(KeyCode.Z), () -> front.get().undo());
    BooleanBinding here = Bindings.createBooleanBinding(() -> front.get() == screen, front);
    undo.disableProperty().bind(here.and(bench.canUndo().not()).and(screen.sketching().not()));
    MenuItem redo = item("Redo", shortcut(KeyCode.Y), () -> front.get().redo());
    redo.disableProperty().bind(here.and(bench.canRedo().not()));
    return new Menu(
        "_Edit",
        null,
        undo,
        redo,
        new SeparatorMenuItem(),
        item("Draw a detached part", null, screen::drawPart),
        item("Choose all corners", shortcut(KeyCode.A), () -> screen.actions().chooseAll()),
        item("Add a corner", null, () -> screen.actions().insert()),
        item("Bend or straighten the edge", null, () -> screen.actions().bend()),
        item("Delete what is chosen", null, () -> screen.actions().delete()),
        new SeparatorMenuItem(),
        item("Mirror", shortcut(KeyCode.M), () -> bench.edit(LipShape::mirror)),
        item(
            "Copy as variant",
            shortcut(KeyCode.J),
            () -> bench.edit(d -> LipShape.variant(d, examples.names()))));
  }

  private Menu solve() {
    return new Menu(
        "_Solve",
        null,
        item("Run", new KeyCodeCombination(KeyCode.F5), screen::run),
        item("Stop", null, bench::stop));
  }

  static KeyCombination shortcut(KeyCode code) {
    return new KeyCodeCombination(code, KeyCombination.SHORTCUT_DOWN);
  }

  static MenuItem item(String text, @Nullable KeyCombination key, Runnable action) {
    MenuItem item = new MenuItem(text);
    if (key != null) {
      item.setAccelerator(key);
    }
    item.setOnAction(e -> action.run());
    return item;
  }
}
