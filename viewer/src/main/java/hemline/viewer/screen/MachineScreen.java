package hemline.viewer.screen;

import hemline.shared.file.MachineFile;
import hemline.shared.problem.InputException;
import hemline.shared.profile.LipProfile;
import hemline.shared.vehicle.Machine;
import hemline.solver.flow.Closure;
import hemline.solver.grid.MeshLevel;
import hemline.solver.study.RunOptions;
import hemline.viewer.model.MachineDesk;
import hemline.viewer.model.MachineDesk.Balanced;
import hemline.viewer.project.ProjectFolder;
import hemline.viewer.report.BalanceDocument;
import hemline.viewer.report.BalanceFiles;
import hemline.viewer.report.ResultFolder;
import java.nio.file.Path;
import java.util.List;
import java.util.Objects;
import java.util.function.Supplier;
import javafx.collections.FXCollections;
import javafx.scene.Node;
import javafx.scene.Parent;
import javafx.scene.control.Button;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Label;
import javafx.scene.control.ProgressBar;
import javafx.scene.control.TextField;
import javafx.scene.control.Tooltip;
import javafx.scene.layout.BorderPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import javafx.util.StringConverter;
import org.jspecify.annotations.Nullable;

/** Balance of a machine: suction, downforce, ride height, valve, holds, grip. */
public final class MachineScreen implements Screen {
  /** Bounds of the margin; as the command has them. */
  private static final double LEAST_FACTOR = 1;

  private static final double MOST_FACTOR = 100;

  private final MachineDesk desk;
  private final Supplier<List<Path>> known;
  private final Supplier<@Nullable Path> chooser;
  private final Supplier<ProjectFolder> project;
  private final int threads;
  private final Supplier<List<LipProfile>> lips;
  private final MachineResults sheet = new MachineResults();
  private final LipChoice others = new LipChoice();
  private final ComboBox<Path> file = new ComboBox<>();
  private final ComboBox<MeshLevel> mesh =
      new ComboBox<>(FXCollections.observableArrayList(MeshLevel.values()));
  private final TextField factor = new TextField("1.5");
  private final Label fault = new Label();

  /**
   * A page for machines.
   *
   * @param known machine files to offer
   * @param lips to offer for a try
   * @param chooser asks for another one
   * @param project where results go
   */
  public MachineScreen(
      MachineDesk desk,
      Supplier<List<Path>> known,
      Supplier<List<LipProfile>> lips,
      Supplier<@Nullable Path> chooser,
      Supplier<ProjectFolder> project,
      int threads) {
    this.desk = desk;
    this.known = known;
    this.lips = lips;
    this.chooser = chooser;
    this.project = project;
    this.threads = threads;
  }

  @Override
  public String title() {
    return "Machine";
  }

  @Override
  public void setDark(boolean on) {
    sheet.setDark(on);
  }

  @Override
  public void shown() {
    others.offer(lips.get());
    Path before = file.getValue();
    for (Path one : known.get()) {
      if (!file.getItems().contains(one)) {
        file.getItems().add(one);
      }
    }
    file.setValue(before == null && !file.getItems().isEmpty() ? file.getItems().get(0) : before);
  }

  @Override
  public Parent createContent() {
    file.setId("machine-file");
    file.setMaxWidth(Double.MAX_VALUE);
    file.setConverter(names());
    mesh.setId("machine-mesh");
    mesh.setConverter(levels());
    mesh.setValue(MeshLevel.COARSE);
    Button other = new Button("Another file \u2026");
    other.setId("machine-open");
    other.setOnAction(
        e -> {
          Path chosen = chooser.get();
          if (chosen != null) {
            if (!file.getItems().contains(chosen)) {
              file.getItems().add(chosen);
            }
            file.setValue(chosen);
          }
        });
    fault.setId("machine-fault");
    fault.getStyleClass().add("wrong");
    fault.setWrapText(true);
    fault.managedProperty().bind(fault.textProperty().isNotEmpty());
    Label heading = new Label("Machine file");
    heading.getStyleClass().add("page-heading");
    Label level = new Label("mesh of the sections");
    HBox row = new HBox(8, level, mesh);
    row.setAlignment(javafx.geometry.Pos.CENTER_LEFT);
    factor.setId("machine-factor");
    factor.setPrefColumnCount(4);
    factor.setTooltip(
        new Tooltip(
            "How many times softer tyres and frame may be before a lip touches; the relief valve is"
                + " set for it."));
    HBox margin = new HBox(8, new Label("margin of the springs"), factor);
    margin.setAlignment(javafx.geometry.Pos.CENTER_LEFT);
    VBox left = new VBox(9, heading, file, other, row, margin, others.content(), start(), fault);
    left.getStyleClass().add("ask");
    left.setPrefWidth(318);
    left.setMinWidth(300);
    BorderPane page = new BorderPane(sheet.content());
    page.setLeft(left);
    page.getStyleClass().add("page");
    page.getStylesheets()
        .add(Objects.requireNonNull(MachineScreen.class.getResource("pages.css")).toExternalForm());
    desk.shown().subscribe(found -> sheet.show(found, save(found)));
    return page;
  }

