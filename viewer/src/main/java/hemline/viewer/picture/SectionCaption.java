package hemline.viewer.picture;

import hemline.shared.result.Estimate;
import hemline.shared.result.Figure;
import hemline.shared.result.SectionResult;
import hemline.shared.result.SolveStatus;
import hemline.viewer.format.Digits;
import hemline.viewer.format.TradeUnit;
import hemline.viewer.format.Wording;
import hemline.viewer.picture.Sheet.Anchor;
import hemline.viewer.picture.Sheet.Lettering;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;

/** Words and keys around a section picture. */
final class SectionCaption {
  private static final double BAR_WIDTH = 400;
  private static final double BAR_HEIGHT = 14;
  private static final double SMALL = 12;

  private SectionCaption() {}

  /** Name and conditions on the left, leak and discharge coefficient on the right. */
  static void heading(Sheet sheet, SectionScene scene, double left, double right) {
    SectionResult result = scene.result();
    String leak = figure(scene, Figure.LEAK_FLOW, "leak ");
    double room = right - left - TextWidth.of(leak, 20) - 40;
    sheet.text(
        left, 40, TextWidth.fitted(result.name(), 22, room), Lettering.of(22, Ink.TEXT).heavy());
    sheet.text(left, 61, conditions(scene), Lettering.of(13, Ink.TEXT));
    sheet.text(right, 40, leak, Lettering.of(20, Ink.TEXT).heavy().at(Anchor.END));
    List<String> more = new ArrayList<>();
    more.add(figure(scene, Figure.DISCHARGE_COEFFICIENT, "C_d "));
    more.add(figure(scene, Figure.EFFECTIVE_GAP, "h_e "));
    more.removeIf(String::isEmpty);
    sheet.text(
        right, 61, String.join("   ", more), Lettering.of(13, Ink.TEXT).at(Anchor.END).symbols());
    boolean settled = result.status() == SolveStatus.CONVERGED;
    Lettering verdict = Lettering.of(SMALL, settled ? Ink.QUIET : Ink.VORTEX);
    sheet.text(left, 80, Wording.verdict(result), settled ? verdict : verdict.heavy());
  }

  private static String conditions(SectionScene scene) {
    SectionResult result = scene.result();
    if (scene.closed()) {
      return "closed cavity \u00b7 " + Wording.ground(result.conditions());
    }
    return scene.duct() != null
        ? "pressure drop "
            + Digits.plain(result.conditions().suction(), 4)
            + " Pa \u00b7 "
            + Wording.ground(result.conditions())
        : Wording.conditions(result);
  }

  private static String figure(SectionScene scene, Figure figure, String before) {
    Estimate estimate = scene.result().figures().get(figure);
    if (estimate == null) {
      return "";
    }
    TradeUnit unit = scene.duct() != null ? TradeUnit.plain(figure) : TradeUnit.of(figure);
    String number = Digits.withBand(estimate, unit.factor());
    return (before + number + " " + unit.unit()).strip();
  }

  /** Colour bar on the left, meaning of the lines on the right. */
  static void keys(
      Sheet sheet,
      SectionScene scene,
      PressureScale scale,
      Streamlines lines,
      double left,
      double right,
      double top) {
    String over =
        scene.closed()
            ? "pressure, Pa"
            : scene.duct() != null
                ? "pressure over the downstream station, Pa"
                : "pressure over ambient, Pa";
    sheet.text(left, top - 2, over, Lettering.of(SMALL, Ink.TEXT));
    bar(sheet, scale, left, top);
    double x = left + BAR_WIDTH + 60;
    double y = top + 4;
    if (lines.leaking()) {
      sample(sheet, x, y, Streamlines.THROUGH);
      sheet.text(
          x + 52,
          y + 4,
          "leak: " + lines.share() + " of it flows between two lines",
          Lettering.of(SMALL, Ink.TEXT));
      y += 22;
    }
    if (lines.anyVortex()) {
      sample(sheet, x, y, Streamlines.VORTEX);
      String unit = lines.leaking() ? "of the leak q" : "of the whole range";
      sheet.text(
          x + 52,
          y + 4,
          TextWidth.fitted(
              "trapped vortices, lines at 2, 4, 8, 16 \u2026 % " + unit, SMALL, right - x - 52),
          Lettering.of(SMALL, Ink.TEXT));
    }
  }

  private static void sample(Sheet sheet, double x, double y, Sheet.Pen pen) {
    sheet.stroke(new Line2D.Double(x, y, x + 40, y), pen);
    sheet.fill(Arrows.head(x + 26, y, 1, 0, 8), pen.rgb(), 1);
  }

  private static void bar(Sheet sheet, PressureScale scale, double left, double top) {
    double y = top + 8;
    double each = BAR_WIDTH / scale.count();
    for (int band = 0; band < scale.count(); band++) {
      sheet.fill(
          new Rectangle2D.Double(left + band * each, y, each + 0.3, BAR_HEIGHT),
          scale.colour(band),
          1);
    }
    sheet.stroke(new Rectangle2D.Double(left, y, BAR_WIDTH, BAR_HEIGHT), Ink.AXIS);
    double low = scale.edge(0);
    double high = scale.edge(scale.count());
    Ticks ticks = Ticks.within(low, high, 6);
    Path2D marks = new Path2D.Double();
    for (double t : ticks.values()) {
      double x = left + BAR_WIDTH * (t - low) / (high - low);
      marks.append(new Line2D.Double(x, y + BAR_HEIGHT, x, y + BAR_HEIGHT + 4), false);
      sheet.text(
          x,
          y + BAR_HEIGHT + 17,
          Digits.fixed(t, ticks.decimals()),
          Lettering.of(11.5, Ink.QUIET).at(Anchor.MIDDLE));
    }
    sheet.stroke(marks, Ink.AXIS);
  }
}
