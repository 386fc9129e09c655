package hemline.viewer.screen;

import hemline.viewer.model.StudyDesk;
import hemline.viewer.project.KeptStudy;
import hemline.viewer.project.StudyQuestion;
import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.time.format.DateTimeParseException;
import java.util.Locale;
import java.util.function.Consumer;
import javafx.collections.FXCollections;
import javafx.scene.control.Hyperlink;
import javafx.scene.control.Label;
import javafx.scene.control.ListCell;
import javafx.scene.control.ListView;
import javafx.scene.input.KeyCode;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import org.jspecify.annotations.Nullable;

/** List of the studies that the project keeps, newest first. */
final class KeptStudies {
  private static final DateTimeFormatter TIME =
      DateTimeFormatter.ofPattern("d MMM, HH:mm", Locale.ENGLISH);
  private final StudyDesk desk;
  private final ListView<KeptStudy> list = new ListView<>();
  private boolean filling;

  /**
   * A list.
   *
   * @param asked hears what a study asked that is chosen
   */
  KeptStudies(StudyDesk desk, Consumer<StudyQuestion> asked) {
    this.desk = desk;
    list.setId("kept-studies");
    list.setAccessibleText("studies of this project");
    list.getStyleClass().add("kept");
    Label none = new Label("Studies that you run are kept here, also when the window is closed.");
    none.setWrapText(true);
    none.getStyleClass().add("hint");
    none.setMaxWidth(240);
    list.setPlaceholder(none);
    list.setCellFactory(view -> new Line());
    list.getSelectionModel()
        .selectedItemProperty()
        .subscribe(
            study -> {
              if (study != null && !filling) {
                desk.show(study);
                asked.accept(study.question());
              }
            });
    list.setOnKeyPressed(
        e -> {
          KeptStudy study = list.getSelectionModel().getSelectedItem();
          if (e.getCode() == KeyCode.DELETE && study != null) {
            desk.remove(study);
          }
        });
    desk.kept().subscribe(k -> fill());
    ShownUnit.follow(list, list::refresh);
    desk.shown().subscribe(s -> select(s));
  }

  /** The list, and below it the way back for a study that was forgotten. */
  VBox content() {
    Hyperlink back = new Hyperlink("Bring back the study that was forgotten");
    back.setId("study-bring-back");
    back.setOnAction(e -> desk.bringBack());
    back.managedProperty().bind(back.visibleProperty());
    desk.forgotten().subscribe(study -> back.setVisible(study != null));
    VBox.setVgrow(list, Priority.ALWAYS);
    return new VBox(4, list, back);
  }

  private void fill() {
    filling = true;
    list.setItems(FXCollections.observableArrayList(desk.kept().get()));
    filling = false;
    select(desk.shown().get());
  }

  private void select(@Nullable KeptStudy study) {
    filling = true;
    if (study == null) {
      list.getSelectionModel().clearSelection();
    } else {
      list.getSelectionModel().select(study);
    }
    filling = false;
  }

  static String when(KeptStudy study) {
    try {
      return TIME.format(Instant.parse(study.run().when()).atZone(ZoneId.systemDefault()));
    } catch (DateTimeParseException e) {
      return "";
    }
  }

  /** Two lines: what was asked, and when and how it ended. */
  private final class Line extends ListCell<KeptStudy> {
    @Override
    protected void updateItem(@Nullable KeptStudy study, boolean empty) {
      super.updateItem(study, empty);
      if (empty || study == null) {
        setGraphic(null);
        return;
      }
      Label title = new Label(study.question().title());
      title.getStyleClass().add("kept-title");
      title.setWrapText(true);
      String state =
          when(study)
              + (study.complete() ? "" : " \u00b7 stopped")
              + (desk.current(study) ? "" : " \u00b7 by another build");
      Label below = new Label(state);
      below.getStyleClass().add("quiet");
      VBox lines = new VBox(1, title, below);
      lines.prefWidthProperty().bind(list.widthProperty().subtract(28));
      title.setMinHeight(Region.USE_PREF_SIZE);
      setPrefWidth(0);
      setGraphic(lines);
    }
  }
}