  private static StringConverter<Path> names() {
    return new StringConverter<>() {
      @Override
      public String toString(@Nullable Path path) {
        return path == null || path.getFileName() == null
            ? ""
            : path.getFileName().toString().replace(".json", "").replace('-', ' ');
      }

      @Override
      public @Nullable Path fromString(String text) {
        return null;
      }
    };
  }

  private static StringConverter<MeshLevel> levels() {
    return new StringConverter<>() {
      @Override
      public String toString(@Nullable MeshLevel level) {
        return level == null ? "" : level.key();
      }

      @Override
      public @Nullable MeshLevel fromString(String text) {
        return null;
      }
    };
  }

  private Region start() {
    Button start = new Button("Start");
    start.setId("machine-start");
    start.getStyleClass().add("run");
    start.setMinWidth(Region.USE_PREF_SIZE);
    desk.running().subscribe(on -> start.setText(on ? "Stop" : "Start"));
    start.setOnAction(
        e -> {
          if (desk.running().get()) {
            desk.stop();
          } else {
            balance();
          }
        });
    ProgressBar bar = new ProgressBar(0);
    bar.progressProperty().bind(desk.progress());
    bar.visibleProperty().bind(desk.running());
    bar.managedProperty().bind(desk.running());
    bar.setMaxWidth(Double.MAX_VALUE);
    Label state = new Label();
    state.setWrapText(true);
    state.getStyleClass().add("quiet");
    state.textProperty().bind(desk.state());
    state.managedProperty().bind(state.textProperty().isNotEmpty());
    VBox words = new VBox(3, bar, state);
    HBox.setHgrow(words, Priority.ALWAYS);
    return new HBox(10, start, words);
  }

  private void balance() {
    Path chosen = file.getValue();
    if (chosen == null) {
      fault.setText("Choose a machine file first.");
      return;
    }
    try {
      Machine machine = MachineFile.read(chosen);
      double times = factor();
      if (!(times >= LEAST_FACTOR && times <= MOST_FACTOR)) {
        fault.setText("The margin of the springs is a number between 1 and 100, such as 1.5.");
        return;
      }
      fault.setText("");
      desk.start(
          machine,
          others.chosen(),
          times,
          new RunOptions(mesh.getValue(), Closure.AUTO, false, threads));
    } catch (InputException e) {
      fault.setText(e.problems().get(0).toString());
    }
  }

  /** Margin as typed; not a number where it is none. */
  private double factor() {
    try {
      return Double.parseDouble(factor.getText().strip());
    } catch (NumberFormatException e) {
      return Double.NaN;
    }
  }

  private Node save(@Nullable Balanced found) {
    Label saved = new Label();
    saved.setId("machine-saved");
    saved.setWrapText(true);
    saved.getStyleClass().add("quiet");
    Button save = new Button("Save report, plots and tables");
    save.setId("machine-save");
    save.setMinWidth(Region.USE_PREF_SIZE);
    save.setOnAction(
        e -> {
          if (found != null) {
            saved.setText(write(found));
          }
        });
    HBox row = new HBox(10, save, saved);
    row.setAlignment(javafx.geometry.Pos.CENTER_LEFT);
    return row;
  }

  private String write(Balanced found) {
    try {
      String name = ResultFolder.fileName(found.balance().machine().name());
      ResultFolder folder = ResultFolder.at(project.get().results().resolve(name));
      BalanceFiles.write(
          folder,
          found.balance(),
          BalanceDocument.text(found.balance(), found.mesh(), found.seconds()),
          found.mesh());
      return folder.told();
    } catch (InputException e) {
      return e.problems().get(0).toString();
    }
  }
}
