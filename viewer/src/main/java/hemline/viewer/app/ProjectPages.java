package hemline.viewer.app;

import hemline.shared.profile.LipProfile;
import hemline.viewer.model.ImproveDesk;
import hemline.viewer.model.MachineDesk;
import hemline.viewer.model.RigDesk;
import hemline.viewer.model.Setting;
import hemline.viewer.project.MachineRescue;
import hemline.viewer.screen.BenchScreen;
import hemline.viewer.screen.GuideScreen;
import hemline.viewer.screen.ImproveScreen;
import hemline.viewer.screen.LaterScreen;
import hemline.viewer.screen.MachineFiles;
import hemline.viewer.screen.MachineScreen;
import hemline.viewer.screen.NoticeStrip;
import hemline.viewer.screen.RigScreen;
import hemline.viewer.screen.Screen;
import hemline.viewer.screen.StudiesScreen;
import java.time.Clock;
import java.util.List;
import java.util.function.BiConsumer;
import javafx.animation.Animation;
import javafx.animation.PauseTransition;
import javafx.application.Platform;
import javafx.scene.control.Menu;
import javafx.stage.Stage;
import javafx.util.Duration;

/** Everything of the window that belongs to a project: further pages, the file menu, autosave. */
public final class ProjectPages {
  /** An unsaved drawing is put by when nothing was changed for this long, ... */
  static final Duration QUIET = Duration.seconds(1.5);

  /** ... and at the latest this long after its first change, for hands that never rest. */
  static final Duration LONGEST = Duration.seconds(10);

  private final Project project;
  private final NoticeStrip strip;
  private final FileMenu files;
  private final MachineDesk machines;
  private final RigDesk rigs;
  private final GuideScreen guide = new GuideScreen();
  private final ImproveDesk searches;
  private final List<Screen> screens;
  private final PauseTransition quiet = new PauseTransition(QUIET);
  private final PauseTransition longest = new PauseTransition(LONGEST);

  /**
   * Pages of a project.
   *
   * @param flows puts a lip under its conditions on the bench
   */
  ProjectPages(
      Project project,
      BenchScreen bench,
      NoticeStrip strip,
      FileAsk ask,
      BiConsumer<LipProfile, Setting> flows) {
    this.project = project;
    this.strip = strip;
    this.files = new FileMenu(project, bench, strip, ask);
    this.machines =
        new MachineDesk(project.family(), project.leaks(), Platform::runLater, Clock.systemUTC());
    this.rigs = new RigDesk(project.family(), Platform::runLater, Clock.systemUTC());
    this.searches =
        new ImproveDesk(project.family(), project::searched, Platform::runLater, Clock.systemUTC());
    this.screens =
        List.of(
            new LaterScreen(
                "Studies",
                () ->
                    new StudiesScreen(
                        project.bench(),
                        project.studies(),
                        project.shelf(),
                        project::folder,
                        flows)),
            new LaterScreen(
                "Improve",
                () ->
                    new ImproveScreen(
                        project.bench(), searches, project.shelf(), project::folder, flows)),
            new LaterScreen(
                "Machine",
                () ->
                    new MachineScreen(
                        machines,
                        new MachineFiles(
                            project::machineFiles,
                            project::lipFiles,
                            () -> ask.machine(project.folder().path()),
                            place -> ask.target(place, "Machines", ".json")),
                        project.shelf(),
                        Reading::beside,
                        project::folder,
                        () -> new MachineRescue(project.folder().machineRescue()),
                        project.writer(),
                        strip,
                        project.bench().options().get().threads())),
            new LaterScreen(
                "Rig",
                () ->
                    new RigScreen(
                        rigs,
                        project.shelf(),
                        () -> ask.rig(project.folder().path()),
                        project::folder,
                        project.bench().options().get().threads())),
            new LaterScreen("Guide", () -> guide));
    quiet.setOnFinished(e -> putBy());
    longest.setOnFinished(e -> putBy());
    project.bench().drawing().subscribe(d -> changed());
    project.bench().setting().subscribe(s -> changed());
    project.bench().beside().subscribe(lips -> changed());
  }

  List<Screen> screens() {
    return screens;
  }

  GuideScreen guide() {
    return guide;
  }

  Menu file() {
    return files.menu();
  }

  /** Searches for better lips. */
  public ImproveDesk searches() {
    return searches;
  }

  /** Balances of machines. */
  public MachineDesk machines() {
    return machines;
  }

  public FileMenu files() {
    return files;
  }

  /** Title, the question before closing and what was left by a crash. */
  void lookAfter(Stage stage) {
    Runnable title = () -> stage.setTitle(files.title());
    project.bench().drawing().subscribe(title);
    project.document().unsaved().subscribe(title);
    project.document().file().subscribe(title);
    title.run();
    stage.setOnCloseRequest(
        e -> {
          e.consume();
          files.leaving(stage::hide);
        });
    stage.setOnHidden(
        e -> {
          quiet.stop();
          longest.stop();
          machines.work().stop();
          rigs.work().stop();
          searches.work().stop();
          project.close();
        });
    files.offerRecovery();
  }

  private void changed() {
    quiet.playFromStart();
    if (longest.getStatus() != Animation.Status.RUNNING) {
      longest.playFromStart();
    }
  }

  private void putBy() {
    longest.stop();
    project
        .document()
        .putBy(e -> Platform.runLater(() -> strip.tell(e.problems().get(0).toString())));
  }
}
