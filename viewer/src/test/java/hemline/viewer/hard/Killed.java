package hemline.viewer.hard;

import hemline.shared.file.LipFile;
import hemline.shared.profile.LipDrawing;
import hemline.shared.profile.Starter;
import hemline.solver.refine.FamilySolver;
import hemline.viewer.app.KilledWindow;
import hemline.viewer.edit.Corner;
import hemline.viewer.edit.LipEdit;
import hemline.viewer.model.LipDocument;
import hemline.viewer.model.Surely;
import hemline.viewer.model.Workbench;
import hemline.viewer.project.ProjectFolder;
import hemline.viewer.project.RecentPlaces;
import hemline.viewer.project.RescueStore;
import java.nio.file.Path;
import java.time.Clock;
import java.util.List;

/**
 * Edits a lip without end, as a window does but without one: puts every edit by, saves every fifth,
 * and tells on standard output what it is sure of. Somebody else ends it.
 */
final class Killed {
  private static final int SAVE = 5;

  private Killed() {}

  /**
   * Edits.
   *
   * @param args project folder
   */
  public static void main(String[] args) throws Exception {
    Path folder = Path.of(args[0]);
    LipDrawing first = new Starter.Flat(KilledWindow.WIDTH, 10e-3).drawing();
    Workbench bench = new Workbench(first, new FamilySolver(), task -> {});
    RescueStore rescue = new RescueStore(new ProjectFolder(folder).rescue());
    RecentPlaces recent = new RecentPlaces(folder.resolve("settings/recent.json"));
    LipDocument document =
        new LipDocument(bench, rescue, recent, Clock.systemUTC(), Runnable::run, Runnable::run);
    document.saveAs(folder.resolve("lip.json"), new Surely(() -> System.out.println("saved 0")));
    for (int k = 1; ; k++) {
      double x = KilledWindow.WIDTH + k * KilledWindow.STEP;
      bench.edit(d -> LipEdit.move(d, List.of(new Corner(0, 1)), x - d.body().at(1).x(), 0));
      document.putBy(
          e -> {
            throw new IllegalStateException(e);
          });
      System.out.println("put " + k);
      if (k % SAVE == 0) {
        int now = k;
        document.save(new Surely(() -> System.out.println("saved " + now)));
      }
    }
  }

  /** The number of edits that a drawing has. */
  static long edits(LipDrawing drawing) {
    return Math.round((drawing.body().at(1).x() - KilledWindow.WIDTH) / KilledWindow.STEP);
  }

  /** The number of edits that a lip file holds. */
  static long edits(Path file) throws Exception {
    return edits(LipFile.read(file));
  }
}
