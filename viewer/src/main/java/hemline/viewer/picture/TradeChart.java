package hemline.viewer.picture;

import hemline.shared.result.Estimate;
import hemline.solver.plenum.MachineBalance;
import hemline.solver.plenum.Trade;
import hemline.viewer.format.Digits;
import hemline.viewer.picture.Sheet.Anchor;
import hemline.viewer.picture.Sheet.Lettering;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** What each change buys: one row a change, downforce beside downforce per watt, with bands. */
public final class TradeChart extends BalanceChart {
  private static final double ROW = 19;
  private static final double LEFT = 246;
  private static final double BETWEEN = 40;
  private static final double RIGHT = 28;
  private static final double TOP = 106;
  private static final double BOTTOM = 74;

  private final List<Trade> rows = new ArrayList<>();

  private TradeChart(MachineBalance balance) {
    super(
        balance,
        "what one change buys, springs included",
        TOP + ROW * (balance.changes().trades().size() + balance.changes().lips().size()) + BOTTOM);
    for (Trade.Kind kind : Trade.Kind.values()) {
      List<Trade> of = new ArrayList<>();
      for (Trade t : balance.changes().trades()) {
        if (t.kind() == kind) {
          of.add(t);
        }
      }
      of.sort(Comparator.comparingDouble(Trade::factor));
      rows.addAll(of);
    }
    balance.changes().lips().forEach(lip -> rows.add(lip.trade()));
  }

  /** Chart of a balance. */
  public static TradeChart of(MachineBalance balance) {
    return new TradeChart(balance);
  }

  @Override
  void paint(Sheet sheet, MachineBalance balance) {
    double room = (WIDTH - LEFT - RIGHT - BETWEEN) / 2;
    panel(sheet, LEFT, room, "downforce, N", true);
    panel(sheet, LEFT + room + BETWEEN, room, "downforce per electrical watt, N/W", false);
    for (int k = 0; k < rows.size(); k++) {
      Trade t = rows.get(k);
      sheet.text(
          LEFT - 12,
          y(k) + 4,
          TextWidth.fitted(name(t), 11.5, LEFT - 36),
          Lettering.of(11.5, t.kind() == Trade.Kind.AS_IT_IS ? Ink.VORTEX : Ink.TEXT)
              .at(Anchor.END));
    }
    foot(
        sheet,
        LEFT,
        "bars: band of the estimate; dashed: as it is; hollow: leans on leaks beyond the solved"
            + " sections");
  }

  private static String name(Trade t) {
    return switch (t.kind()) {
      case AS_IT_IS -> t.kind().key();
      case LIP -> t.name();
      default -> t.kind().key() + " \u00d7 " + Digits.plain(t.factor(), 3);
    };
  }

  private double y(int row) {
    return TOP + ROW * (row + 0.5);
  }

  private void panel(Sheet sheet, double left, double width, String title, boolean force) {
    double most = 0;
    for (Trade t : rows) {
      Estimate e = force ? t.downforce() : t.perWatt();
      most = e == null ? most : Math.max(most, e.high());
    }
    Rectangle2D box = new Rectangle2D.Double(left, TOP, width, ROW * rows.size());
    ChartPanel panel =
        new ChartPanel(box, PlotScale.upTo(Math.max(1e-6, 1.06 * most)), PlotScale.upTo(1));
    panel.paintScales(sheet, 5, 1, true, false);
    sheet.text(left, TOP - 10, title, Lettering.of(12, Ink.TEXT).heavy());
    Trade.Kind before = null;
    Path2D rules = new Path2D.Double();
    for (int k = 0; k < rows.size(); k++) {
      Trade t = rows.get(k);
      if (before != null && t.kind() != before) {
        double at = TOP + ROW * k;
        rules.append(new Line2D.Double(left, at, box.getMaxX(), at), false);
      }
      before = t.kind();
    }
    sheet.stroke(rules, Ink.HAIR);
    for (int k = 0; k < rows.size(); k++) {
      Trade t = rows.get(k);
      Estimate e = force ? t.downforce() : t.perWatt();
      if (e == null) {
        sheet.text(left + 6, y(k) + 4, "does not settle", Lettering.of(11, Ink.VORTEX));
        continue;
      }
      if (t.kind() == Trade.Kind.AS_IT_IS) {
        upright(sheet, panel, e.value());
      }
      int rgb = t.kind() == Trade.Kind.AS_IT_IS ? Ink.VORTEX : Ink.SERIES;
      panel.paintBar(sheet, e, y(k), rgb, name(t) + "\n" + title + ": " + Digits.withBand(e, 1));
      if (t.beyond()) {
        ChartPanel.dot(sheet, panel.x(e.value()), y(k), rgb, false);
      }
    }
  }
}
