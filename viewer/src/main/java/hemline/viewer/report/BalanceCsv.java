package hemline.viewer.report;

import hemline.shared.result.LeakPoint;
import hemline.solver.plenum.DownforcePoint;
import hemline.solver.plenum.FlowCurve;
import hemline.solver.plenum.MachineBalance;
import hemline.solver.plenum.RankedLip;
import hemline.solver.plenum.SettledFigures;
import hemline.solver.plenum.Trade;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Tables of a machine's balance. */
final class BalanceCsv {
  private BalanceCsv() {}

  /** Figures where the machine settles, at rest and at the travel speed. */
  static String figures(MachineBalance balance) {
    CsvText out = new CsvText("state,figure,value,low,high,unit");
    figures(out, "rest", balance.operation().rest());
    figures(out, "travel", balance.operation().travelling());
    return out.toString();
  }

  private static void figures(CsvText out, String state, @Nullable SettledFigures f) {
    if (f == null) {
      return;
    }
    f.figures().forEach((g, e) -> out.row(state, g.key(), CsvText.band(e), g.unit()));
    for (int i = 0; i < f.axleLoads().size(); i++) {
      out.row(state, "axleLoad" + (i + 1), CsvText.band(f.axleLoads().get(i)), "N");
    }
    for (int i = 0; i < f.edgeGaps().size(); i++) {
      out.row(state, "gapUnderEdge" + i, CsvText.band(f.edgeGaps().get(i)), "m");
      out.row(state, "leakUnderEdge" + i, CsvText.band(f.edgeLeaks().get(i)), "m3/s");
    }
  }

  /** One change at a time. */
  static String trades(MachineBalance balance) {
    CsvText out =
        new CsvText(
            "change,name,factor,downforce_N,low,high,shaftPower_W,low,high,perWatt_N_W,low,high,"
                + "leastGap_m,low,high,beyondSolved,rank,relativeDownforce,low,high");
    balance.changes().trades().forEach(t -> out.row(trade(t), null, CsvText.band(null)));
    for (RankedLip lip : balance.changes().lips()) {
      out.row(trade(lip.trade()), lip.rank(), CsvText.band(lip.relative()));
    }
    return out.toString();
  }

  private static List<Object> trade(Trade t) {
    return List.of(
        t.kind().key(),
        t.name(),
        t.factor(),
        CsvText.band(t.downforce()),
        CsvText.band(t.shaftPower()),
        CsvText.band(t.perWatt()),
        CsvText.band(t.leastGap()),
        t.beyond());
  }

  /** Points of all curves: fan, leaks at fixed gaps, downforce over gap and fan speed. */
  static String curves(MachineBalance balance) {
    CsvText out = new CsvText("curve,gapFactor,x,y,low,high,xUnit,yUnit");
    FlowCurve fan = balance.operation().fanCurve();
    if (fan != null) {
      flow(out, "fan", fan);
    }
    balance.operation().leakCurves().forEach(c -> flow(out, "leaks", c));
    series(out, "downforceOverGap", balance.changes().overGap());
    series(out, "downforceOverFanSpeed", balance.changes().overSpeed());
    return out.toString();
  }

  private static void flow(CsvText out, String name, FlowCurve c) {
    for (int k = 0; k < c.flow().length; k++) {
      out.row(name, c.factor(), c.flow()[k], c.pressure()[k], null, null, "m3/s", "Pa");
    }
  }

  private static void series(CsvText out, String name, List<DownforcePoint> points) {
    points.forEach(p -> out.row(name, null, p.factor(), CsvText.band(p.downforce()), "1", "N"));
  }

  /** The sections behind the leak laws. */
  static String sections(MachineBalance balance) {
    CsvText out =
        new CsvText(
            "lip,gap_m,suction_Pa,groundSpeed_m_s,spanwiseSpeed_m_s,status,regime,"
                + "dischargeCoefficient,low,high,liftOverSuction_m,low,high");
    for (LeakPoint p : balance.leakPoints()) {
      out.row(
          p.lip(),
          p.conditions().gap(),
          p.conditions().suction(),
          p.conditions().groundSpeed(),
          p.conditions().spanwiseSpeed(),
          p.status().key(),
          p.regime().key(),
          CsvText.band(p.discharge()),
          CsvText.band(p.lift()));
    }
    return out.toString();
  }
}
