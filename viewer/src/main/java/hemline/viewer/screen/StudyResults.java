package hemline.viewer.screen;

import hemline.shared.problem.InputException;
import hemline.shared.result.Estimate;
import hemline.shared.result.Figure;
import hemline.shared.result.SectionResult;
import hemline.viewer.draw.PictureCanvas;
import hemline.viewer.format.Cautions;
import hemline.viewer.format.Digits;
import hemline.viewer.format.Wording;
import hemline.viewer.model.StudyDesk;
import hemline.viewer.picture.Picture;
import hemline.viewer.project.KeptStudy;
import hemline.viewer.project.ProjectFolder;
import hemline.viewer.project.StudyFiles;
import hemline.viewer.project.StudyWords;
import hemline.viewer.report.ResultFolder;
import java.util.ArrayList;
import java.util.List;
import java.util.function.IntSupplier;
import java.util.function.Supplier;
import javafx.geometry.Pos;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.ScrollPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import org.jspecify.annotations.Nullable;

/** The study on show: what it says, its charts, its cautions. */
final class StudyResults {
  private final StudyDesk desk;
  private final Supplier<ProjectFolder> project;
  private final IntSupplier threads;
  private final VBox lines = new VBox(8);
  private final ScrollPane pane = new ScrollPane(lines);
  private final List<PictureCanvas> canvases = new ArrayList<>();
  private final Label saved = new Label();
  private boolean dark;

  /**
   * A sheet.
   *
   * @param project the folder that results go to
   * @param threads solves running at once
   */
  StudyResults(StudyDesk desk, Supplier<ProjectFolder> project, IntSupplier threads) {
    this.desk = desk;
    this.project = project;
    this.threads = threads;
    lines.getStyleClass().add("study-sheet");
    pane.setFitToWidth(true);
    pane.getStyleClass().add("page-scroll");
    pane.setId("study-sheet");
    saved.getStyleClass().add("quiet");
    saved.setWrapText(true);
    saved.setId("study-saved");
    saved.managedProperty().bind(saved.textProperty().isNotEmpty());
    desk.shown().subscribe(this::show);
  }

  Region content() {
    return pane;
  }

  void setDark(boolean on) {
    dark = on;
    canvases.forEach(canvas -> canvas.setDark(on));
  }

  private void show(@Nullable KeptStudy study) {
    lines.getChildren().clear();
    canvases.clear();
    saved.setText("");
    if (study == null) {
      Label hint =
          text(
              "Choose on the left what to follow and press Start. Every point is solved on three"
                  + " grids; its bar shows how far the figure can be trusted, and only bars that"
                  + " stay apart tell two lips apart.",
              "hint");
      hint.setMaxWidth(560);
      lines.getChildren().add(hint);
      return;
    }
    lines.getChildren().add(head(study));
    for (String finding : StudyWords.findings(study)) {
      lines.getChildren().add(text(finding, "finding"));
    }
    for (Picture chart : StudyFiles.charts(study).values()) {
      PictureCanvas canvas = new PictureCanvas(chart, dark);
      canvases.add(canvas);
      lines.getChildren().add(canvas);
    }
    if (study.ranking() == null && study.question().standings()) {
      study.results().forEach(result -> lines.getChildren().add(text(line(result), "plain")));
    }
    List<String> cautions = StudyWords.cautions(study);
    if (!cautions.isEmpty()) {
      lines.getChildren().add(text("To know", "page-heading"));
      cautions.forEach(caution -> lines.getChildren().add(text(caution, "caution")));
    }
    lines.getChildren().add(text(Cautions.CODES, "quiet"));
    pane.setVvalue(0);
  }

  private Node head(KeptStudy study) {
    Label title = text(study.question().title(), "study-title");
    title.setId("study-title");
    Label conditions =
        text(
            study.question().conditions()
                + " \u00b7 "
                + KeptStudies.when(study)
                + ", "
                + Digits.plain(study.seconds(), 2)
                + " s",
            "quiet");
    VBox words = new VBox(2, title, conditions, saved);
    HBox.setHgrow(words, Priority.ALWAYS);
    Button save = new Button("Save chart and tables");
    save.setId("study-save");
    save.setMinWidth(Region.USE_PREF_SIZE);
    save.setOnAction(e -> save(study));
    Button forget = new Button("Forget");
    forget.setId("study-forget");
    forget.setMinWidth(Region.USE_PREF_SIZE);
    forget.setOnAction(e -> desk.remove(study));
    HBox head = new HBox(8, words, save, forget);
    if (!study.complete()) {
      Button on = new Button("Go on");
      on.setId("study-go-on");
      on.setMinWidth(Region.USE_PREF_SIZE);
      on.disableProperty().bind(desk.running());
      on.setOnAction(e -> desk.start(study.question(), threads.getAsInt()));
      head.getChildren().add(1, on);
    }
    head.setAlignment(Pos.TOP_LEFT);
    return head;
  }

  private void save(KeptStudy study) {
    try {
      String name = ResultFolder.fileName(study.question().title());
      ResultFolder folder = ResultFolder.at(project.get().results().resolve(name));
      StudyFiles.write(folder, study);
      saved.setText(folder.told());
    } catch (InputException e) {
      saved.setText(e.problems().get(0).toString());
    }
  }

  private static String line(SectionResult result) {
    Estimate leak = result.figures().get(Figure.LEAK_FLOW);
    return result.name()
        + ", gap "
        + Wording.millimetres(result.gap())
        + ": "
        + (leak == null ? "no usable flow" : Digits.withBand(leak, 1000) + " L/s per m");
  }

  private static Label text(String words, String style) {
    Label label = new Label(words);
    label.setWrapText(true);
    label.setMinHeight(Region.USE_PREF_SIZE);
    label.getStyleClass().add(style);
    return label;
  }
}
