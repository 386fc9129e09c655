package hemline.viewer.app;

import hemline.shared.problem.InputException;
import hemline.shared.profile.Starter;
import hemline.solver.refine.FamilySolver;
import hemline.solver.study.ResultStore;
import hemline.viewer.edit.Corner;
import hemline.viewer.edit.LipEdit;
import hemline.viewer.model.LipDocument;
import hemline.viewer.model.Surely;
import hemline.viewer.model.Workbench;
import hemline.viewer.project.RecentPlaces;
import hemline.viewer.project.RescueStore;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.SplittableRandom;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import javafx.animation.PauseTransition;
import javafx.application.Platform;
import javafx.scene.control.Button;
import javafx.stage.Stage;
import javafx.util.Duration;

/**
 * The window on the lip of a project, edited without end: what was left is recovered, then the lip
 * is changed at random times and sometimes saved. Tells on standard output what it is sure of;
 * somebody else ends it.
 */
public final class KilledWindow {
  /** Width of the lip after no edit, m, and what each edit adds. */
  public static final double WIDTH = 8e-3;

  public static final double STEP = 1e-6;

  private final Workbench bench;
  private final Project project;
  private final HemlineWindow window;
  private final LipDocument document;
  private final SplittableRandom random;
  private final boolean restless;
  private final boolean saves;
  private long edits;

  private KilledWindow(Path folder, long seed) throws InputException {
    random = new SplittableRandom(seed);
    restless = seed % 3 == 0;
    saves = seed >= 0;
    FamilySolver solver = new FamilySolver();
    bench = new Workbench(new Starter.Flat(WIDTH, 10e-3).drawing(), solver, Platform::runLater);
    Examples examples = Examples.of(folder.resolve("none"));
    project =
        new Project(
            bench,
            examples,
            solver,
            folder,
            new RecentPlaces(folder.resolve("settings/recent.json")),
            RescueStore::new,
            ResultStore.none(),
            () -> "this build");
    document = project.document();
    window = new HemlineWindow(project, examples, new SetAnswer());
    Path lip = folder.resolve("lip.json");
    if (Files.exists(lip)) {
      document.open(LipDocument.read(lip));
    } else {
      document.saveAs(lip, new Surely(() -> {}));
    }
  }

  /**
   * Edits.
   *
   * @param args project folder, seed of the times; every third seed never rests, one below 0 never
   *     saves
   */
  public static void main(String[] args) {
    Platform.startup(
        () -> {
          try {
            new KilledWindow(Path.of(args[0]), Long.parseLong(args[1])).show();
          } catch (InputException e) {
            System.out.println("refused " + e.getMessage());
          }
        });
  }

  private void show() {
    Stage stage = new Stage();
    stage.setScene(window.createScene());
    window.pages().lookAfter(stage);
    stage.show();
    begin(stage, document.left().drawings().isEmpty());
  }

  /** Begins when what was left by the window before is recovered. */
  private void begin(Stage stage, boolean recovered) {
    if (!recovered) {
      boolean asked =
          stage.getScene().lookup("#strip-recover") instanceof Button recover
              && recover.getParent().isVisible();
      if (asked) {
        ((Button) stage.getScene().lookup("#strip-recover")).fire();
      }
      later(Duration.millis(50), () -> begin(stage, asked));
      return;
    }
    edits = Math.round((bench.drawing().get().body().at(1).x() - WIDTH) / STEP);
    System.out.println("begins " + edits);
    Thread watch = new Thread(this::watch, "watch");
    watch.setDaemon(true);
    watch.start();
    later(Duration.millis(random.nextInt(500)), this::edit);
  }

  private void edit() {
    long now = ++edits;
    double x = WIDTH + now * STEP;
    bench.edit(d -> LipEdit.move(d, List.of(new Corner(0, 1)), x - d.body().at(1).x(), 0));
    System.out.println("edit " + now);
    if (saves && random.nextInt(restless ? 80 : 8) == 0) {
      save();
    }
    // what comes after the window's own work in the same beat waits for it
    later(ProjectPages.QUIET, () -> Platform.runLater(() -> settled(now, edits)));
    later(ProjectPages.LONGEST, () -> Platform.runLater(() -> settled(now, now)));
    boolean rest = !restless && random.nextInt(6) == 0;
    later(Duration.millis(rest ? 3000 : random.nextInt(300)), this::edit);
  }

  /** Tells the longest time that the screen's thread took to get to a task. */
  private void watch() {
    long longest = 0;
    try {
      while (true) {
        CountDownLatch done = new CountDownLatch(1);
        long asked = System.nanoTime();
        Platform.runLater(done::countDown);
        done.await();
        long late = TimeUnit.NANOSECONDS.toMillis(System.nanoTime() - asked);
        if (late > longest) {
          longest = late;
          System.out.println("late " + late);
        }
        Thread.sleep(50);
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  private void save() {
    long now = edits;
    document.save(new Surely(() -> System.out.println("saved " + now)));
  }

  private void settled(long edit, long last) {
    if (edit == last) {
      project.writer().execute(() -> System.out.println("settled " + edit));
    }
  }

  private static void later(Duration time, Runnable work) {
    PauseTransition pause = new PauseTransition(time.add(Duration.millis(100)));
    pause.setOnFinished(e -> work.run());
    pause.play();
  }
}
