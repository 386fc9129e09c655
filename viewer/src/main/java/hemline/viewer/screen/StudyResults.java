package hemline.viewer.screen;

import hemline.shared.problem.InputException;
import hemline.shared.profile.LipProfile;
import hemline.shared.result.SectionResult;
import hemline.viewer.format.Digits;
import hemline.viewer.model.Setting;
import hemline.viewer.model.StudyDesk;
import hemline.viewer.project.KeptStudy;
import hemline.viewer.project.ProjectFolder;
import hemline.viewer.project.StudyFiles;
import hemline.viewer.project.StudyPage;
import hemline.viewer.project.StudyQuestion;
import hemline.viewer.report.ResultFolder;
import java.util.Optional;
import java.util.function.BiConsumer;
import java.util.function.IntSupplier;
import java.util.function.Supplier;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.layout.HBox;
import org.jspecify.annotations.Nullable;

/** The study on show, with what can be done with it. */
final class StudyResults {
  private final StudyDesk desk;
  private final Supplier<ProjectFolder> project;
  private final IntSupplier threads;
  private final BiConsumer<LipProfile, Setting> flows;
  private final Label saved = Controls.message("study-saved", "quiet");
  private final Label running = Controls.message("study-running", "caution");
  private final PageView view =
      new PageView(
          "study",
          "Choose on the left what to follow and press Start. Every point is solved on three grids;"
              + " its bar shows how far the figure can be trusted, and only bars that stay apart"
              + " tell two lips apart.");

  /**
   * A view of the desk's study.
   *
   * @param project the folder that results go to
   * @param threads solves running at once
   * @param flows puts a lip under its conditions on the bench
   */
  StudyResults(
      StudyDesk desk,
      Supplier<ProjectFolder> project,
      IntSupplier threads,
      BiConsumer<LipProfile, Setting> flows) {
    this.desk = desk;
    this.project = project;
    this.threads = threads;
    this.flows = flows;
    view.opensFlowsBy(this::open);
    view.picturesLipsBy(this::lip);
    desk.shown().subscribe(this::show);
    desk.work().running().subscribe(on -> mark());
    ShownUnit.follow(view.content(), () -> show(desk.shown().get()));
  }

  PageView view() {
    return view;
  }

  /** Tells whether what is on show is the study that runs or one before it. */
  private void mark() {
    KeptStudy study = desk.shown().get();
    StudyQuestion asked = desk.asked();
    running.setText(
        study == null || asked == null
            ? ""
            : study.question().equals(asked)
                ? "Still running: these are the points so far."
                : "This is the study before; the new one has no points yet.");
  }

  private void show(@Nullable KeptStudy study) {
    saved.setText("");
    mark();
    if (study == null) {
      view.show(null);
      return;
    }
    String made = KeptStudies.when(study) + ", " + Digits.plain(study.run().seconds(), 2) + " s";
    view.show(StudyPage.of(study), running, tools(study), saved, Controls.text(made, "quiet"));
  }

  private void open(SectionResult section) {
    KeptStudy study = desk.shown().get();
    if (study != null) {
      lip(section)
          .ifPresent(lip -> flows.accept(lip, Setting.of(section, study.question().held().air())));
    }
  }

  private Optional<LipProfile> lip(SectionResult section) {
    KeptStudy study = desk.shown().get();
    return study == null ? Optional.empty() : study.question().lip(section.name());
  }

  private HBox tools(KeptStudy study) {
    HBox tools =
        Controls.row(
            Controls.button("study-save", "Save report, charts and tables", e -> save(study)),
            Controls.button("study-forget", "Forget", e -> desk.remove(study)));
    if (!study.complete()) {
      Button on =
          Controls.button(
              "study-go-on", "Go on", e -> desk.start(study.question(), threads.getAsInt()));
      on.disableProperty().bind(desk.work().running());
      tools.getChildren().add(0, on);
    }
    return tools;
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
}
