package hemline.viewer.picture;

import hemline.shared.result.Estimate;
import hemline.solver.plenum.DownforcePoint;
import hemline.solver.plenum.MachineBalance;
import hemline.viewer.picture.Sheet.Anchor;
import hemline.viewer.picture.Sheet.Lettering;
import hemline.viewer.picture.Sheet.Pen;
import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;

/** Downforce over the static gap and over the fan speed, with bands. */
public final class DownforceChart extends Picture {
  private static final double WIDTH = 960;
  private static final double HEIGHT = 440;
  private static final double LEFT = 76;
  private static final double BETWEEN = 66;
  private static final double RIGHT = 26;
  private static final double TOP = 108;
  private static final double BOTTOM = 76;

  private final MachineBalance balance;

  private DownforceChart(MachineBalance balance) {
    this.balance = balance;
  }

  /** Chart of a balance. */
  public static DownforceChart of(MachineBalance balance) {
    return new DownforceChart(balance);
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
    sheet.text(26, 60, "downforce, one thing changed at a time", Lettering.of(13, Ink.TEXT));
    double room = (WIDTH - LEFT - RIGHT - BETWEEN) / 2;
    double most = 0;
    List<DownforcePoint> all = new ArrayList<>(balance.overGap());
    all.addAll(balance.overSpeed());
    for (DownforcePoint p : all) {
      Estimate e = p.downforce();
      most = e == null ? most : Math.max(most, e.high());
    }
    double gap =
        balance.machine().floor().edges().stream().mapToDouble(e -> e.gap()).min().orElse(1e-3);
    double speed = 60 * balance.machine().fan().speed();
    panel(sheet, LEFT, room, balance.overGap(), 1000 * gap, most, "smallest static gap, mm", "");
    panel(
        sheet,
        LEFT + room + BETWEEN,
        room,
        balance.overSpeed(),
        speed / 1000,
        most,
        "fan speed, 1000 rpm",
        "");
    sheet.text(
        LEFT,
        HEIGHT - 18,
        "bars and shading: band of the estimate; dashed: as it is; a gap in the line: the machine does"
            + " not settle there",
        Lettering.of(11.5, Ink.QUIET));
  }

  private static void panel(
      Sheet sheet,
      double left,
      double width,
      List<DownforcePoint> series,
      double unit,
      double most,
      String below,
      String beside) {
    Rectangle2D box = new Rectangle2D.Double(left, TOP, width, HEIGHT - TOP - BOTTOM);
    double first = series.isEmpty() ? 0 : series.get(0).factor();
    double last = series.isEmpty() ? 1 : series.get(series.size() - 1).factor();
    double[] xs = ChartPanel.roomy(unit * first, unit * last);
    ChartPanel panel = new ChartPanel(box, xs[0], xs[1], 0, Math.max(1e-6, 1.08 * most));
    panel.paintScales(sheet, 6, 6, true, true);
    sheet.text(left, TOP - 10, "downforce, N" + beside, Lettering.of(12, Ink.TEXT).heavy());
    sheet.stroke(
        new Line2D.Double(panel.x(unit), box.getMinY(), panel.x(unit), box.getMaxY()),
        new Pen(Ink.VORTEX, 1, 1.1, 5, 4));
    List<ChartPanel.Point> run = new ArrayList<>();
    for (DownforcePoint p : series) {
      Estimate e = p.downforce();
      if (e == null) {
        flush(sheet, panel, run);
      } else {
        run.add(new ChartPanel.Point(unit * p.factor(), e, true));
      }
    }
    flush(sheet, panel, run);
    sheet.text(box.getMaxX(), box.getMaxY() + 36, below, Lettering.of(12, Ink.TEXT).at(Anchor.END));
  }

  private static void flush(Sheet sheet, ChartPanel panel, List<ChartPanel.Point> run) {
    if (!run.isEmpty()) {
      panel.paintSeries(sheet, List.copyOf(run));
      run.clear();
    }
  }
}
