package hemline.viewer.app;

import hemline.shared.problem.InputException;
import hemline.solver.refine.FamilySolver;
import hemline.viewer.model.LipDocument;
import hemline.viewer.model.Workbench;
import hemline.viewer.project.Engine;
import hemline.viewer.project.KeptFolder;
import hemline.viewer.project.KeptResults;
import hemline.viewer.project.ProjectFolder;
import hemline.viewer.project.RecentPlaces;
import hemline.viewer.project.RescueStore;
import hemline.viewer.project.SectionStore;
import hemline.viewer.project.UserChoices;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Objects;
import javafx.animation.PauseTransition;
import javafx.application.Application;
import javafx.application.Platform;
import javafx.geometry.Rectangle2D;
import javafx.stage.Screen;
import javafx.stage.Stage;
import javafx.util.Duration;
import org.jspecify.annotations.Nullable;

/** The window as a program. Its one argument, if any, is a lip file or a project folder. */
public final class HemlineApplication extends Application {
  private static final double WIDTH = 1280;
  private static final double HEIGHT = 800;

  /** Smaller it cannot be used. */
  private static final double LEAST_WIDTH = 900;

  private static final double LEAST_HEIGHT = 640;

  /** After this time the first frames are painted. */
  private static final Duration SEEN = Duration.seconds(1);

  private @Nullable Examples examples;
  private @Nullable Path folder;
  private @Nullable RecentPlaces recent;
  private @Nullable UserChoices choices;
  private boolean novice;
  private LipDocument.@Nullable Opened first;

  /** Reads what the window begins with, before there is one: the screen's thread reads no files. */
  @Override
  public void init() throws InputException {
    Examples shipped = Examples.of(Path.of(System.getProperty("hemline.profiles", "profiles")));
    List<String> given = getParameters().getRaw();
    Path place = given.isEmpty() ? null : Path.of(given.get(0)).toAbsolutePath();
    Path file = place == null || Files.isDirectory(place) ? null : place;
    String home =
        ProjectFolder.home(System.getenv(), System.getProperty("user.home", "")).toString();
    choices = UserChoices.usual(System.getenv(), home);
    novice = choices.get(UserChoices.STEPS).isEmpty();
    RecentPlaces places = RecentPlaces.usual(System.getenv(), home);
    LipDocument.Opened opened =
        file == null ? new LipDocument.Opened(shipped.first(), null, "") : LipDocument.read(file);
    if (opened.file() != null) {
      places.used(opened.file());
    }
    examples = shipped;
    folder = folder(place, file, home);
    recent = places;
    first = opened;
  }

  @Override
  public void start(Stage stage) {
    Examples shipped = Objects.requireNonNull(examples);
    LipDocument.Opened opened = Objects.requireNonNull(first);
    FamilySolver solver = new FamilySolver();
    Workbench bench = new Workbench(opened.lip(), solver, Platform::runLater);
    Project project =
        new Project(
            bench,
            shipped,
            new SectionStore(KeptFolder.SECTIONS.place(), Engine.fingerprint()).over(solver, false),
            Objects.requireNonNull(folder),
            Objects.requireNonNull(recent),
            RescueStore::new,
            KeptResults.leaks(KeptFolder.LEAKS.place(), Engine.fingerprint()),
            Engine::fingerprint);
    if (opened.file() != null) {
      project.document().belongsTo(opened);
    }
    HemlineWindow window = new HemlineWindow(project, shipped, new ChooserAsk(() -> stage));
    window.remember(Objects.requireNonNull(choices), novice);
    stage.setScene(window.createScene());
    ProjectPages pages = window.pages();
    if (pages != null) {
      pages.lookAfter(stage);
    }
    Rectangle2D room = room(Screen.getPrimary().getVisualBounds(), Screen.getPrimary().getBounds());
    stage.setWidth(Math.min(WIDTH, room.getWidth()));
    stage.setHeight(Math.min(HEIGHT, room.getHeight()));
    stage.setMinWidth(Math.min(LEAST_WIDTH, room.getWidth()));
    stage.setMinHeight(Math.min(LEAST_HEIGHT, room.getHeight()));
    stage.show();
    window.benchScreen().board().requestFocus();
    StartClock.tellFirstFrame();
    afterFirstFrames(shipped::readAhead);
  }

  /** Room for the window: some window managers tell of none beside their own bars. */
  static Rectangle2D room(Rectangle2D beside, Rectangle2D whole) {
    boolean usable = beside.getWidth() >= LEAST_WIDTH && beside.getHeight() >= LEAST_HEIGHT;
    return usable ? beside : whole;
  }

  /** What can wait until the window is seen. */
  private static void afterFirstFrames(Runnable work) {
    PauseTransition pause = new PauseTransition(SEEN);
    pause.setOnFinished(e -> work.run());
    pause.play();
  }

  /** The folder given, that of the file given, or the usual one at home. */
  private static Path folder(@Nullable Path place, @Nullable Path file, String home) {
    if (place == null) {
      return Path.of(home).resolve("hemline");
    }
    Path parent = place.getParent();
    return file == null || parent == null ? place : parent;
  }
}
