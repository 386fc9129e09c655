package hemline.viewer.picture;

import hemline.shared.vehicle.FanCurve;
import hemline.solver.plenum.FlowCurve;
import hemline.solver.plenum.MachineBalance;
import hemline.solver.plenum.OperatingPoint;
import hemline.viewer.format.BalanceWords;
import hemline.viewer.format.Digits;
import hemline.viewer.format.LengthUnit;
import hemline.viewer.picture.Sheet.Anchor;
import hemline.viewer.picture.Sheet.Lettering;
import hemline.viewer.picture.Sheet.Pen;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** The fan's curve against what all leaks take at several gaps, and the operating points. */
public final class FanChart extends BalanceChart {
  private static final double HEIGHT = 560;
  private static final double LEFT = 84;
  private static final double RIGHT = 96;
  private static final double TOP = 96;
  private static final double BOTTOM = 84;
  private static final double LITRES = 1000;

  /** Names of curves one above the other where they would stand on each other. */
  private static final int ROWS = 3;

  private static final double ROW = 14;

  private final FlowCurve fan;

  private FanChart(MachineBalance balance, FlowCurve fan) {
    super(balance, "fan against all leaks at fixed gaps", HEIGHT);
    this.fan = fan;
  }

  /**
   * Chart of a balance.
   *
   * @throws IllegalArgumentException if the balance is not complete
   */
  public static FanChart of(MachineBalance balance) {
    FlowCurve fan = balance.operation().fanCurve();
    if (fan == null) {
      throw new IllegalArgumentException("a balance that was stopped has no chart");
    }
    return new FanChart(balance, fan);
  }

  @Override
  void paint(Sheet sheet, MachineBalance balance) {
    double most = 0;
    double peak = 0;
    for (int k = 0; k < fan.flow().length; k++) {
      most = Math.max(most, fan.flow()[k]);
      peak = Math.max(peak, fan.pressure()[k]);
    }
    Rectangle2D box =
        new Rectangle2D.Double(LEFT, TOP, WIDTH - LEFT - RIGHT, HEIGHT - TOP - BOTTOM);
    ChartPanel panel =
        new ChartPanel(box, PlotScale.upTo(1.05 * LITRES * most), PlotScale.upTo(1.12 * peak));
    panel.paintScales(sheet, 8, 6, true, true);
    sheet.clip(box);
    for (FlowCurve leak : balance.operation().leakCurves()) {
      sheet.stroke(
          line(panel, leak), new Pen(leak.factor() == 1 ? Ink.LIP_EDGE : Ink.LIP_HATCH, 1, 1.4));
    }
    paintFan(sheet, panel, balance);
    sheet.unclip();
    label(sheet, panel, balance);
    FreeSpot free = new FreeSpot(box);
    free.avoid(line(panel, fan));
    balance.operation().leakCurves().forEach(leak -> free.avoid(line(panel, leak)));
    balance.operation().points().forEach(p -> mark(sheet, panel, p, free));
    balance.operation().points().forEach(p -> name(sheet, panel, p, free));
    scales(sheet, panel, "suction, Pa", "flow, L/s");
    signs(
        sheet,
        LEFT,
        HEIGHT - 48,
        "blue: fan, dashed on the stall side \u00b7 brown: seal, valve and other leaks at the gap"
            + " named");
    signs(
        sheet,
        LEFT,
        HEIGHT - 30,
        "dot: operating point, springs included; hollow when it is not stable; bars: its band");
  }

  /** The stall side dashed. */
  private void paintFan(Sheet sheet, ChartPanel panel, MachineBalance balance) {
    FanCurve running =
        balance.machine().fan().running(balance.machine().duty().air().air().density());
    Path2D stall = new Path2D.Double();
    Path2D working = new Path2D.Double();
    stall.moveTo(panel.x(0), panel.y(fan.pressure()[0]));
    boolean begun = false;
    for (int k = 0; k < fan.flow().length; k++) {
      double x = panel.x(LITRES * fan.flow()[k]);
      double y = panel.y(fan.pressure()[k]);
      if (fan.flow()[k] <= running.peakFlow()) {
        stall.lineTo(x, y);
      }
      if (fan.flow()[k] >= running.peakFlow()) {
        if (!begun) {
          double px = panel.x(LITRES * running.peakFlow());
          double py = panel.y(running.peakPressure());
          stall.lineTo(px, py);
          working.moveTo(px, py);
          begun = true;
        }
        working.lineTo(x, y);
      }
    }
    sheet.stroke(stall, new Pen(Ink.SERIES, 1, 2.2, 6, 5));
    sheet.stroke(working, new Pen(Ink.SERIES, 1, 2.4));
  }

