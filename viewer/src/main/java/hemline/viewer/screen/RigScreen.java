package hemline.viewer.screen;

import hemline.shared.file.CalibrationFile;
import hemline.shared.problem.InputException;
import hemline.shared.profile.LipProfile;
import hemline.shared.result.Calibration;
import hemline.shared.rig.Rig;
import hemline.shared.rig.RigFile;
import hemline.solver.flow.Closure;
import hemline.solver.grid.MeshLevel;
import hemline.solver.study.RunOptions;
import hemline.viewer.format.CompareWords;
import hemline.viewer.model.RigDesk;
import hemline.viewer.model.RigDesk.Compared;
import hemline.viewer.model.Shelf;
import hemline.viewer.page.ComparePage;
import hemline.viewer.project.ProjectFolder;
import hemline.viewer.report.CompareDocument;
import hemline.viewer.report.CompareFiles;
import hemline.viewer.report.ResultFolder;
import java.nio.file.Path;
import java.util.List;
import java.util.function.Supplier;
import javafx.scene.Node;
import javafx.scene.Parent;
import javafx.scene.control.Button;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Label;
import javafx.scene.layout.HBox;
import org.jspecify.annotations.Nullable;

/** A lip measured at a test rig beside its prediction. */
public final class RigScreen implements Screen {
  private final RigDesk desk;
  private final Shelf shelf;
  private final Supplier<@Nullable Path> chooser;
  private final Supplier<ProjectFolder> project;
  private final int threads;
  private final ComboBox<LipProfile> lip = new ComboBox<>();
  private final ValueField matters =
      new ValueField(
              "rig-matters",
              "a difference matters from",
              "share of the discharge from which on a difference between rig and prediction counts",
              Measure.number(
                  4,
                  v ->
                      v > 0 && v <= 100
                          ? ""
                          : "a number above 0 and at most 100 is needed, such as 10"))
          .showing(10);
  private final Label file = new Label("No rig file chosen.");
  private final AskPane pane;
  private final PageView view =
      new PageView(
          "rig",
          "Choose the readings of your rig and the lip that was measured: its prediction is laid"
              + " beside them with both error bars, and you are told whether they agree, differ, or"
              + " what would tell. The command compare --template prints a rig file.");
  private @Nullable Path chosen;

  /**
   * A page for rigs.
   *
   * @param shelf lips to offer
   * @param chooser asks for a rig file
   * @param project where results go
   */
  public RigScreen(
      RigDesk desk,
      Shelf shelf,
      Supplier<@Nullable Path> chooser,
      Supplier<ProjectFolder> project,
      int threads) {
    this.desk = desk;
    this.shelf = shelf;
    this.chooser = chooser;
    this.project = project;
    this.threads = threads;
    pane = new AskPane("rig", desk.work(), this::compare);
  }

  @Override
  public String title() {
    return "Rig";
  }

  @Override
  public void setDark(boolean on) {
    view.setDark(on);
  }

  @Override
  public void shown() {
    shelf.list(this::offer);
  }

  private void offer(List<LipProfile> lips) {
    LipProfile before = lip.getValue();
    lip.getItems().setAll(lips);
    lip.setValue(
        before != null && lip.getItems().contains(before)
            ? before
            : lip.getItems().isEmpty() ? null : lip.getItems().get(0));
  }

  @Override
  public Parent createContent() {
    lip.setId("rig-lip");
    lip.setAccessibleText("lip that was measured");
    lip.setMaxWidth(Double.MAX_VALUE);
    lip.setConverter(Controls.names(LipProfile::name));
    Button open = Controls.button("rig-open", "Rig file \u2026", e -> choose(chooser.get()));
    file.setWrapText(true);
    file.getStyleClass().add("quiet");
    HBox row = matters.line();
    row.getChildren().add(new Label("%"));
    Label readings = Controls.text("Readings", "page-heading");
    Label measured = Controls.text("Lip", "page-heading");
    Parent page =
        pane.content(
            List.of(readings, open, file, measured, lip, row, matters.reason()),
            CompareWords.CAUTIONS.stream()
                .<Node>map(caution -> Controls.text(caution, "safety"))
                .toList(),
            view);
    desk.shown().subscribe(this::show);
    ShownUnit.follow(view.content(), () -> show(desk.shown().get()));
    return page;
  }

  /** Takes a rig file; null changes nothing. */
  public void choose(@Nullable Path path) {
    if (path != null) {
      chosen = path;
      file.setText(path.toString());
      pane.fault("");
    }
  }

  private void compare() {
    Path path = chosen;
    LipProfile measured = lip.getValue();
    if (path == null || measured == null) {
      pane.fault("Choose a rig file and the lip that was measured first.");
      return;
    }
    if (!matters.commit()) {
      matters.requestFocus();
      return;
    }
    try {
      Rig rig = RigFile.read(path);
      pane.fault("");
      desk.start(
          rig,
          measured,
          matters.value() / 100,
          new RunOptions(MeshLevel.MEDIUM, Closure.AUTO, false, threads));
    } catch (InputException e) {
      pane.fault(e.problems().get(0).toString());
    }
  }

  private void show(@Nullable Compared found) {
    if (found == null) {
      view.show(null);
      return;
    }
    view.show(
        ComparePage.of(found.lip().name(), found.rig(), found.comparison(), found.learnt()),
        keep(found));
  }

  private Node keep(Compared found) {
    Label saved = Controls.text("", "quiet");
    saved.setId("rig-saved");
    HBox row =
        Controls.row(
            10,
            Controls.button(
                "rig-save", "Save report, chart and table", e -> saved.setText(write(found))));
    Calibration learnt = found.learnt();
    if (learnt != null) {
      row.getChildren()
          .add(
              Controls.button(
                  "rig-keep", "Keep the calibration", e -> saved.setText(keepCalibration(learnt))));
    }
    row.getChildren().add(saved);
    return row;
  }

  private String write(Compared found) {
    try {
      String name = ResultFolder.fileName(found.lip().name() + " at the rig");
      ResultFolder folder = ResultFolder.at(project.get().results().resolve(name));
      CompareFiles.write(
          folder,
          found.lip().name(),
          found.rig(),
          found.comparison(),
          found.learnt(),
          CompareDocument.text(
              found.lip().name(),
              found.rig(),
              found.comparison(),
              found.learnt(),
              found.seconds()));
      return folder.told();
    } catch (InputException e) {
      return e.problems().get(0).toString();
    }
  }

  /** Beside the lip files of the project, under the lip's name. */
  private String keepCalibration(Calibration learnt) {
    try {
      Path beside =
          CalibrationFile.beside(
              project.get().path().resolve(ResultFolder.fileName(learnt.lip()) + ".json"));
      CalibrationFile.write(beside, learnt);
      return "Kept in " + beside + " for the commands run, rank and balance.";
    } catch (InputException e) {
      return e.problems().get(0).toString();
    }
  }
}
