package hemline.viewer.screen;

import hemline.viewer.model.BackgroundWork;
import java.util.List;
import java.util.Objects;
import javafx.scene.Node;
import javafx.scene.Parent;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.ProgressBar;
import javafx.scene.layout.BorderPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;

/** What is asked at the left with Start below it, the answer at the right. */
final class AskPane {
  private final String id;
  private final BackgroundWork work;
  private final Runnable ask;
  private final Label fault;

  /**
   * A pane.
   *
   * @param id begins the names of its parts
   * @param work that Start begins and Stop ends
   * @param ask begins the work, or says with {@link #fault} what is wrong
   */
  AskPane(String id, BackgroundWork work, Runnable ask) {
    this.id = id;
    this.work = work;
    this.ask = ask;
    fault = Controls.message(id + "-fault", "wrong");
  }

  /** Says what is wrong with the question; empty for nothing. */
  void fault(String sentence) {
    fault.setText(sentence);
  }

  /**
   * The whole page.
   *
   * @param above what is asked
   * @param below set under Start
   */
  Parent content(List<Node> above, List<Node> below, PageView answer) {
    VBox left = new VBox(9);
    left.getChildren().addAll(above);
    left.getChildren().addAll(start(), fault);
    left.getChildren().addAll(below);
    left.getStyleClass().add("ask");
    left.setPrefWidth(318);
    left.setMinWidth(300);
    BorderPane page = new BorderPane(answer.content());
    page.setLeft(left);
    page.getStyleClass().add("page");
    page.getStylesheets()
        .add(Objects.requireNonNull(AskPane.class.getResource("pages.css")).toExternalForm());
    return page;
  }

  private Region start() {
    Button start =
        Controls.button(
            id + "-start",
            "Start",
            e -> {
              if (work.running().get()) {
                work.stop();
              } else {
                ask.run();
              }
            });
    start.getStyleClass().add("run");
    work.running().subscribe(on -> start.setText(on ? "Stop" : "Start"));
    ProgressBar bar = new ProgressBar(0);
    bar.progressProperty().bind(work.progress());
    bar.visibleProperty().bind(work.running());
    bar.managedProperty().bind(work.running());
    bar.setMaxWidth(Double.MAX_VALUE);
    Label state = Controls.message(id + "-state", "quiet");
    state.textProperty().bind(work.state());
    VBox words = new VBox(3, bar, state);
    HBox.setHgrow(words, Priority.ALWAYS);
    return new HBox(10, start, words);
  }
}
