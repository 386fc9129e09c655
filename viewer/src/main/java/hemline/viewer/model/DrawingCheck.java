package hemline.viewer.model;

import hemline.shared.profile.LipDrawing;
import hemline.shared.profile.LipFindings;
import hemline.shared.profile.LipResolver;
import java.util.concurrent.Executor;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;

/**
 * What is wrong with a drawing, or the lip it makes. Thin parts take a while to find: during a drag
 * they are looked for in the background. All methods belong to the screen's thread.
 */
final class DrawingCheck {
  private final ReadOnlyObjectWrapper<LipFindings> findings;
  private final ThinPartCheck thinParts;
  private LipDrawing newest;
  private boolean roughly;

  /**
   * A check of a drawing.
   *
   * @param screen runs what must happen on the screen's thread
   * @param later runs when thin parts were found in the background
   */
  DrawingCheck(LipDrawing first, Executor screen, Runnable later) {
    newest = first;
    findings = new ReadOnlyObjectWrapper<>(LipResolver.check(first));
    thinParts =
        new ThinPartCheck(
            SolveThreads.solve("hemline-check"),
            (of, found) -> screen.execute(() -> found(of, found, later)));
  }

  ReadOnlyObjectProperty<LipFindings> findings() {
    return findings.getReadOnlyProperty();
  }

  /** Checks a drawing whole, at once. */
  void whole(LipDrawing drawing) {
    newest = drawing;
    roughly = false;
    findings.set(LipResolver.check(drawing));
  }

  /** Checks a drawing at once but for thin parts, which follow. */
  void shape(LipDrawing drawing) {
    newest = drawing;
    roughly = true;
    findings.set(LipResolver.checkShape(drawing).withThinParts(findings.get()));
    thinParts.ask(drawing);
  }

  /** Checks the drawing whole if thin parts are still to be found. */
  void finish() {
    if (roughly) {
      whole(newest);
    }
  }

  /** Thin parts of the newest drawing, or of one from some moments of the drag ago. */
  private void found(LipDrawing of, LipFindings found, Runnable later) {
    if (roughly) {
      roughly = !of.equals(newest);
      findings.set(roughly ? findings.get().withThinParts(found) : found);
      later.run();
    }
  }
}
