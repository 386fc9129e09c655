package hemline.viewer.screen;

import java.util.function.Function;
import javafx.event.ActionEvent;
import javafx.event.EventHandler;
import javafx.geometry.Pos;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Pane;
import javafx.scene.layout.Region;
import javafx.util.StringConverter;
import org.jspecify.annotations.Nullable;

/** Controls as all screens have them. */
final class Controls {
  private Controls() {}

  /** A paragraph that keeps its height. */
  static Label text(String words, String style) {
    Label label = new Label(words);
    label.setWrapText(true);
    label.setMinHeight(Region.USE_PREF_SIZE);
    label.getStyleClass().add(style);
    return label;
  }

  /** A paragraph that takes no room while it is empty. */
  static Label message(String id, String style) {
    Label label = text("", style);
    label.setId(id);
    label.managedProperty().bind(label.textProperty().isNotEmpty());
    return label;
  }

  /** A button that keeps its width. */
  static Button button(String id, String words, EventHandler<ActionEvent> action) {
    Button button = new Button(words);
    button.setId(id);
    button.setMinWidth(Region.USE_PREF_SIZE);
    button.setOnAction(action);
    return button;
  }

  /** Nodes beside each other. */
  static HBox row(Node... nodes) {
    return row(8, nodes);
  }

  /** The same with another distance between them. */
  static HBox row(double between, Node... nodes) {
    HBox row = new HBox(between, nodes);
    row.setAlignment(Pos.CENTER_LEFT);
    return row;
  }

  /** Adds a node to a pane and answers with it. */
  static <T extends Node> T add(Pane pane, T node) {
    pane.getChildren().add(node);
    return node;
  }

  /** How a box of choices names them. */
  static <T> StringConverter<T> names(Function<T, String> name) {
    return new StringConverter<>() {
      @Override
      public String toString(@Nullable T value) {
        return value == null ? "" : name.apply(value);
      }

      @Override
      public @Nullable T fromString(String text) {
        return null;
      }
    };
  }
}
