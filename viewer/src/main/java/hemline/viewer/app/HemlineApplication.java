package hemline.viewer.app;

import hemline.shared.file.LipFile;
import hemline.shared.file.LipImport;
import hemline.shared.problem.InputException;
import hemline.shared.profile.LipDrawing;
import hemline.solver.refine.FamilySolver;
import hemline.viewer.model.Workbench;
import java.nio.file.Path;
import java.util.List;
import javafx.application.Application;
import javafx.application.Platform;
import javafx.scene.Scene;
import javafx.stage.Stage;

/** The window as a program. Its one argument, if any, is a lip file. */
public final class HemlineApplication extends Application {

  @Override
  public void start(Stage stage) throws InputException {
    Examples examples = Examples.of(Path.of(System.getProperty("hemline.profiles", "profiles")));
    List<String> given = getParameters().getRaw();
    LipDrawing first = given.isEmpty() ? examples.first() : read(Path.of(given.get(0)));
    Workbench bench = new Workbench(first, new FamilySolver(), Platform::runLater);
    HemlineWindow window = new HemlineWindow(bench, examples);
    Scene scene = window.createScene();
    stage.setScene(scene);
    bench.drawing().subscribe(d -> stage.setTitle(d.name() + " \u2013 Hemline"));
    stage.setOnHidden(e -> bench.stop());
    stage.show();
    window.benchScreen().board().requestFocus();
  }

  private static LipDrawing read(Path file) throws InputException {
    return LipImport.isDrawing(file) ? LipImport.load(file).drawing() : LipFile.read(file);
  }
}