  private static Path2D line(ChartPanel panel, FlowCurve curve) {
    Path2D path = new Path2D.Double();
    path.moveTo(panel.x(0), panel.y(0));
    for (int k = 0; k < curve.flow().length; k++) {
      path.lineTo(panel.x(LITRES * curve.flow()[k]), panel.y(curve.pressure()[k]));
    }
    return path;
  }

  /** Names the curves where they leave the panel, the static gap first; crowded names stay away. */
  private static void label(Sheet sheet, ChartPanel panel, MachineBalance balance) {
    List<Rectangle2D> taken = new ArrayList<>();
    taken.add(new Rectangle2D.Double(LEFT, TOP - 22, TextWidth.of("suction, Pa", 12) + 6, 14));
    balance.operation().leakCurves().stream()
        .sorted(Comparator.comparing(leak -> leak.factor() != 1))
        .forEach(leak -> label(sheet, panel, leak, taken));
  }

  private static void label(
      Sheet sheet, ChartPanel panel, FlowCurve leak, List<Rectangle2D> taken) {
    String text = LengthUnit.text(leak.gap(), 3) + (leak.factor() == 1 ? " (static)" : "");
    Lettering letters = Lettering.of(11.5, leak.factor() == 1 ? Ink.LIP_EDGE : Ink.QUIET).lifted();
    double width = TextWidth.of(text, 11.5);
    double[] q = leak.flow();
    double[] p = leak.pressure();
    int k = 0;
    while (k < q.length - 1 && p[k] < panel.up().high() && LITRES * q[k] < panel.across().high()) {
      k++;
    }
    double x = Math.min(panel.x(LITRES * q[k]), panel.box().getMaxX());
    double y = Math.max(panel.y(p[k]), panel.box().getMinY());
    boolean beyond = LITRES * q[k] >= panel.across().high();
    for (int row = 0; row < ROWS; row++) {
      double left = beyond ? x + 6 : x - 0.5 * width;
      double base = beyond ? y + 4 : y - 7;
      Rectangle2D spot =
          new Rectangle2D.Double(left - 2, base - ROW * row - 11, width + 4, ROW - 1);
      if (taken.stream().noneMatch(spot::intersects)) {
        taken.add(spot);
        sheet.text(
            beyond ? left : x,
            base - ROW * row,
            text,
            letters.at(beyond ? Anchor.START : Anchor.MIDDLE));
        return;
      }
    }
  }

  private static void mark(Sheet sheet, ChartPanel panel, OperatingPoint p, FreeSpot free) {
    double x = panel.x(LITRES * p.flows().fan().value());
    double y = panel.y(p.suction().value());
    Path2D bars = new Path2D.Double();
    bars.append(
        new Line2D.Double(
            panel.x(Math.max(panel.across().low(), LITRES * p.flows().fan().low())),
            y,
            panel.x(Math.min(panel.across().high(), LITRES * p.flows().fan().high())),
            y),
        false);
    bars.append(
        new Line2D.Double(
            x,
            panel.y(Math.max(panel.up().low(), p.suction().low())),
            x,
            panel.y(Math.min(panel.up().high(), p.suction().high()))),
        false);
    sheet.stroke(bars, new Pen(Ink.VORTEX, 1, 1.3));
    free.avoid(bars);
    ChartPanel.dot(sheet, x, y, Ink.VORTEX, p.stable() && !p.touching());
    sheet.mark(
        new Rectangle2D.Double(x - 8, y - 8, 16, 16),
        BalanceWords.point(p)
            + "\nflow, L/s: "
            + Digits.withBand(p.flows().fan(), LITRES)
            + "\nsuction, Pa: "
            + Digits.withBand(p.suction(), 1));
  }

  /** Says what kind of point it is where no line runs, with a thin line to it from afar. */
  private static void name(Sheet sheet, ChartPanel panel, OperatingPoint p, FreeSpot free) {
    String words = BalanceWords.point(p);
    double x = panel.x(LITRES * p.flows().fan().value());
    double y = panel.y(p.suction().value());
    Rectangle2D spot = free.take(x, y, TextWidth.of(words, 11.5), 13);
    double nearX = Math.max(spot.getMinX(), Math.min(spot.getMaxX(), x));
    double nearY = Math.max(spot.getMinY(), Math.min(spot.getMaxY(), y));
    double away = Math.hypot(nearX - x, nearY - y);
    if (away > FreeSpot.NEAR * 1.5) {
      double skip = 5 / away;
      sheet.stroke(
          new Line2D.Double(x + skip * (nearX - x), y + skip * (nearY - y), nearX, nearY),
          new Pen(Ink.VORTEX, 1, 0.8));
    }
    sheet.text(spot.getMinX(), spot.getMaxY() - 3, words, Lettering.of(11.5, Ink.VORTEX).lifted());
  }
}
