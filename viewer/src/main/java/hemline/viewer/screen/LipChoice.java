package hemline.viewer.screen;

import hemline.shared.profile.LipProfile;
import java.util.ArrayList;
import java.util.List;
import javafx.geometry.Pos;
import javafx.scene.control.Button;
import javafx.scene.control.CheckBox;
import javafx.scene.control.Label;
import javafx.scene.control.ScrollPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;

/** Lips to try in place of the machine's own; none at first. */
final class LipChoice {
  private final VBox checks = new VBox(4);
  private List<LipProfile> known = List.of();

  /** Offers other lips; those chosen that are still there stay chosen. */
  void offer(List<LipProfile> lips) {
    List<String> before = chosen().stream().map(LipProfile::name).toList();
    known = List.copyOf(lips);
    checks.getChildren().clear();
    for (LipProfile lip : known) {
      CheckBox check = new CheckBox(lip.name());
      check.setId("try-" + lip.name().replace(' ', '-'));
      check.setSelected(before.contains(lip.name()));
      checks.getChildren().add(check);
    }
  }

  /** Lips to try. */
  List<LipProfile> chosen() {
    List<LipProfile> chosen = new ArrayList<>();
    for (int i = 0; i < known.size(); i++) {
      if (checks.getChildren().get(i) instanceof CheckBox check && check.isSelected()) {
        chosen.add(known.get(i));
      }
    }
    return chosen;
  }

  VBox content() {
    Label heading = Controls.text("Other lips to try", "page-heading");
    HBox.setHgrow(heading, Priority.ALWAYS);
    heading.setMaxWidth(Double.MAX_VALUE);
    HBox head = new HBox(6, heading, button("all", true), button("none", false));
    head.setAlignment(Pos.BASELINE_LEFT);
    Label hint =
        Controls.text(
            "Each goes all round the floor in turn; they are ranked by the downforce they give on"
                + " this fan.",
            "quiet");
    ScrollPane list = new ScrollPane(checks);
    list.setFitToWidth(true);
    list.setPrefHeight(200);
    list.setMinHeight(90);
    list.getStyleClass().add("candidates");
    return new VBox(6, head, hint, list);
  }

  private Button button(String name, boolean on) {
    Button button =
        Controls.button(
            "try-" + name,
            name,
            e ->
                checks.getChildren().stream()
                    .map(CheckBox.class::cast)
                    .forEach(check -> check.setSelected(on)));
    button.getStyleClass().add("small");
    return button;
  }
}
