package hemline.viewer.picture;

import hemline.solver.plenum.MachineBalance;
import hemline.viewer.picture.Sheet.Anchor;
import hemline.viewer.picture.Sheet.Lettering;
import hemline.viewer.picture.Sheet.Pen;
import java.awt.geom.Line2D;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** A chart of a machine's balance: its name, what is shown, panels, and a line on the signs. */
abstract sealed class BalanceChart extends Picture
    permits DownforceChart, FanChart, HoldChart, TradeChart {
  static final double WIDTH = 960;

  private final MachineBalance balance;
  private final String shown;

  /**
   * A chart.
   *
   * @param shown what it shows, below the name of the machine
   */
  BalanceChart(MachineBalance balance, String shown, double height) {
    super(WIDTH, height);
    this.balance = balance;
    this.shown = shown;
  }

  @Override
  public final void paint(Sheet sheet) {
    heading(sheet, balance.machine().description().name(), shown);
    paint(sheet, balance);
  }

  /** Everything below the heading. */
  abstract void paint(Sheet sheet, MachineBalance of);

  /** The line at the foot that explains the signs. */
  final void foot(Sheet sheet, double left, String signs) {
    signs(sheet, left, height() - 18, signs);
  }

  /** Names of a panel's scales. */
  static void scales(Sheet sheet, ChartPanel panel, String up, String along) {
    double left = panel.box().getMinX();
    sheet.text(left, panel.box().getMinY() - 10, up, Lettering.of(12, Ink.TEXT).heavy());
    sheet.text(
        panel.box().getMaxX(),
        panel.box().getMaxY() + 36,
        along,
        Lettering.of(12, Ink.TEXT).at(Anchor.END));
  }

  /** A dashed line upright across a panel. */
  static void upright(Sheet sheet, ChartPanel panel, double x) {
    dashed(sheet, panel.x(x), panel.box().getMinY(), panel.x(x), panel.box().getMaxY());
  }

  /** A dashed line level across a panel. */
  static void level(Sheet sheet, ChartPanel panel, double y) {
    dashed(sheet, panel.box().getMinX(), panel.y(y), panel.box().getMaxX(), panel.y(y));
  }

  private static void dashed(Sheet sheet, double x0, double y0, double x1, double y1) {
    sheet.stroke(new Line2D.Double(x0, y0, x1, y1), new Pen(Ink.VORTEX, 1, 1.2, 5, 4));
  }

  /** A series with a gap in its line wherever a point is missing; the scales as they are named. */
  static void broken(
      Sheet sheet, ChartPanel panel, List<ChartPanel.@Nullable Point> points, String... means) {
    List<ChartPanel.Point> run = new ArrayList<>();
    for (ChartPanel.Point p : points) {
      if (p != null) {
        run.add(p);
      } else if (!run.isEmpty()) {
        panel.paintSeries(sheet, List.copyOf(run), means);
        run.clear();
      }
    }
    if (!run.isEmpty()) {
      panel.paintSeries(sheet, run, means);
    }
  }
}
