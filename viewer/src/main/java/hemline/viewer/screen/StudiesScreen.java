package hemline.viewer.screen;

import hemline.shared.problem.Problem;
import hemline.viewer.model.Shelf;
import hemline.viewer.model.StudyDesk;
import hemline.viewer.model.Workbench;
import hemline.viewer.project.ProjectFolder;
import hemline.viewer.project.StudyQuestion;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.function.Supplier;
import javafx.scene.Parent;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.ProgressBar;
import javafx.scene.layout.BorderPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;

/** Leak over gap, suction or ground speed, and standings of lips. */
public final class StudiesScreen implements Screen {
  private final Workbench bench;
  private final StudyDesk desk;
  private final Shelf shelf;
  private final StudyForm form = new StudyForm();
  private final StudyResults sheet;
  private final Label fault = new Label();

  /**
   * A page for studies.
   *
   * @param project the folder that results go to
   */
  public StudiesScreen(
      Workbench bench, StudyDesk desk, Shelf shelf, Supplier<ProjectFolder> project) {
    this.bench = bench;
    this.desk = desk;
    this.shelf = shelf;
    this.sheet = new StudyResults(desk, project, () -> bench.options().get().threads());
  }

  @Override
  public String title() {
    return "Studies";
  }

  @Override
  public void shown() {
    form.offer(shelf.lips(), bench.setting().get());
  }

  @Override
  public void setDark(boolean on) {
    sheet.setDark(on);
  }

  @Override
  public Parent createContent() {
    form.offer(shelf.lips(), bench.setting().get());
    fault.getStyleClass().add("wrong");
    fault.setWrapText(true);
    fault.setMinHeight(Region.USE_PREF_SIZE);
    fault.setId("study-fault");
    fault.managedProperty().bind(fault.textProperty().isNotEmpty());
    Label kept = new Label("Kept in this project");
    kept.getStyleClass().add("page-heading");
    Region list = new KeptStudies(desk).content();
    list.setMinHeight(80);
    list.setPrefHeight(200);
    VBox.setVgrow(list, Priority.ALWAYS);
    VBox left = new VBox(9, form.content(), start(), fault, kept, list);
    left.getStyleClass().add("ask");
    left.setPrefWidth(318);
    left.setMinWidth(300);
    BorderPane page = new BorderPane(sheet.content());
    page.setLeft(left);
    page.getStyleClass().add("page");
    page.getStylesheets()
        .add(Objects.requireNonNull(StudiesScreen.class.getResource("pages.css")).toExternalForm());
    return page;
  }

  private Region start() {
    Button start = new Button("Start");
    start.setId("study-start");
    start.getStyleClass().add("run");
    start.setMinWidth(Region.USE_PREF_SIZE);
    desk.running().subscribe(on -> start.setText(on ? "Stop" : "Start"));
    start.setOnAction(
        e -> {
          if (desk.running().get()) {
            desk.stop();
          } else {
            ask();
          }
        });
    ProgressBar bar = new ProgressBar(0);
    bar.progressProperty().bind(desk.progress());
    bar.visibleProperty().bind(desk.running());
    bar.managedProperty().bind(desk.running());
    bar.setMaxWidth(Double.MAX_VALUE);
    Label state = new Label();
    state.setId("study-state");
    state.setWrapText(true);
    state.getStyleClass().add("quiet");
    state.textProperty().bind(desk.state());
    state.managedProperty().bind(state.textProperty().isNotEmpty());
    VBox words = new VBox(3, bar, state);
    HBox.setHgrow(words, Priority.ALWAYS);
    return new HBox(10, start, words);
  }

  private void ask() {
    List<Problem> problems = new ArrayList<>();
    StudyQuestion question = form.read(problems);
    if (question != null) {
      problems.addAll(desk.start(question, bench.options().get().threads()));
    }
    fault.setText(problems.isEmpty() ? "" : sentence(problems.get(0)));
  }

  private static String sentence(Problem problem) {
    return problem.place() + ": " + problem.text() + ".";
  }
}
