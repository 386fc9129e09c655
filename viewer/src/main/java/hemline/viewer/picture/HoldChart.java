package hemline.viewer.picture;

import hemline.shared.result.Estimate;
import hemline.solver.plenum.HoldPoint;
import hemline.solver.plenum.MachineBalance;
import hemline.viewer.picture.Sheet.Anchor;
import hemline.viewer.picture.Sheet.Lettering;
import hemline.viewer.picture.Sheet.Pen;
import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;

/** Least margin of the hold from level ground over the wall to the ceiling, with its band. */
public final class HoldChart extends Picture {
  private static final double WIDTH = 960;
  private static final double HEIGHT = 440;
  private static final double LEFT = 76;
  private static final double RIGHT = 26;
  private static final double TOP = 108;
  private static final double BOTTOM = 76;

  /** Margins above it are cut off: what counts is where it comes near 1. */
  private static final double MOST = 5;

  private final MachineBalance balance;

  private HoldChart(MachineBalance balance) {
    this.balance = balance;
  }

  /** Chart of a balance. */
  public static HoldChart of(MachineBalance balance) {
    return new HoldChart(balance);
  }

  @Override
  public double width() {
    return WIDTH;
  }

  @Override
  public double height() {
    return HEIGHT;
  }

  @Override
  public void paint(Sheet sheet) {
    sheet.text(
        26,
        38,
        TextWidth.fitted(balance.machine().name(), 22, WIDTH - 60),
        Lettering.of(22, Ink.TEXT).heavy());
    sheet.text(
        26,
        60,
        "hold: least margin in the worst heading over the tilt of the ground",
        Lettering.of(13, Ink.TEXT));
    Rectangle2D box =
        new Rectangle2D.Double(LEFT, TOP, WIDTH - LEFT - RIGHT, HEIGHT - TOP - BOTTOM);
    ChartPanel panel = new ChartPanel(box, 0, 180, 0, MOST);
    panel.paintScales(sheet, 6, 5, true, true);
    sheet.text(LEFT, TOP - 10, "margin", Lettering.of(12, Ink.TEXT).heavy());
    sheet.stroke(
        new Line2D.Double(box.getMinX(), panel.y(1), box.getMaxX(), panel.y(1)),
        new Pen(Ink.VORTEX, 1, 1.4, 5, 4));
    List<ChartPanel.Point> run = new ArrayList<>();
    HoldPoint worst = null;
    double least = Double.POSITIVE_INFINITY;
    for (HoldPoint p : balance.holdOverTilt()) {
      Estimate e = p.margin();
      if (e == null || e.high() > MOST) {
        flush(sheet, panel, run);
        continue;
      }
      run.add(new ChartPanel.Point(Math.toDegrees(p.tilt()), above(e), true));
      if (e.value() < least) {
        least = e.value();
        worst = p;
      }
    }
    flush(sheet, panel, run);
    if (worst != null) {
      sheet.text(
          Math.min(panel.x(Math.toDegrees(worst.tilt())) + 10, box.getMaxX() - 10),
          panel.y(Math.max(0, least)) + (least > 0.4 ? 22 : -14),
          worst.limitedBy() + ", " + worst.heading(),
          Lettering.of(11.5, Ink.TEXT).at(Anchor.END));
    }
    sheet.text(
        box.getMaxX(),
        box.getMaxY() + 36,
        "tilt of the ground, \u00b0 (90 wall, 180 ceiling)",
        Lettering.of(12, Ink.TEXT).at(Anchor.END));
    sheet.text(
        LEFT,
        HEIGHT - 18,
        "dashed: below it lets go; shading: band that the leaks leave; margins above 5 are not drawn",
        Lettering.of(11.5, Ink.QUIET));
  }

  /** Margins below 0 are drawn at 0. */
  private static Estimate above(Estimate e) {
    double v = Math.max(0, e.value());
    double down = v - Math.max(0, e.low());
    return new Estimate(v, 0, 0, down, Math.max(0, e.high() - v), e.trend());
  }

  private static void flush(Sheet sheet, ChartPanel panel, List<ChartPanel.Point> run) {
    if (!run.isEmpty()) {
      panel.paintSeries(sheet, List.copyOf(run));
      run.clear();
    }
  }
}
