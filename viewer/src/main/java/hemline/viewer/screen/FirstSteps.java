package hemline.viewer.screen;

import hemline.viewer.model.Kept;
import hemline.viewer.model.Shown;
import hemline.viewer.model.Workbench;
import java.util.ArrayList;
import java.util.List;
import javafx.scene.control.Label;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;

/** The first three steps of a new user, on the board until they are done. */
final class FirstSteps {
  private static final double WIDTH = 236;

  private final Workbench bench;
  private final VBox card = new VBox(3);
  private final List<Step> steps = new ArrayList<>();
  private Runnable ended = () -> {};

  /** A step with what it asks for. */
  private static final class Step {
    private final String name;
    private final Label title;
    private final Label how;
    private boolean done;

    Step(String name, String how) {
      this.name = name;
      title = Controls.text(name, "step-title");
      this.how = Controls.text(how, "quiet");
      this.how.managedProperty().bind(this.how.visibleProperty());
    }

    /** Its explanation stands below the first step that is open. */
    void show(boolean current) {
      title.setText((done ? "\u2713 " : "\u2022 ") + name + (done ? ", done" : ""));
      how.setVisible(current);
    }
  }

  FirstSteps(Workbench bench) {
    this.bench = bench;
    steps.add(new Step("1 Draw", "Drag a corner of the lip, or take another lip from Lips."));
    steps.add(new Step("2 Run", "Press Run (F5) to see the air squeeze under it."));
    steps.add(
        new Step("3 Compare", "Press \u201cset as B\u201d, change the lip, and read both leaks."));
    card.setId("first-steps");
    card.getStyleClass().addAll("slip", "steps");
    card.setMaxSize(WIDTH, Region.USE_PREF_SIZE);
    card.setPrefWidth(WIDTH);
    Label title = Controls.text("First steps", "slip-title");
    HBox head = Controls.row(title, Controls.button("first-steps-hide", "Hide", e -> end()));
    HBox.setHgrow(title, Priority.ALWAYS);
    title.setMaxWidth(Double.MAX_VALUE);
    card.getChildren().add(head);
    steps.forEach(step -> card.getChildren().addAll(step.title, step.how));
    show(false);
    bench.drawing().subscribe((before, now) -> did(0));
    bench.shown().subscribe(s -> look());
    bench.beside().subscribe(k -> look());
  }

  Region content() {
    return card;
  }

  /** Shows all steps anew; {@code done} runs when they are done or hidden. */
  void begin(Runnable done) {
    ended = done;
    steps.forEach(step -> step.done = false);
    show(true);
    mark();
  }

  private void look() {
    Shown now = bench.shown().get();
    Kept kept = bench.kept().get();
    if (now != null && !now.preview()) {
      did(1);
      Shown other = kept == null ? null : kept.shown();
      if (other != null && !other.section().equals(now.section())) {
        did(2);
      }
    }
  }

  private void did(int step) {
    if (card.isVisible() && !steps.get(step).done) {
      steps.get(step).done = true;
      mark();
      if (steps.stream().allMatch(one -> one.done)) {
        end();
      }
    }
  }

  private void mark() {
    boolean open = true;
    for (Step step : steps) {
      step.show(open && !step.done);
      open &= step.done;
    }
  }

  private void end() {
    show(false);
    ended.run();
  }

  private void show(boolean on) {
    card.setVisible(on);
    card.setManaged(on);
  }
}
