package hemline.viewer.screen;

import hemline.solver.grid.MeshLevel;
import hemline.viewer.model.Workbench;
import java.util.ArrayList;
import java.util.List;
import javafx.geometry.Pos;
import javafx.scene.control.Button;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Label;
import javafx.scene.control.ProgressBar;
import javafx.scene.control.Slider;
import javafx.scene.control.Tooltip;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;

/** One sentence of conditions below the board, each number with a slider, and Run at its end. */
final class SettingBar {
  private static final String RUN = "Solve this section on three grids (F5)";

  private final Workbench bench;
  private final Runnable run;
  private final List<ValueField> fields = new ArrayList<>();
  private final Label why = Controls.message("run-reason", "wrong");
  private boolean updating;

  /**
   * A bar.
   *
   * @param run what Run does
   */
  SettingBar(Workbench bench, Runnable run) {
    this.bench = bench;
    this.run = run;
    bench.findings().subscribe(f -> why.setText(""));
  }

  Region content() {
    // where the window is narrow the last conditions go below
    FlowPane conditions = new FlowPane(18, 4);
    Condition.ALL.forEach(condition -> conditions.getChildren().add(condition(condition)));
    HBox.setHgrow(conditions, Priority.ALWAYS);
    conditions.setPrefWrapLength(200);
    ProgressBar progress = new ProgressBar(0);
    progress.progressProperty().bind(bench.progress());
    progress.visibleProperty().bind(bench.running());
    progress.setPrefWidth(110);
    VBox solve = new VBox(4, mesh(), button());
    HBox bar = new HBox(18, conditions, progress, solve);
    bar.setAlignment(Pos.CENTER_LEFT);
    VBox lines = new VBox(2, bar);
    fields.forEach(field -> lines.getChildren().add(field.reason()));
    lines.getChildren().add(why);
    lines.getStyleClass().addAll("setting-bar", "slip");
    return lines;
  }

  private Button button() {
    Button button =
        Controls.button(
            "run",
            "Run",
            e -> {
              if (bench.running().get()) {
                bench.stop();
              } else {
                run.run();
              }
            });
    button.getStyleClass().add("run");
    Tooltip hint = new Tooltip(RUN);
    button.setTooltip(hint);
    bench
        .findings()
        .subscribe(
            found ->
                hint.setText(
                    found.problems().isEmpty()
                        ? RUN
                        : "Cannot run: " + found.problems().get(0).text()));
    button.accessibleHelpProperty().bind(hint.textProperty());
    bench.running().subscribe(on -> button.setText(on ? "Stop" : "Run"));
    return button;
  }

  /** The choice of the mesh, as in the command line. */
  private HBox mesh() {
    ComboBox<MeshLevel> mesh = new ComboBox<>();
    mesh.getItems().setAll(MeshLevel.values());
    mesh.setId("mesh");
    mesh.setAccessibleText("mesh of the solve");
    mesh.setConverter(Controls.names(MeshLevel::key));
    mesh.setTooltip(new Tooltip("finer meshes narrow the bands and take longer"));
    bench.options().subscribe(o -> mesh.setValue(o.level()));
    mesh.setOnAction(e -> bench.useMesh(mesh.getValue()));
    Label name = new Label("mesh");
    name.setLabelFor(mesh);
    name.getStyleClass().add("field-name");
    return Controls.row(6, name, mesh);
  }

  /** Says why nothing can be solved. */
  void refuse(String reason) {
    why.setText("Not run: " + reason + ".");
  }

  private Region condition(Condition condition) {
    ValueField field =
        new ValueField(condition.id(), condition.name(), condition.meaning(), condition.measure())
            .taking(v -> bench.set(condition.change().of(bench.setting().get(), v)));
    fields.add(field);
    double low = condition.scale().low();
    double high = condition.scale().high();
    Slider slider = new Slider(low, high, condition.along(bench.setting().get()));
    slider.setId(condition.id() + "-slider");
    slider.setAccessibleText(condition.meaning());
    slider.setBlockIncrement((high - low) / 100);
    slider.setPrefWidth(150);
    bench
        .setting()
        .subscribe(
            s -> {
              updating = true;
              field.set(condition.value().applyAsDouble(s));
              slider.setValue(condition.along(s));
              updating = false;
            });
    slider
        .valueProperty()
        .subscribe(
            v -> {
              if (!updating) {
                bench.set(condition.at(bench.setting().get(), v.doubleValue()));
              }
            });
    slider.valueChangingProperty().subscribe(bench::drag);
    return new VBox(2, field.line(), slider);
  }
}
