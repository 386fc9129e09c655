package hemline.viewer.picture;

import hemline.viewer.picture.Sheet.Pen;
import java.awt.geom.Path2D;
import java.util.ArrayList;
import java.util.List;

/**
 * Contour lines of the streamfunction: those between ground and lip carry the leak, those beyond
 * close on themselves and mark trapped vortices.
 */
final class Streamlines {
  /** Parts of the leak between neighbouring lines. */
  static final int TUBES = 10;

  /** Weakest vortex line, as a share of the leak beyond it. */
  static final double FIRST_EXCESS = 0.02;

  private static final double GROWTH = 2;
  private static final int MOST_EXCESSES = 12;
  private static final double NO_LEAK = 1e-6;
  static final Pen THROUGH = new Pen(Ink.THROUGH, 1, 1.25);
  static final Pen VORTEX = new Pen(Ink.VORTEX, 1, 1.4, 7, 3);
  private static final Pen CASING = new Pen(Ink.PAPER, 0.4, 2.8);

  private final List<Contours.Line> through = new ArrayList<>();
  private final List<Contours.Line> vortices = new ArrayList<>();
  private final boolean leaking;

  /**
   * Traces the lines.
   *
   * @param field pressure and streamfunction. Not modified.
   * @param leak streamfunction of the upper wall, m²/s; of either sign, or 0 in a closed cavity
   */
  Streamlines(GridField field, double leak) {
    double low = Double.POSITIVE_INFINITY;
    double high = Double.NEGATIVE_INFINITY;
    for (double psi : field.streamfunction()) {
      low = Math.min(low, psi);
      high = Math.max(high, psi);
    }
    Contours contours = new Contours(field.sx(), field.sy(), field.streamfunction());
    leaking = Math.abs(leak) > NO_LEAK * (high - low);
    if (leaking) {
      for (int k = 1; k < TUBES; k++) {
        through.addAll(contours.lines(leak * k / TUBES));
      }
    }
    double unit = leaking ? Math.abs(leak) : high - low;
    double excess = FIRST_EXCESS;
    for (int k = 0; k < MOST_EXCESSES && unit > 0; k++, excess *= GROWTH) {
      vortices.addAll(contours.lines(Math.max(0, leak) + excess * unit));
      vortices.addAll(contours.lines(Math.min(0, leak) - excess * unit));
    }
  }

  boolean leaking() {
    return leaking;
  }

  boolean anyVortex() {
    return !vortices.isEmpty();
  }

  void paint(Sheet sheet, Projection view) {
    Path2D trapped = path(vortices, view);
    sheet.stroke(trapped, CASING);
    sheet.stroke(trapped, VORTEX);
    sheet.stroke(path(through, view), THROUGH);
    paintHeads(sheet, view);
  }

  private void paintHeads(Sheet sheet, Projection view) {
    Path2D heads = new Path2D.Double();
    for (Contours.Line line : through) {
      if (Arrows.visibleLength(line, view) > 120) {
        heads.append(Arrows.on(line, view, 0.15, 8), false);
        heads.append(Arrows.on(line, view, 0.8, 8), false);
      }
    }
    sheet.fill(heads, Ink.THROUGH, 1);
    Path2D turning = new Path2D.Double();
    for (Contours.Line line : vortices) {
      if (Arrows.visibleLength(line, view) > 90) {
        turning.append(Arrows.on(line, view, 0.5, 8), false);
      }
    }
    sheet.fill(turning, Ink.VORTEX, 1);
  }

  private static Path2D path(List<Contours.Line> lines, Projection view) {
    Path2D path = new Path2D.Double();
    for (Contours.Line line : lines) {
      view.appendSmooth(path, line);
    }
    return path;
  }
}
