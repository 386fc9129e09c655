package hemline.viewer.picture;

import hemline.shared.geometry.Box;
import hemline.shared.geometry.Outline;
import hemline.shared.geometry.Ring;
import hemline.shared.profile.LipDrawing;
import hemline.shared.result.Estimate;
import hemline.solver.improve.CornerEffect;
import hemline.viewer.format.Digits;
import hemline.viewer.picture.Sheet.Anchor;
import hemline.viewer.picture.Sheet.Lettering;
import hemline.viewer.picture.Sheet.Pen;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** A lip with an arrow at each corner: the way to move it for less leak, longer for more. */
public final class CornerPicture extends Picture {
  private static final double WIDTH = 640;

  /** Largest extent of the lip: arrows and their words stand beside it. */
  private static final double ROOM = 380;

  private static final double TOP = 110;

  /** Length of the longest arrow. */
  private static final double LONGEST = 56;

  private final LipDrawing lip;
  private final List<CornerEffect> effects;
  private final Ring ring;
  private final Box box;
  private final double scale;

  private CornerPicture(
      LipDrawing lip, List<CornerEffect> effects, Ring ring, Box box, double scale) {
    super(WIDTH, TOP + scale * box.height() + 110);
    this.lip = lip;
    this.effects = effects;
    this.ring = ring;
    this.box = box;
    this.scale = scale;
  }

  /** Picture of a lip's corners. */
  public static CornerPicture of(LipDrawing lip, List<CornerEffect> effects) {
    Ring ring = new Outline(lip.body().vertices()).flatten();
    Box box = Box.of(List.of(ring));
    double scale = Math.min(ROOM / box.width(), ROOM / box.height());
    return new CornerPicture(lip, effects, ring, box, scale);
  }

  private double x(double metres) {
    return 0.5 * (WIDTH - scale * box.width()) + scale * (metres - box.left());
  }

  private double y(double metres) {
    return TOP + scale * (box.top() - metres);
  }

  @Override
  public void paint(Sheet sheet) {
    heading(sheet, lip.name(), "what 0.1 mm at each corner does to the leak");
    Path2D outline = new Path2D.Double();
    for (int k = 0; k < ring.size(); k++) {
      if (k == 0) {
        outline.moveTo(x(ring.x()[k]), y(ring.y()[k]));
      } else {
        outline.lineTo(x(ring.x()[k]), y(ring.y()[k]));
      }
    }
    outline.closePath();
    sheet.fill(outline, Ink.SERIES_BAND, 0.5);
    sheet.stroke(outline, new Pen(Ink.TEXT, 1, 1.4));
    double most = 1e-9;
    for (CornerEffect e : effects) {
      most = Math.max(most, Math.hypot(value(e.dx()), e.lowest() ? 0 : value(e.dy())));
    }
    for (CornerEffect e : effects) {
      arrow(sheet, e, LONGEST / most);
    }
    signs(sheet, 26, height() - 40, "arrows: the way to less leak, per cent for 0.1 mm that way");
    signs(sheet, 26, height() - 22, "none within the band, or where only down helps");
  }

  private void arrow(Sheet sheet, CornerEffect e, double perShare) {
    double dx = told(e.dx());
    // a lowest corner does not move down
    double dy = e.lowest() ? Math.min(0, told(e.dy())) : told(e.dy());
    double size = Math.hypot(dx, dy);
    double fromX = x(e.x());
    double fromY = y(e.y());
    ChartPanel.dot(sheet, fromX, fromY, Ink.VORTEX, size > 0);
    Lettering letters = Lettering.of(11, Ink.TEXT);
    if (!(size > 0)) {
      sheet.text(fromX + 6, fromY - 6, Integer.toString(e.corner()), letters);
      return;
    }
    // less leak lies against the slope; up on the sheet is down in y
    double toX = fromX - dx * perShare;
    double toY = fromY + dy * perShare;
    sheet.stroke(new Line2D.Double(fromX, fromY, toX, toY), new Pen(Ink.VORTEX, 1, 2));
    sheet.fill(Arrows.head(toX, toY, toX - fromX, toY - fromY, 9), Ink.VORTEX, 1);
    String words = e.corner() + ": \u2212" + Digits.plain(100 * size, 2) + " %";
    boolean toLeft = toX < fromX;
    sheet.text(toX + (toLeft ? -6 : 6), toY + 4, words, toLeft ? letters.at(Anchor.END) : letters);
  }

  private static double value(@Nullable Estimate e) {
    return e == null ? 0 : e.value();
  }

  /** Value that its band tells from zero; else 0. */
  private static double told(@Nullable Estimate e) {
    return e == null || e.low() <= 0 && e.high() >= 0 ? 0 : e.value();
  }
}
