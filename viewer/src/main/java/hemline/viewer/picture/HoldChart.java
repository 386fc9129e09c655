package hemline.viewer.picture;

import hemline.shared.result.Estimate;
import hemline.solver.plenum.Hold;
import hemline.solver.plenum.HoldPoint;
import hemline.solver.plenum.MachineBalance;
import hemline.viewer.format.Digits;
import hemline.viewer.picture.Sheet.Anchor;
import hemline.viewer.picture.Sheet.Lettering;
import hemline.viewer.picture.Sheet.Pen;
import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Least margin of the hold from level ground over the wall to the ceiling, with its band. */
public final class HoldChart extends BalanceChart {
  private static final double HEIGHT = 440;
  private static final double LEFT = 76;
  private static final double RIGHT = 26;
  private static final double TOP = 108;
  private static final double BOTTOM = 76;

  /** Margins above it are cut off: what counts is where it comes near 1. */
  private static final double MOST = 5;

  private HoldChart(MachineBalance balance) {
    super(balance, "hold: least margin in the worst heading over the tilt of the ground", HEIGHT);
  }

  /** Chart of a balance. */
  public static HoldChart of(MachineBalance balance) {
    return new HoldChart(balance);
  }

  @Override
  void paint(Sheet sheet, MachineBalance balance) {
    Rectangle2D box =
        new Rectangle2D.Double(LEFT, TOP, WIDTH - LEFT - RIGHT, HEIGHT - TOP - BOTTOM);
    double asked = balance.machine().duty().terms().safetyFactor();
    ChartPanel panel =
        new ChartPanel(box, PlotScale.upTo(180), PlotScale.upTo(Math.max(MOST, 1.5 * asked)));
    panel.paintScales(sheet, 6, 5, true, true);
    scales(sheet, panel, "margin", "tilt of the ground, \u00b0 (90 wall, 180 ceiling)");
    level(sheet, panel, 1);
    if (asked > 1) {
      level(sheet, panel, asked);
      sheet.text(
          box.getMinX() + 8,
          panel.y(asked) - 6,
          "safety factor " + Digits.plain(asked, 3),
          Lettering.of(11.5, Ink.VORTEX));
    }
    List<ChartPanel.@Nullable Point> points = new ArrayList<>();
    HoldPoint before = null;
    for (HoldPoint p : balance.holding().overTilt()) {
      Estimate e = p.margin();
      boolean shown = e != null && e.high() <= panel.up().high();
      points.add(
          shown && e != null
              ? new ChartPanel.Point(Math.toDegrees(p.tilt()), above(e), true)
              : null);
      if (before != null) {
        sheet.clip(box);
        leadOut(sheet, panel, before, p);
        sheet.unclip();
      }
      before = p;
    }
    broken(sheet, panel, points, "tilt of the ground, \u00b0", "margin");
    balance.holding().holds().stream()
        .filter(h -> h.place().name().equals("worst"))
        .findFirst()
        .ifPresent(h -> worst(sheet, panel, h));
    foot(
        sheet,
        LEFT,
        "dashed: below it lets go; shading and bars: band that the leaks leave; ring: the least of"
            + " all; the line leaves the chart where margins are large");
  }

  /** The line between two points of which one lies beyond the chart. */
  private static void leadOut(Sheet sheet, ChartPanel panel, HoldPoint a, HoldPoint b) {
    Estimate from = a.margin();
    Estimate to = b.margin();
    if (from != null
        && to != null
        && from.high() > panel.up().high() != to.high() > panel.up().high()) {
      sheet.stroke(
          new Line2D.Double(
              panel.x(Math.toDegrees(a.tilt())),
              panel.y(Math.max(0, from.value())),
              panel.x(Math.toDegrees(b.tilt())),
              panel.y(Math.max(0, to.value()))),
          new Pen(Ink.SERIES, 1, 1.8));
    }
  }

  /** A ring round the least margin of all, named below its band. */
  private static void worst(Sheet sheet, ChartPanel panel, Hold h) {
    Estimate e = h.margins().least();
    if (e == null || e.value() > panel.up().high()) {
      return;
    }
    Estimate shown = above(e);
    double x = panel.x(Math.toDegrees(h.place().angle()));
    ChartPanel.dot(sheet, x, panel.y(shown.value()), Ink.VORTEX, false);
    String text =
        "least "
            + Digits.plain(e.value(), 3)
            + " at "
            + Digits.plain(Math.toDegrees(h.place().angle()), 3)
            + "\u00b0: "
            + h.judgement().limitedBy()
            + ", "
            + h.place().heading();
    double half = 0.5 * TextWidth.of(text, 11.5);
    Rectangle2D box = panel.box();
    double at = Math.max(box.getMinX() + half + 4, Math.min(box.getMaxX() - half - 4, x));
    double below = panel.y(shown.low()) + 18;
    if (Math.abs(below - 4 - panel.y(1)) < 12) {
      below = panel.y(1) + 18; // clear of the dashed line
    }
    sheet.text(
        at,
        below < box.getMaxY() - 4 ? below : panel.y(shown.high()) - 12,
        text,
        Lettering.of(11.5, Ink.TEXT).at(Anchor.MIDDLE));
  }

  /** Margins below 0 are drawn at 0. */
  private static Estimate above(Estimate e) {
    double v = Math.max(0, e.value());
    double down = v - Math.max(0, e.low());
    return new Estimate(v, 0, 0, down, Math.max(0, e.high() - v), e.trend());
  }
}
