package hemline.viewer.screen;

import hemline.shared.problem.InputException;
import hemline.shared.vehicle.Machine;
import hemline.solver.flow.Closure;
import hemline.solver.grid.MeshLevel;
import hemline.solver.study.RunOptions;
import hemline.viewer.format.BalanceWords;
import hemline.viewer.format.Cautions;
import hemline.viewer.format.Digits;
import hemline.viewer.model.Beside;
import hemline.viewer.model.MachineDesk;
import hemline.viewer.model.MachineDesk.Balanced;
import hemline.viewer.model.MachineSheet;
import hemline.viewer.model.MachineSheet.State;
import hemline.viewer.model.Shelf;
import hemline.viewer.page.BalancePage;
import hemline.viewer.page.Page;
import hemline.viewer.page.Page.Tone;
import hemline.viewer.picture.MachinePlan;
import hemline.viewer.project.MachineRescue;
import hemline.viewer.project.ProjectFolder;
import hemline.viewer.report.BalanceDocument;
import hemline.viewer.report.BalanceFiles;
import hemline.viewer.report.ResultFolder;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Executor;
import java.util.function.Supplier;
import javafx.collections.FXCollections;
import javafx.scene.Parent;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Label;
import javafx.scene.control.ScrollPane;
import javafx.scene.control.TitledPane;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;
import org.jspecify.annotations.Nullable;

/** Balance of a machine: suction, downforce, ride height, valve, holds, grip. */
public final class MachineScreen implements Screen {
  /** Bounds of the factor, as the command has them. */
  private static final double LEAST_FACTOR = 1;

  private static final double MOST_FACTOR = 100;

  private static final String TRY =
      "Each goes all round the floor in turn; they are ranked by the downforce they give on this"
          + " fan.";

  private final MachineDesk desk;
  private final MachineFiles files;
  private final Supplier<ProjectFolder> project;
  private final int threads;
  private final Shelf shelf;
  private final Beside disk;
  private final PageView view =
      new PageView(
          "machine",
          "Choose a machine and press Start: the leaks of all edges are solved, set against the"
              + " fan's curve, and tell suction, downforce, ride height, hold and grip."
              + " Sections solved once are kept, so the next balance is quick.");
  private final LipChoice others = new LipChoice("try", 0);
  private final ComboBox<Path> file = new ComboBox<>();
  private final ComboBox<MeshLevel> mesh =
      new ComboBox<>(FXCollections.observableArrayList(MeshLevel.values()));
  private final ValueField factor =
      new ValueField(
              "machine-factor",
              "stiffness safety factor",
              "How many times softer tyres and frame may be before a lip touches; the relief valve"
                  + " is set for it.",
              Measure.number(4, MachineScreen::judged))
          .showing(1.5);
  private final MachineSheet sheet;
  private final MachineValues values;
  private final LipAllRound lip;
  private final UnsavedMachine unsaved;
  private final AskPane pane;

  /** The machine that was balanced last, whose balance follows each change. */
  private @Nullable Path followed;

  /**
   * A page for machines.
   *
   * @param shelf lips to offer for a try
   * @param disk where machine files are looked for
   * @param project where results go
   * @param rescue where changed values are put by
   * @param writer does that, one task after the other
   * @param strip asks before they are dropped
   */
  public MachineScreen(
      MachineDesk desk,
      MachineFiles files,
      Shelf shelf,
      Beside disk,
      Supplier<ProjectFolder> project,
      Supplier<MachineRescue> rescue,
      Executor writer,
      NoticeStrip strip,
      int threads) {
    this.desk = desk;
    this.files = files;
    this.shelf = shelf;
    this.disk = disk;
    this.project = project;
    this.threads = threads;
    sheet = new MachineSheet(disk);
    values = new MachineValues(sheet);
    lip = new LipAllRound(sheet);
    unsaved = new UnsavedMachine(sheet, rescue, writer, disk, strip, this::saveAs, this::turnTo);
    pane = new AskPane("machine", desk.work(), this::balance);
  }

  @Override
  public String title() {
    return "Machine";
  }

  @Override
  public void setDark(boolean on) {
    view.setDark(on);
  }

  @Override
  public void shown() {
    shelf.list(others::offer);
    disk.read(files.machines(), this::offer);
    disk.read(files.lips(), lip::offer);
    unsaved.look(files.machines());
  }

  private void offer(List<Path> machines) {
    Path before = file.getValue();
    for (Path one : machines) {
      if (!file.getItems().contains(one)) {
        file.getItems().add(one);
      }
    }
    file.setValue(before == null && !file.getItems().isEmpty() ? file.getItems().get(0) : before);
  }

