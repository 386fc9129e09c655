package hemline.solver.plenum;

import hemline.shared.geometry.Outline;
import hemline.shared.geometry.Vertex;
import hemline.shared.profile.LipProfile;
import hemline.shared.result.Estimate;
import hemline.shared.result.LeakGrids;
import hemline.shared.result.LeakPoint;
import hemline.shared.result.Regime;
import hemline.shared.result.SolveStatus;
import hemline.shared.section.SectionConditions;
import hemline.shared.vehicle.Ambient;
import hemline.shared.vehicle.Axle;
import hemline.shared.vehicle.Duty;
import hemline.shared.vehicle.Fan;
import hemline.shared.vehicle.FanCurve;
import hemline.shared.vehicle.FloorOutline;
import hemline.shared.vehicle.HoldTerms;
import hemline.shared.vehicle.Load;
import hemline.shared.vehicle.Machine;
import hemline.shared.vehicle.Openings;
import hemline.shared.vehicle.PowerSupply;
import hemline.shared.vehicle.Running;
import hemline.shared.vehicle.SealEdge;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;

/** Plain machines and leaks with formulas behind them. */
final class Machines {
  static final double C = 0.7;
  static final double RADIUS = 0.2;
  static final double GAP = 2e-3;
  static final double RIGID = 1e12;

  private Machines() {}

  static LipProfile lip() {
    return new LipProfile(
        "lip",
        "flat",
        "",
        new Outline(List.of(new Vertex(0, 0), new Vertex(8e-3, 0), new Vertex(8e-3, 1e-2))),
        1,
        List.of());
  }

  /** p = p₀ − a Q², in 900 points. */
  static FanCurve quadratic(double p0, double a) {
    List<FanCurve.Point> points = new ArrayList<>();
    double most = Math.sqrt(p0 / a);
    for (int k = 0; k < 900; k++) {
      double q = most * k / 899;
      points.add(new FanCurve.Point(q, Math.max(0, p0 - a * q * q), Double.NaN));
    }
    return new FanCurve(points, 400, new Ambient(288.15, 0).air().density());
  }

  /** A curve with a steep stall side between 0.03 and 0.04 m³/s. */
  static FanCurve steepHump() {
    return new FanCurve(
        List.of(
            new FanCurve.Point(0, 100, Double.NaN),
            new FanCurve.Point(0.03, 140, Double.NaN),
            new FanCurve.Point(0.04, 900, Double.NaN),
            new FanCurve.Point(0.06, 600, Double.NaN),
            new FanCurve.Point(0.08, 10, Double.NaN)),
        400,
        1.225);
  }

  /** A round machine without corners, its axles as stiff as asked. */
  static Machine round(FanCurve curve, double stiffness) {
    return with(
        curve, stiffness, List.of(new Vertex(RADIUS, 0, 1), new Vertex(-RADIUS, 0, 1)), 3.0);
  }

  static Machine with(FanCurve curve, double stiffness, List<Vertex> outline, double mass) {
    FloorOutline floor =
        new FloorOutline(
            outline, Collections.nCopies(outline.size(), new SealEdge(lip(), GAP)), 0.04);
    Running running =
        new Running(
            List.of(
                new Axle("front", 0.1, 0.2, 0.5 * stiffness, true),
                new Axle("rear", -0.1, 0.2, 0.5 * stiffness, true)),
            0.8,
            0.6,
            Double.POSITIVE_INFINITY,
            Double.POSITIVE_INFINITY,
            50,
            2);
    return new Machine(
        new Machine.Description("round", "", true),
        floor,
        new Load(mass, 0, 0, 0.05),
        running,
        new Fan(curve, curve.speed(), Double.POSITIVE_INFINITY, 0.5, Fan.Outlet.WITHOUT_THRUST, 0),
        new PowerSupply(0.8, 1e9, 3600, 1, 1e9),
        new Openings(null, List.of()),
        new Duty(new Ambient(288.15, 0), 0, Math.toRadians(30), null, HoldTerms.USUAL));
  }

  /** A leak law of one discharge coefficient, without lip force. */
  static Map<String, LeakLaw> constant(double c, double band) {
    List<Double> gaps = List.of(1e-4, 1e-2);
    List<Double> suctions = List.of(1.0, 1e4);
    List<LeakPoint> points = new ArrayList<>();
    for (double gap : gaps) {
      for (double suction : suctions) {
        points.add(point(gap, suction, new Estimate(c, band, 0, 0, 0, Estimate.Trend.MONOTONE)));
      }
    }
    return Map.of("lip", new LeakLaw(new LeakTable(gaps, suctions, points)));
  }

  static LeakPoint point(double gap, double suction, Estimate c) {
    return new LeakPoint(
        "lip",
        new SectionConditions(gap, suction, 0, 0),
        SolveStatus.CONVERGED,
        Regime.TURBULENT,
        c,
        Estimate.exact(0),
        List.of(),
        LeakGrids.NONE);
  }

  static PlenumState settled(PlenumBalance balance) {
    PlenumState s = balance.settled(Stand.REST);
    if (s == null) {
      throw new AssertionError("the machine does not settle");
    }
    return s;
  }
}
