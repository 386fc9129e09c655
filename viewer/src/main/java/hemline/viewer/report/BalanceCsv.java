package hemline.viewer.report;

import hemline.shared.result.Estimate;
import hemline.shared.result.LeakPoint;
import hemline.solver.plenum.DownforcePoint;
import hemline.solver.plenum.FlowCurve;
import hemline.solver.plenum.MachineBalance;
import hemline.solver.plenum.RankedLip;
import hemline.solver.plenum.SettledFigures;
import hemline.solver.plenum.Trade;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Tables of a machine's balance as comma-separated values (RFC 4180), SI. */
final class BalanceCsv {
  private static final String END = "\r\n";

  private BalanceCsv() {}

  /** Figures where the machine settles, at rest and at the travel speed. */
  static String figures(MachineBalance balance) {
    StringBuilder out = new StringBuilder("state,figure,value,low,high,unit" + END);
    figures(out, "rest", balance.rest());
    figures(out, "travel", balance.travelling());
    return out.toString();
  }

  private static void figures(StringBuilder out, String state, @Nullable SettledFigures f) {
    if (f == null) {
      return;
    }
    line(out, state, "suction", f.suction(), "Pa");
    line(out, state, "fanFlow", f.fanFlow(), "m3/s");
    line(out, state, "airPower", f.airPower(), "W");
    line(out, state, "shaftPower", f.shaftPower(), "W");
    line(out, state, "electricalPower", f.electricalPower(), "W");
    line(out, state, "runTime", f.runTime(), "s");
    line(out, state, "downforce", f.downforce(), "N");
    line(out, state, "floorForce", f.floorForce(), "N");
    line(out, state, "lipForce", f.lipForce(), "N");
    line(out, state, "fanThrust", f.thrust(), "N");
    line(out, state, "valveForce", f.valveForce(), "N");
    line(out, state, "centreOfPressureX", f.centreX(), "m");
    line(out, state, "centreOfPressureY", f.centreY(), "m");
    for (int i = 0; i < f.axleLoads().size(); i++) {
      line(out, state, "axleLoad" + (i + 1), f.axleLoads().get(i), "N");
    }
    for (int i = 0; i < f.edgeGaps().size(); i++) {
      line(out, state, "gapUnderEdge" + i, f.edgeGaps().get(i), "m");
      line(out, state, "leakUnderEdge" + i, f.edgeLeaks().get(i), "m3/s");
    }
  }

  private static void line(StringBuilder out, String state, String name, Estimate e, String unit) {
    out.append(state).append(',').append(name).append(',').append(band(e));
    out.append(',').append(unit).append(END);
  }

  /** One change at a time. */
  static String trades(MachineBalance balance) {
    StringBuilder out =
        new StringBuilder(
            "change,name,factor,downforce_N,low,high,shaftPower_W,low,high,perWatt_N_W,low,high,"
                + "leastGap_m,low,high,beyondSolved,rank,relativeDownforce,low,high"
                + END);
    for (Trade t : balance.trades()) {
      trade(out, t);
      out.append(",,,,").append(END);
    }
    for (RankedLip lip : balance.lips()) {
      trade(out, lip.trade());
      out.append(',').append(lip.rank()).append(',').append(band(lip.relative())).append(END);
    }
    return out.toString();
  }

  private static void trade(StringBuilder out, Trade t) {
    out.append(CsvText.cell(t.kind().key())).append(',').append(CsvText.cell(t.name())).append(',');
    out.append(t.factor()).append(',').append(band(t.downforce())).append(',');
    out.append(band(t.shaftPower())).append(',').append(band(t.perWatt())).append(',');
    out.append(band(t.leastGap())).append(',').append(t.beyond());
  }

  /** Points of all curves: fan, leaks at fixed gaps, downforce over gap and fan speed. */
  static String curves(MachineBalance balance) {
    StringBuilder out = new StringBuilder("curve,gapFactor,x,y,low,high,xUnit,yUnit" + END);
    FlowCurve fan = balance.fanCurve();
    if (fan != null) {
      flow(out, "fan", fan);
    }
    balance.leakCurves().forEach(c -> flow(out, "leaks", c));
    series(out, "downforceOverGap", balance.overGap());
    series(out, "downforceOverFanSpeed", balance.overSpeed());
    return out.toString();
  }

  private static void flow(StringBuilder out, String name, FlowCurve c) {
    double[] q = c.flow();
    double[] p = c.pressure();
    for (int k = 0; k < q.length; k++) {
      out.append(name).append(',').append(c.factor()).append(',').append(q[k]).append(',');
      out.append(p[k]).append(",,,m3/s,Pa").append(END);
    }
  }

  private static void series(StringBuilder out, String name, List<DownforcePoint> points) {
    for (DownforcePoint p : points) {
      out.append(name).append(",,").append(p.factor()).append(',');
      out.append(band(p.downforce())).append(",1,N").append(END);
    }
  }

  /** The sections behind the leak laws. */
  static String sections(MachineBalance balance) {
    StringBuilder out =
        new StringBuilder(
            "lip,gap_m,suction_Pa,groundSpeed_m_s,spanwiseSpeed_m_s,status,regime,"
                + "dischargeCoefficient,low,high,liftOverSuction_m,low,high"
                + END);
    for (LeakPoint p : balance.leakPoints()) {
      out.append(CsvText.cell(p.lip())).append(',').append(p.gap()).append(',').append(p.suction());
      out.append(',').append(p.groundSpeed()).append(',').append(p.spanwiseSpeed()).append(',');
      out.append(p.status().key()).append(',').append(p.regime().key()).append(',');
      out.append(band(p.discharge())).append(',').append(band(p.lift())).append(END);
    }
    return out.toString();
  }

  private static String band(@Nullable Estimate e) {
    return e == null
        ? ",,"
        : e.value() + "," + Math.min(e.low(), e.value()) + "," + Math.max(e.high(), e.value());
  }
}