  @Override
  public Parent createContent() {
    file.setId("machine-file");
    file.setAccessibleText("machine file");
    file.setMaxWidth(Double.MAX_VALUE);
    file.setConverter(Controls.names(MachineScreen::name));
    mesh.setId("machine-mesh");
    mesh.setAccessibleText("mesh of the sections");
    mesh.setConverter(Controls.names(MeshLevel::key));
    mesh.setValue(MeshLevel.COARSE);
    desk.shown().subscribe(this::show);
    file.valueProperty().subscribe(this::chosen);
    sheet.state().subscribe(this::changed);
    ShownUnit.follow(file, this::again);
    TitledPane lips = new TitledPane("Other lips to try", others.content("", TRY));
    lips.setId("other-lips");
    lips.setAnimated(false);
    lips.setExpanded(false);
    VBox lists = new VBox(4, lips, values.content());
    ScrollPane scroll = new ScrollPane(lists);
    scroll.setFitToWidth(true);
    scroll.getStyleClass().add("page-scroll");
    scroll.setMinHeight(120);
    VBox.setVgrow(scroll, Priority.ALWAYS);
    return pane.content(
        List.of(
            unsaved.content(),
            Controls.text("Machine file", "page-heading"),
            file,
            Controls.row(
                Controls.button("machine-open", "Another file \u2026", e -> open()),
                Controls.button("machine-keep", "Save as \u2026", e -> saveAs(() -> {}))),
            Controls.row(new Label("mesh of the sections"), mesh),
            factor.line(),
            factor.reason()),
        List.of(Controls.text("Values", "page-heading"), lip.content(), scroll),
        view);
  }

  private static String name(Path path) {
    Path name = path.getFileName();
    return name == null ? "" : name.toString().replace(".json", "").replace('-', ' ');
  }

  private void open() {
    Path chosen = files.chooser().get();
    if (chosen != null) {
      turnTo(chosen, () -> {});
    }
  }

  /** Turns to another machine and goes on; changed values of the one before are asked for. */
  private void turnTo(Path machine, Runnable then) {
    unsaved.guarded(
        () -> {
          sheet.open(machine);
          if (!file.getItems().contains(machine)) {
            file.getItems().add(machine);
          }
          file.setValue(machine);
          then.run();
        });
  }

  @Override
  public void undo() {
    sheet.undo();
  }

  @Override
  public void redo() {
    sheet.redo();
  }

  private void chosen(@Nullable Path path) {
    Path before = sheet.file();
    if (path != null && !path.equals(before)) {
      if (sheet.unsaved()) {
        file.setValue(before);
      }
      turnTo(path, () -> {});
    }
  }

  /** Shows the machine; the balance follows where there was one. */
  private void changed(@Nullable State now) {
    if (now == null) {
      return;
    }
    pane.fault(now.fault());
    Machine machine = now.machine();
    if (machine != null && now.file().equals(followed)) {
      balance();
    } else if (machine != null) {
      desk.clear();
      view.show(plan(machine));
    }
  }

  /** Shows what is on show in another unit. */
  private void again() {
    State now = sheet.state().get();
    Balanced found = desk.shown().get();
    if (found != null) {
      show(found);
    } else if (now != null && now.machine() != null) {
      view.show(plan(now.machine()));
    }
  }

  private static Page plan(Machine machine) {
    return new Page(BalancePage.title(machine))
        .quiet(BalanceWords.conditions(machine))
        .plot(() -> MachinePlan.of(machine), "floor, axles, fan and centre of gravity in plan")
        .text(Cautions.HOLD, Tone.CAUTION);
  }

  /** Saves the machine and goes on when it is in its file. */
  private void saveAs(Runnable then) {
    State now = sheet.state().get();
    if (now == null || now.machine() == null) {
      return;
    }
    String name = ResultFolder.fileName(now.machine().description().name()) + ".json";
    Path to = files.target().apply(project.get().path().resolve(name));
    if (to != null) {
      sheet.save(
          to,
          fault -> {
            pane.fault(fault);
            if (fault.isEmpty()) {
              turnTo(to, then);
            }
          });
    }
  }

  private void balance() {
    State now = sheet.state().get();
    if (now == null) {
      pane.fault("Choose a machine file first.");
      return;
    }
    Machine machine = now.machine();
    if (machine == null) {
      pane.fault(now.fault());
      return;
    }
    if (!factor.commit()) {
      factor.requestFocus();
      return;
    }
    pane.fault("");
    followed = now.file();
    desk.start(
        machine,
        others.chosen(),
        factor.value(),
        new RunOptions(mesh.getValue(), Closure.AUTO, false, threads));
  }

  private static String judged(double times) {
    return times >= LEAST_FACTOR && times <= MOST_FACTOR
        ? ""
        : "a number between 1 and 100 is needed, such as 1.5";
  }

  private void show(@Nullable Balanced found) {
    if (found == null) {
      return;
    }
    Label saved = Controls.message("machine-saved", "quiet");
    String made =
        "%d sections on %s grids, %s s"
            .formatted(
                found.balance().leakPoints().size(),
                found.mesh(),
                Digits.plain(found.seconds(), 2));
    view.show(
        BalancePage.of(found.balance(), found.mesh()),
        Controls.row(
            Controls.button(
                "machine-save", "Save report, plots and tables", e -> saved.setText(write(found)))),
        saved,
        Controls.text(made, "quiet"));
  }

  private String write(Balanced found) {
    try {
      String name = ResultFolder.fileName(found.balance().machine().description().name());
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
