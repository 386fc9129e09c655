package hemline.viewer.app;

import hemline.shared.file.LipFile;
import hemline.shared.file.LipImport;
import hemline.shared.problem.InputException;
import hemline.shared.profile.LipDrawing;
import hemline.solver.refine.FamilySolver;
import hemline.viewer.model.Workbench;
import hemline.viewer.project.Engine;
import hemline.viewer.project.LeakFolder;
import hemline.viewer.project.ProjectFolder;
import hemline.viewer.project.RecentPlaces;
import hemline.viewer.project.RescueStore;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
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

  /** After this time the first frames are painted. */
  private static final Duration SEEN = Duration.seconds(1);

  @Override
  public void start(Stage stage) throws InputException {
    Examples examples = Examples.of(Path.of(System.getProperty("hemline.profiles", "profiles")));
    List<String> given = getParameters().getRaw();
    Path place = given.isEmpty() ? null : Path.of(given.get(0)).toAbsolutePath();
    Path file = place == null || Files.isDirectory(place) ? null : place;
    LipDrawing first = file == null ? examples.first() : read(file);
    FamilySolver solver = new FamilySolver();
    Workbench bench = new Workbench(first, solver, Platform::runLater);
    String home =
        ProjectFolder.home(System.getenv(), System.getProperty("user.home", "")).toString();
    Project project =
        new Project(
            bench,
            examples,
            solver,
            folder(place, file, home),
            new RecentPlaces(RecentPlaces.usualStore(System.getenv(), home)),
            RescueStore::new,
            new LeakFolder(LeakFolder.usual(), Engine.fingerprint()),
            Engine::fingerprint);
    if (file != null && !LipImport.isDrawing(file)) {
      project.document().belongsTo(file);
    }
    HemlineWindow window = new HemlineWindow(project, examples, new ChooserAsk(() -> stage));
    stage.setScene(window.createScene());
    ProjectPages pages = window.pages();
    if (pages != null) {
      pages.lookAfter(stage);
    }
    Rectangle2D room = Screen.getPrimary().getVisualBounds();
    stage.setWidth(Math.min(WIDTH, room.getWidth()));
    stage.setHeight(Math.min(HEIGHT, room.getHeight()));
    stage.show();
    window.benchScreen().board().requestFocus();
    StartClock.tellFirstFrame();
    afterFirstFrames(examples::readAhead);
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

  private static LipDrawing read(Path file) throws InputException {
    return LipImport.isDrawing(file) ? LipImport.read(file).drawing() : LipFile.read(file);
  }
}
