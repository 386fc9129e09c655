package hemline.viewer.screen;

import hemline.shared.profile.LipProfile;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import javafx.geometry.Pos;
import javafx.scene.control.Button;
import javafx.scene.control.CheckBox;
import javafx.scene.control.Label;
import javafx.scene.control.ScrollPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;

/** Lips to choose from. */
final class LipChoice {
  private final VBox checks = new VBox(4);
  private final String id;
  private final int usual;
  private List<LipProfile> known = List.of();

  /**
   * An empty choice.
   *
   * @param id begins the names of its parts
   * @param usual how many are chosen when they are offered first
   */
  LipChoice(String id, int usual) {
    this.id = id;
    this.usual = usual;
  }

  /** Offers other lips; those chosen that are still there stay chosen. */
  void offer(List<LipProfile> lips) {
    Map<String, Boolean> before = new HashMap<>();
    boxes().forEach(box -> before.put(box.getText(), box.isSelected()));
    known = List.copyOf(lips);
    checks.getChildren().clear();
    for (LipProfile lip : known) {
      CheckBox check = new CheckBox(lip.name());
      check.setId(id + "-" + lip.name().replace(' ', '-'));
      check.setGraphic(Thumbnail.of(lip));
      check.setSelected(before.getOrDefault(lip.name(), checks.getChildren().size() < usual));
      checks.getChildren().add(check);
    }
  }

  private List<CheckBox> boxes() {
    return checks.getChildren().stream().map(CheckBox.class::cast).toList();
  }

  /** Chooses those of these names. */
  void choose(Collection<String> names) {
    boxes().forEach(box -> box.setSelected(names.contains(box.getText())));
  }

  /** Lips that are chosen. */
  List<LipProfile> chosen() {
    List<LipProfile> chosen = new ArrayList<>();
    List<CheckBox> boxes = boxes();
    for (int i = 0; i < known.size(); i++) {
      if (boxes.get(i).isSelected()) {
        chosen.add(known.get(i));
      }
    }
    return chosen;
  }

  /**
   * The list below its heading.
   *
   * @param hint what the choice is for; empty for nothing
   */
  VBox content(String title, String hint) {
    Label heading = Controls.text(title, "page-heading");
    HBox.setHgrow(heading, Priority.ALWAYS);
    heading.setMaxWidth(Double.MAX_VALUE);
    HBox head = new HBox(6, heading, button("all", true), button("none", false));
    head.setAlignment(Pos.BASELINE_LEFT);
    ScrollPane list = new ScrollPane(checks);
    list.setFitToWidth(true);
    list.setPrefHeight(170);
    list.setMinHeight(90);
    list.getStyleClass().add("candidates");
    VBox.setVgrow(list, Priority.SOMETIMES);
    return hint.isEmpty()
        ? new VBox(6, head, list)
        : new VBox(6, head, Controls.text(hint, "quiet"), list);
  }

  private Button button(String name, boolean on) {
    Button button =
        Controls.button(
            id + "-" + name, name, e -> boxes().forEach(check -> check.setSelected(on)));
    button.getStyleClass().add("small");
    return button;
  }
}
