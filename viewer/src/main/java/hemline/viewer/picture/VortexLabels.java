package hemline.viewer.picture;

import hemline.shared.result.Figure;
import hemline.shared.result.SectionFigures;
import hemline.shared.result.SectionResult;
import hemline.viewer.format.Digits;
import hemline.viewer.picture.Sheet.Anchor;
import hemline.viewer.picture.Sheet.Lettering;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;

/** Centres and strengths of the trapped vortices, strongest first, where there is room. */
public final class VortexLabels {
  private static final double SIZE = 11;
  private static final double WEAKEST = 0.005;

  private VortexLabels() {}

  public static void paint(Sheet sheet, Projection view, SectionResult result) {
    paint(sheet, view, result, Ink.TEXT, Ink.VORTEX, List.of());
  }

  /**
   * Paints with letters and centres in given colours.
   *
   * @param words rooms of other words, which stay free
   */
  public static void paint(
      Sheet sheet,
      Projection view,
      SectionResult result,
      int textRgb,
      int centreRgb,
      List<Rectangle2D> words) {
    List<Rectangle2D> taken = new ArrayList<>(words);
    Rectangle2D frame = view.frame();
    boolean leaking = result.figures().scalars().containsKey(Figure.LEAK_FLOW);
    for (SectionFigures.TrappedVortex vortex : result.figures().trappedVortices()) {
      double x = view.x(vortex.x());
      double y = view.y(vortex.y());
      if (vortex.strength().value() < WEAKEST || !frame.contains(x, y)) {
        continue;
      }
      String text =
          "\u0393 " + Digits.plain(vortex.strength().value(), 2) + (leaking ? " q" : " m\u00b2/s");
      double width = TextWidth.of(text, SIZE) + 8;
      double middle =
          Math.max(frame.getMinX() + 0.5 * width, Math.min(frame.getMaxX() - 0.5 * width, x));
      // below the centre, or above it where the ground is near
      double baseline = y + 19 > frame.getMaxY() ? y - 8 : y + 15;
      Rectangle2D box = new Rectangle2D.Double(middle - 0.5 * width, baseline - 11, width, 15);
      sheet.fill(new Ellipse2D.Double(x - 2.6, y - 2.6, 5.2, 5.2), centreRgb, 1);
      if (taken.stream().noneMatch(box::intersects)) {
        taken.add(box);
        sheet.text(middle, baseline, text, Lettering.of(SIZE, textRgb).lifted().at(Anchor.MIDDLE));
      }
    }
  }
}
