package hemline.viewer.picture;

import hemline.viewer.picture.Sheet.Pen;
import java.awt.geom.Path2D;
import java.util.ArrayList;
import java.util.List;

/**
 * Contour lines of the streamfunction: those that lead from side to side between ground and lip
 * carry the leak; those that close on themselves, or lie beyond the leak, mark trapped vortices.
 */
public final class Streamlines {
  /** Parts into which the leak is divided, finest first. */
  private static final int[] TUBES = {10, 5, 4, 2};

  /** Least distance between two lines in the gap, sheet units. */
  private static final double LEAST_SPACING = 2.8;

  /** Weakest vortex line, as a share of the leak beyond it. */
  public static final double FIRST_EXCESS = 0.02;

  private static final double GROWTH = 2;
  private static final int MOST_EXCESSES = 12;
  private static final double NO_LEAK = 1e-6;
  public static final Pen THROUGH = new Pen(Ink.THROUGH, 1, 1.25);
  public static final Pen VORTEX = new Pen(Ink.VORTEX, 1, 1.4, 7, 3);
  private static final Pen CASING = new Pen(Ink.PAPER, 0.4, 2.8);

  private final List<Contours.Line> through = new ArrayList<>();
  private final List<Contours.Line> vortices = new ArrayList<>();
  private final boolean leaking;
  private final int tubes;

  /**
   * Traces the lines.
   *
   * @param field pressure and streamfunction. Not modified.
   * @param leak streamfunction of the upper wall, m²/s; of either sign, or 0 in a closed cavity
   * @param room height of the gap on the sheet, sheet units
   */
  public Streamlines(GridField field, double leak, double room) {
    this(field, leak, tubes(room));
  }

  /**
   * Traces the lines.
   *
   * @param field pressure and streamfunction. Not modified.
   * @param leak streamfunction of the upper wall, m²/s; of either sign, or 0 in a closed cavity
   * @param tubes parts into which the leak is divided, 2 or more
   */
  public Streamlines(GridField field, double leak, int tubes) {
    this.tubes = tubes;
    double low = Double.POSITIVE_INFINITY;
    double high = Double.NEGATIVE_INFINITY;
    for (double psi : field.streamfunction()) {
      low = Math.min(low, psi);
      high = Math.max(high, psi);
    }
    Contours contours = new Contours(field.sx(), field.sy(), field.streamfunction());
    leaking = Math.abs(leak) > NO_LEAK * (high - low);
    for (int k = 1; k < tubes && leaking; k++) {
      for (Contours.Line line : contours.lines(leak * k / tubes)) {
        (line.closed() ? vortices : through).add(line);
      }
    }
    double unit = leaking ? Math.abs(leak) : high - low;
    double excess = FIRST_EXCESS;
    for (int k = 0; k < MOST_EXCESSES && unit > 0; k++, excess *= GROWTH) {
      vortices.addAll(contours.lines(Math.max(0, leak) + excess * unit));
      vortices.addAll(contours.lines(Math.min(0, leak) - excess * unit));
    }
  }

  private static int tubes(double room) {
    for (int tubes : TUBES) {
      if (room / tubes >= LEAST_SPACING) {
        return tubes;
      }
    }
    return TUBES[TUBES.length - 1];
  }

  public boolean leaking() {
    return leaking;
  }

  /** The part of the leak between neighbouring lines, in words. */
  public String share() {
    return switch (tubes) {
      case 10 -> "a tenth";
      case 5 -> "a fifth";
      case 4 -> "a quarter";
      default -> "half";
    };
  }

  /** Lines that carry the leak. */
  public int throughLines() {
    return through.size();
  }

  public boolean anyVortex() {
    return !vortices.isEmpty();
  }

  public void paint(Sheet sheet, Projection view) {
    paint(sheet, view, Ink.THROUGH, Ink.VORTEX, Ink.PAPER);
  }

  /**
   * Paints in given colours.
   *
   * @param leakRgb lines that carry the leak
   * @param vortexRgb lines of trapped vortices
   * @param casingRgb thin rim that lifts vortex lines off the colours below
   */
  public void paint(Sheet sheet, Projection view, int leakRgb, int vortexRgb, int casingRgb) {
    Path2D trapped = path(vortices, view);
    sheet.stroke(trapped, new Pen(casingRgb, CASING.opacity(), CASING.width()));
    sheet.stroke(trapped, new Pen(vortexRgb, 1, VORTEX.width(), VORTEX.dash()));
    sheet.stroke(path(through, view), new Pen(leakRgb, 1, THROUGH.width()));
    paintHeads(sheet, view, leakRgb, vortexRgb);
  }

  private void paintHeads(Sheet sheet, Projection view, int leakRgb, int vortexRgb) {
    Path2D heads = new Path2D.Double();
    for (Contours.Line line : through) {
      if (Arrows.visibleLength(line, view) > 120) {
        heads.append(Arrows.on(line, view, 0.15, 8), false);
        heads.append(Arrows.on(line, view, 0.8, 8), false);
      }
    }
    sheet.fill(heads, leakRgb, 1);
    Path2D turning = new Path2D.Double();
    for (Contours.Line line : vortices) {
      if (Arrows.visibleLength(line, view) > 90) {
        turning.append(Arrows.on(line, view, 0.5, 8), false);
      }
    }
    sheet.fill(turning, vortexRgb, 1);
  }

  private static Path2D path(List<Contours.Line> lines, Projection view) {
    Path2D path = new Path2D.Double();
    for (Contours.Line line : lines) {
      view.appendSmooth(path, line);
    }
    return path;
  }
}
