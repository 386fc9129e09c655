package hemline.viewer.screen;

import hemline.shared.problem.InputException;
import hemline.shared.problem.Problem;
import hemline.shared.profile.LipDrawing;
import hemline.shared.profile.LipProfile;
import hemline.shared.section.SealSection;
import hemline.solver.improve.ImproveStudy;
import hemline.solver.improve.Improvement;
import hemline.solver.improve.LeakGoal;
import hemline.viewer.format.Digits;
import hemline.viewer.model.ImproveDesk;
import hemline.viewer.model.ImproveDesk.Question;
import hemline.viewer.model.ImproveDesk.State;
import hemline.viewer.model.Setting;
import hemline.viewer.model.Shelf;
import hemline.viewer.model.Workbench;
import hemline.viewer.page.ImprovePage;
import hemline.viewer.page.Page;
import hemline.viewer.picture.ImproveChart;
import hemline.viewer.project.ProjectFolder;
import hemline.viewer.report.ImproveDocument;
import hemline.viewer.report.ImproveFiles;
import hemline.viewer.report.ResultFolder;
import java.util.ArrayList;
import java.util.List;
import java.util.function.BiConsumer;
import java.util.function.Supplier;
import javafx.scene.Node;
import javafx.scene.Parent;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import org.jspecify.annotations.Nullable;

/** A search for a lip that leaks less, and its proof. */
public final class ImproveScreen implements Screen {
  private final Workbench bench;
  private final ImproveDesk desk;
  private final Shelf shelf;
  private final Supplier<ProjectFolder> project;
  private final BiConsumer<LipProfile, Setting> flows;
  private final ImproveForm form = new ImproveForm();
  private final AskPane pane;
  private final PageView view =
      new PageView(
          "improve",
          "Choose a lip, say what your printer and your skirt allow and press Start: other lips"
              + " are tried on coarse grids, and the best are solved anew on finer ones with a"
              + " second turbulence model. Only a gain beyond the bands counts as one.");

  /**
   * A page for searches.
   *
   * @param project the folder that results go to
   * @param flows puts a lip under its conditions on the bench
   */
  public ImproveScreen(
      Workbench bench,
      ImproveDesk desk,
      Shelf shelf,
      Supplier<ProjectFolder> project,
      BiConsumer<LipProfile, Setting> flows) {
    this.bench = bench;
    this.desk = desk;
    this.shelf = shelf;
    this.project = project;
    this.flows = flows;
    pane = new AskPane("improve", desk.work(), this::ask);
  }

  @Override
  public String title() {
    return "Improve";
  }

  @Override
  public void shown() {
    shelf.list(form::offer);
  }

  @Override
  public void setDark(boolean on) {
    view.setDark(on);
  }

  @Override
  public Parent createContent() {
    form.begin(bench.setting().get());
    Parent content = pane.content(List.of(form.content()), List.of(), view);
    desk.state().subscribe(this::show);
    ShownUnit.follow(view.content(), () -> show(desk.state().get()));
    desk.work().running().subscribe(on -> show(desk.state().get()));
    return content;
  }

  private void ask() {
    LipProfile lip = form.start();
    if (lip == null) {
      pane.fault("Lips are still being read; try again in a moment.");
      return;
    }
    shelf.drawing(lip, drawing -> ask(lip, drawing));
  }

  private void ask(LipProfile lip, LipDrawing drawing) {
    List<Problem> problems = new ArrayList<>();
    Question question = form.read(lip, drawing, bench.options().get().threads(), problems);
    pane.fault(
        problems.isEmpty() ? "" : problems.get(0).place() + ": " + problems.get(0).text() + ".");
    if (question != null) {
      desk.start(question);
    }
  }

  private void show(@Nullable State state) {
    if (state == null) {
      view.show(null);
      return;
    }
    Improvement found = state.found();
    ImproveStudy.Asked asked = state.question().asked();
    if (found != null) {
      Label saved = Controls.message("improve-saved", "quiet");
      String made =
          found.history().size() + " lips tried, " + Digits.plain(state.seconds(), 2) + " s";
      view.show(
          ImprovePage.of(found), tools(state, found, saved), saved, Controls.text(made, "quiet"));
      return;
    }
    Page page = new Page("Better than " + asked.start().name());
    if (!state.tried().isEmpty()) {
      page.plot(
          () -> ImproveChart.of(asked.start().name(), asked.goal(), state.tried()),
          "leak of each lip tried so far over that of the start");
    }
    if (desk.work().running().get() || state.tried().isEmpty()) {
      view.show(page.quiet(state.tried().size() + " of " + asked.evaluations() + " lips tried"));
    } else {
      view.show(page, goOn(state.question()));
    }
  }

  private Node goOn(Question question) {
    return Controls.row(Controls.button("improve-go-on", "Go on", e -> desk.start(question)));
  }

  private Node tools(State state, Improvement found, Label saved) {
    var row =
        Controls.row(
            Controls.button(
                "improve-save",
                "Save lips, report and coupons",
                e -> saved.setText(write(state, found))));
    Improvement.Found best = found.best();
    if (best != null && found.asked().goal() instanceof LeakGoal goal) {
      Button open =
          Controls.button(
              "improve-open",
              "Show " + best.profile().name() + " on the bench",
              e -> flows.accept(best.profile(), setting(goal)));
      row.getChildren().add(0, open);
    }
    return row;
  }

  private static Setting setting(LeakGoal goal) {
    SealSection at = goal.conditions();
    return new Setting(
        at.gap(),
        at.suction(),
        at.ground().speed(),
        at.ground().spanwiseSpeed(),
        Setting.temperature(at.fluid()));
  }

  private String write(State state, Improvement found) {
    try {
      String name = ResultFolder.fileName("better than " + found.asked().start().name());
      ResultFolder folder = ResultFolder.at(project.get().results().resolve(name));
      ImproveFiles.write(folder, found, ImproveDocument.text(found, state.seconds()));
      return folder.told();
    } catch (InputException e) {
      return e.problems().get(0).toString();
    }
  }
}
