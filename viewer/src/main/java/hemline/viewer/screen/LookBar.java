package hemline.viewer.screen;

import hemline.viewer.draw.BoardLook;
import hemline.viewer.draw.BoardLook.ColourMap;
import hemline.viewer.model.Workbench;
import java.util.EnumMap;
import java.util.Map;
import java.util.function.Predicate;
import java.util.function.UnaryOperator;
import javafx.geometry.Pos;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.ButtonBase;
import javafx.scene.control.Label;
import javafx.scene.control.ToggleButton;
import javafx.scene.control.ToggleGroup;
import javafx.scene.control.Tooltip;
import javafx.scene.input.KeyCode;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Region;

/** Switches for what is seen of the flow, in the top line of the window. */
final class LookBar {
  private final SectionBoard board;
  private final HBox bar = new HBox(4);
  private final Map<KeyCode, ButtonBase> keys = new EnumMap<>(KeyCode.class);

  LookBar(SectionBoard board, Workbench bench) {
    this.board = board;
    bar.setAlignment(Pos.CENTER_LEFT);
    bar.getStyleClass().add("look-bar");
    ToggleGroup maps = new ToggleGroup();
    map(maps, "pressure", KeyCode.P, "pressure of the air over ambient", ColourMap.PRESSURE);
    map(maps, "speed", KeyCode.S, "speed of the air", ColourMap.SPEED);
    map(maps, "plain", KeyCode.O, "no colours", ColourMap.NONE);
    gap();
    flag(
        "lines",
        KeyCode.L,
        "streamlines of the leak and of trapped vortices",
        BoardLook::streamlines,
        (l, on) -> l.withStreamlines(on));
    flag(
        "fine lines",
        KeyCode.F,
        "twenty parts of the leak instead of ten",
        l -> l.tubes() > 10,
        (l, on) -> l.withTubes(on ? 20 : 10));
    flag(
        "tracers",
        KeyCode.T,
        "particles that drift with the air, slowed down",
        BoardLook::tracers,
        (l, on) -> l.withTracers(on));
    flag("mesh", KeyCode.M, "lines of the finest grid", BoardLook::mesh, (l, on) -> l.withMesh(on));
    flag(
        "sizes",
        KeyCode.Z,
        "lengths of the lip's edges and radii of its arcs",
        BoardLook::sizes,
        (l, on) -> l.withSizes(on));
    gap();
    Label compare = new Label("Compare:");
    compare.getStyleClass().add("look-name");
    bar.getChildren().add(compare);
    button(
        "set as B", KeyCode.K, "set this lip aside as B and show it beside the next", bench::keep);
    Button more =
        button("as C", KeyCode.C, "set this lip aside too, beside the next", bench::keepToo);
    Button swap = button("swap", KeyCode.X, "exchange the lip with B", bench::swapKept);
    Button drop = button("clear", KeyCode.D, "forget all that is set aside", bench::dropKept);
    bench
        .beside()
        .subscribe(
            lips -> {
              swap.setDisable(lips.isEmpty());
              drop.setDisable(lips.isEmpty());
              more.setDisable(lips.isEmpty() || lips.size() == Workbench.MOST_BESIDE);
              more.setText(lips.size() < 2 ? "as C" : "as D");
            });
  }

  Node content() {
    return bar;
  }

  private void gap() {
    Region space = new Region();
    space.setPrefWidth(10);
    bar.getChildren().add(space);
  }

  /** Does what the switch of a key does; false where the key has none. */
  boolean press(KeyCode key) {
    ButtonBase button = keys.get(key);
    if (button == null) {
      return false;
    }
    if (!button.isDisabled()) {
      button.fire();
    }
    return true;
  }

  /** Puts a switch in the bar; its key stands in its hover text. */
  private void add(ButtonBase button, KeyCode key, String meaning) {
    button.setTooltip(new Tooltip(meaning + " (key " + key.getName() + ")"));
    keys.put(key, button);
    bar.getChildren().add(button);
  }

  private void map(ToggleGroup group, String name, KeyCode key, String meaning, ColourMap map) {
    ToggleButton button = new ToggleButton(name);
    button.setId("look-" + name);
    button.setToggleGroup(group);
    board.look().subscribe(l -> button.setSelected(l.map() == map));
    button.setOnAction(
        e -> {
          button.setSelected(true);
          set(l -> l.withMap(map));
        });
    add(button, key, meaning);
  }

  /** Answers a look with a flag set. */
  private interface Flag {
    BoardLook of(BoardLook look, boolean on);
  }

  private void flag(String name, KeyCode key, String meaning, Predicate<BoardLook> on, Flag flag) {
    ToggleButton button = new ToggleButton(name);
    button.setId("look-" + name.replace(' ', '-'));
    board.look().subscribe(l -> button.setSelected(on.test(l)));
    button.setOnAction(e -> set(l -> flag.of(l, button.isSelected())));
    add(button, key, meaning);
  }

  private Button button(String name, KeyCode key, String meaning, Runnable action) {
    Button button = new Button(name);
    button.setId(name.replace(' ', '-'));
    button.setOnAction(e -> action.run());
    add(button, key, meaning);
    return button;
  }

  private void set(UnaryOperator<BoardLook> change) {
    board.look().set(change.apply(board.look().get()));
    board.requestFocus();
  }
}
