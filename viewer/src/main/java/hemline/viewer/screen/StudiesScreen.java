package hemline.viewer.screen;

import hemline.shared.problem.Problem;
import hemline.shared.profile.LipProfile;
import hemline.viewer.model.Setting;
import hemline.viewer.model.Shelf;
import hemline.viewer.model.StudyDesk;
import hemline.viewer.model.Workbench;
import hemline.viewer.project.ProjectFolder;
import hemline.viewer.project.StudyQuestion;
import java.util.ArrayList;
import java.util.List;
import java.util.function.BiConsumer;
import java.util.function.Supplier;
import javafx.scene.Parent;
import javafx.scene.control.Label;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;

/** Leak over gap, suction or ground speed, and rankings of lips. */
public final class StudiesScreen implements Screen {
  private final Workbench bench;
  private final StudyDesk desk;
  private final Shelf shelf;
  private final StudyForm form = new StudyForm();
  private final StudyResults results;
  private final AskPane pane;

  /**
   * A page for studies.
   *
   * @param project the folder that results go to
   * @param flows puts a lip under its conditions on the bench
   */
  public StudiesScreen(
      Workbench bench,
      StudyDesk desk,
      Shelf shelf,
      Supplier<ProjectFolder> project,
      BiConsumer<LipProfile, Setting> flows) {
    this.bench = bench;
    this.desk = desk;
    this.shelf = shelf;
    results = new StudyResults(desk, project, () -> bench.options().get().threads(), flows);
    pane = new AskPane("study", desk.work(), this::ask);
  }

  @Override
  public String title() {
    return "Studies";
  }

  @Override
  public void shown() {
    shelf.list(form::offer);
  }

  /** Brings back what was forgotten. */
  @Override
  public void undo() {
    desk.bringBack();
  }

  @Override
  public void setDark(boolean on) {
    results.view().setDark(on);
  }

  @Override
  public Parent createContent() {
    form.begin(bench.setting().get());
    Label kept = Controls.text("Kept in this project", "page-heading");
    Region list = new KeptStudies(desk, form::take).content();
    list.setMinHeight(80);
    list.setPrefHeight(200);
    VBox.setVgrow(list, Priority.ALWAYS);
    return pane.content(List.of(form.content()), List.of(kept, list), results.view());
  }

  private void ask() {
    List<Problem> problems = new ArrayList<>();
    StudyQuestion question = form.read(problems);
    if (question != null) {
      problems.addAll(desk.start(question, bench.options().get().threads()));
    }
    pane.fault(
        problems.isEmpty() ? "" : problems.get(0).place() + ": " + problems.get(0).text() + ".");
  }
}
