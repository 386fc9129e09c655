package hemline.viewer.screen;

import java.util.LinkedHashMap;
import java.util.Map;
import javafx.geometry.Pos;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;

/** A line below the menus that tells something or asks what to do; it never blocks the work. */
public final class NoticeStrip extends HBox {
  private final Label words = new Label();

  public NoticeStrip() {
    setId("strip");
    getStyleClass().add("strip");
    setAlignment(Pos.CENTER_LEFT);
    setSpacing(10);
    words.setId("strip-text");
    words.setWrapText(true);
    words.setMinWidth(120);
    HBox.setHgrow(words, Priority.ALWAYS);
    words.setMaxWidth(Double.MAX_VALUE);
    hide();
  }

  /** Tells something until the next one or a click on Close. */
  public void tell(String sentence) {
    ask(sentence, Map.of());
  }

  /**
   * Asks what to do; any answer closes the strip.
   *
   * @param answers words on the buttons, in order, and what they do
   */
  public void ask(String question, Map<String, Runnable> answers) {
    words.setText(question);
    getChildren().setAll(words);
    Map<String, Runnable> all = new LinkedHashMap<>(answers);
    if (answers.isEmpty()) {
      all.put("Close", () -> {});
    }
    all.forEach(
        (name, action) -> {
          Button button = new Button(name);
          button.setId("strip-" + name.toLowerCase(java.util.Locale.ROOT).replace(' ', '-'));
          button.setMinWidth(Region.USE_PREF_SIZE);
          button.setOnAction(
              e -> {
                hide();
                action.run();
              });
          getChildren().add(button);
        });
    setVisible(true);
    setManaged(true);
  }

  public void hide() {
    setVisible(false);
    setManaged(false);
  }
}
