package hemline.viewer.picture;

import hemline.shared.result.SectionResult;
import hemline.viewer.format.Digits;
import hemline.viewer.picture.Sheet.Anchor;
import hemline.viewer.picture.Sheet.Lettering;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;

/** Centres and strengths of the trapped vortices, strongest first, where there is room. */
final class VortexLabels {
  private static final double SIZE = 11;
  private static final double WEAKEST = 0.005;

  private VortexLabels() {}

  static void paint(Sheet sheet, Projection view, SectionResult result) {
    List<Rectangle2D> taken = new ArrayList<>();
    Rectangle2D frame = view.frame();
    for (SectionResult.TrappedVortex vortex : result.trappedVortices()) {
      double x = view.x(vortex.x());
      double y = view.y(vortex.y());
      if (vortex.strength().value() < WEAKEST || !frame.contains(x, y)) {
        continue;
      }
      String text = "\u0393 " + Digits.plain(vortex.strength().value(), 2) + " q";
      double width = TextWidth.of(text, SIZE) + 8;
      boolean leftwards = x + 6 + width > frame.getMaxX();
      Rectangle2D box =
          new Rectangle2D.Double(leftwards ? x - 6 - width : x - 5, y - 9, width + 11, 18);
      sheet.fill(new Ellipse2D.Double(x - 2.6, y - 2.6, 5.2, 5.2), Ink.VORTEX, 1);
      if (taken.stream().noneMatch(box::intersects)) {
        taken.add(box);
        Lettering lettering = Lettering.of(SIZE, Ink.TEXT).lifted();
        sheet.text(
            leftwards ? x - 6 : x + 6,
            y + 4,
            text,
            leftwards ? lettering.at(Anchor.END) : lettering);
      }
    }
  }
}
