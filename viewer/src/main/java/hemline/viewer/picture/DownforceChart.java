package hemline.viewer.picture;

import hemline.shared.result.Estimate;
import hemline.solver.plenum.DownforcePoint;
import hemline.solver.plenum.MachineBalance;
import hemline.viewer.format.LengthUnit;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Downforce over the static gap and over the fan speed, with bands. */
public final class DownforceChart extends BalanceChart {
  private static final double HEIGHT = 440;
  private static final double LEFT = 76;
  private static final double BETWEEN = 66;
  private static final double RIGHT = 26;
  private static final double TOP = 108;
  private static final double BOTTOM = 76;

  private DownforceChart(MachineBalance balance) {
    super(balance, "downforce, one thing changed at a time", HEIGHT);
  }

  /** Chart of a balance. */
  public static DownforceChart of(MachineBalance balance) {
    return new DownforceChart(balance);
  }

  @Override
  void paint(Sheet sheet, MachineBalance balance) {
    double room = (WIDTH - LEFT - RIGHT - BETWEEN) / 2;
    double most = 0;
    List<DownforcePoint> all = new ArrayList<>(balance.changes().overGap());
    all.addAll(balance.changes().overSpeed());
    for (DownforcePoint p : all) {
      Estimate e = p.downforce();
      most = e == null ? most : Math.max(most, e.high());
    }
    double gap = balance.machine().floor().leastGap();
    double speed = 60 * balance.machine().fan().speed();
    Rectangle2D first = new Rectangle2D.Double(LEFT, TOP, room, HEIGHT - TOP - BOTTOM);
    panel(
        sheet,
        first,
        balance.changes().overGap(),
        LengthUnit.factor() * gap,
        most,
        "smallest static gap, " + LengthUnit.unit());
    Rectangle2D second =
        new Rectangle2D.Double(LEFT + room + BETWEEN, TOP, room, HEIGHT - TOP - BOTTOM);
    panel(sheet, second, balance.changes().overSpeed(), speed / 1000, most, "fan speed, 1000 rpm");
    foot(
        sheet,
        LEFT,
        "bars and shading: band of the estimate; dashed: as it is; a gap in the line: the machine"
            + " does not settle there");
  }

  private static void panel(
      Sheet sheet,
      Rectangle2D box,
      List<DownforcePoint> series,
      double unit,
      double most,
      String below) {
    double first = series.isEmpty() ? 0 : series.get(0).factor();
    double last = series.isEmpty() ? 1 : series.get(series.size() - 1).factor();
    ChartPanel panel =
        new ChartPanel(
            box,
            PlotScale.linear(unit * first, unit * last),
            PlotScale.upTo(Math.max(1e-6, 1.08 * most)));
    panel.paintScales(sheet, 6, 6, true, true);
    scales(sheet, panel, "downforce, N", below);
    upright(sheet, panel, unit);
    List<ChartPanel.@Nullable Point> points = new ArrayList<>();
    for (DownforcePoint p : series) {
      Estimate e = p.downforce();
      points.add(e == null ? null : new ChartPanel.Point(unit * p.factor(), e, true));
    }
    broken(sheet, panel, points, below, "downforce, N");
  }
}
