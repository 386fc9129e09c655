package hemline.solver.plenum;

import hemline.shared.geometry.Vertex;
import hemline.shared.result.Estimate;
import hemline.shared.result.LeakPoint;
import hemline.shared.vehicle.Ambient;
import hemline.shared.vehicle.Axle;
import hemline.shared.vehicle.Duty;
import hemline.shared.vehicle.Fan;
import hemline.shared.vehicle.FloorOutline;
import hemline.shared.vehicle.GroundStep;
import hemline.shared.vehicle.HoldTerms;
import hemline.shared.vehicle.Load;
import hemline.shared.vehicle.Machine;
import hemline.shared.vehicle.Openings;
import hemline.shared.vehicle.PowerSupply;
import hemline.shared.vehicle.ReliefValve;
import hemline.shared.vehicle.Running;
import hemline.shared.vehicle.SealEdge;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Machines of all kinds for the statics, with an invented leak law. */
final class HoldMachines {
  static final double LIFT = -4e-4;

  private HoldMachines() {}

  /** Discharge coefficient over the gap, smooth from a film to a free jet. */
  static double discharge(double h) {
    double x = h / 1e-3;
    return 0.75 * x * x / (x * x + 0.05) - 0.02 * x;
  }

  /** The leak law as a table, with a band. */
  static Map<String, LeakLaw> laws(String... names) {
    List<Double> gaps = new ArrayList<>();
    for (int k = 0; k < 60; k++) {
      gaps.add(2e-5 * Math.pow(600, k / 59.0));
    }
    List<Double> suctions = List.of(1.0, 1e4);
    List<LeakPoint> points = new ArrayList<>();
    for (double gap : gaps) {
      for (double suction : suctions) {
        points.add(
            Machines.point(
                    gap,
                    suction,
                    new Estimate(discharge(gap), 1e-6, 0, 0, 0, Estimate.Trend.MONOTONE))
                .with(
                    new Estimate(discharge(gap), 1e-6, 0, 0, 0, Estimate.Trend.MONOTONE),
                    Estimate.exact(LIFT)));
      }
    }
    LeakLaw law = new LeakLaw(new LeakTable(gaps, suctions, points));
    Map<String, LeakLaw> laws = new LinkedHashMap<>();
    for (String name : names) {
      laws.put(name, law);
    }
    return laws;
  }

  static List<Vertex> rectangle(double length, double width) {
    double a = 0.5 * length;
    double b = 0.5 * width;
    return List.of(
        new Vertex(a, -b, 0), new Vertex(a, b, 0), new Vertex(-a, b, 0), new Vertex(-a, -b, 0));
  }

  /** A plain machine to vary. */
  static Machine plain() {
    return machine(
        rectangle(0.4, 0.3),
        2e-3,
        List.of(new Axle("front", 0.15, 0.28, 1e5, true), new Axle("rear", -0.15, 0.28, 1e5, true)),
        new Load(4, 0, 0, 0.05));
  }

  static Machine machine(List<Vertex> outline, double gap, List<Axle> axles, Load load) {
    List<SealEdge> edges = new ArrayList<>();
    for (int i = 0; i < outline.size(); i++) {
      edges.add(new SealEdge(Machines.lip(), gap));
    }
    return new Machine(
        new Machine.Description("plain", "", true),
        new FloorOutline(outline, edges, 0.04),
        load,
        new Running(axles, 0.8, 0.7, Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY, 30, 0.5),
        new Fan(
            Machines.quadratic(1200, 1200 / (0.09 * 0.09)),
            400,
            Double.POSITIVE_INFINITY,
            0.5,
            Fan.Outlet.WITHOUT_THRUST,
            0),
        new PowerSupply(0.8, 1e9, 3600, 1, 1e9),
        new Openings(null, List.of()),
        new Duty(
            new Ambient(288.15, 0),
            0,
            Math.toRadians(45),
            new GroundStep(1e-3, 0.1),
            HoldTerms.USUAL));
  }

  static Machine gaps(Machine m, double... gaps) {
    List<SealEdge> edges = new ArrayList<>();
    for (int i = 0; i < m.floor().edges().size(); i++) {
      edges.add(new SealEdge(m.floor().edges().get(i).lip(), gaps[i % gaps.length]));
    }
    return m.withFloor(new FloorOutline(m.floor().vertices(), edges, m.floor().ceilingHeight()));
  }

  static Machine air(Machine m, double kelvin, double altitude) {
    return m.withAir(new Ambient(kelvin, altitude));
  }

  static Machine jet(Machine m, double area, double angle, double height) {
    Fan f = m.fan();
    return m.withFan(
        new Fan(
            f.curve(),
            f.speed(),
            f.maximumSpeed(),
            f.efficiency(),
            new Fan.Outlet(area, angle, 0.05, 0.02, height),
            0));
  }

  /** Kinds that a hold must get right. */
  static Map<String, Machine> kinds() {
    Map<String, Machine> all = new LinkedHashMap<>();
    Machine p = plain();
    all.put(
        "long",
        machine(
            rectangle(0.9, 0.25),
            2e-3,
            List.of(new Axle("front", 0.4, 0.2, 2e5, true), new Axle("rear", -0.4, 0.2, 2e5, true)),
            new Load(6, 0.03, 0, 0.06)));
    all.put(
        "L-shaped",
        machine(
            List.of(
                new Vertex(0.25, -0.2, 0),
                new Vertex(0.25, 0.02, 0),
                new Vertex(0, 0.02, 0),
                new Vertex(0, 0.2, 0),
                new Vertex(-0.2, 0.2, 0),
                new Vertex(-0.2, -0.2, 0)),
            1.8e-3,
            p.running().axles(),
            new Load(4, 0, -0.02, 0.06)));
    all.put("off-centre", p.withLoad(new Load(5, 0.06, -0.05, 0.08)));
    all.put(
        "soft",
        p.withRunning(
            p.running()
                .withAxles(
                    List.of(
                        new Axle("front", 0.15, 0.28, 4.5e4, true),
                        new Axle("rear", -0.15, 0.28, 4.5e4, true)))));
    all.put("valve open", p.withValve(new ReliefValve(2e-3, 200, 0.8, 1.2e-2, 0.62, 0.01, 0.3)));
    all.put("cold at altitude", air(p, 253.15, 3000));
    all.put("unequal gaps", gaps(p, 1.2e-3, 2.6e-3, 2e-3, 1.6e-3));
    all.put(
        "one driven axle",
        p.withRunning(
            p.running()
                .withAxles(
                    List.of(
                        new Axle("front", 0.15, 0.28, 1e5, false),
                        new Axle("rear", -0.15, 0.28, 8e4, true)))));
    all.put(
        "rolling steered axle",
        p.withRunning(
            p.running()
                .withAxles(
                    List.of(
                        new Axle("steered", 0.18, 0, 9e4, false),
                        new Axle("middle", 0, 0.3, 9e4, false).withBrake(Double.POSITIVE_INFINITY),
                        new Axle("rear", -0.15, 0.28, 8e4, true)))));
    all.put(
        "weak brakes",
        p.withRunning(
            p.running()
                .withAxles(
                    List.of(
                        new Axle("front", 0.15, 0.28, 1e5, true).withBrake(18),
                        new Axle("rear", -0.15, 0.28, 1e5, false).withBrake(26)))));
    all.put("jet sideways", jet(p, 8e-4, 0.3, 0.07));
    all.put("round", round());
    return all;
  }

  static Machine round() {
    return machine(
        List.of(new Vertex(0.2, 0, 1), new Vertex(-0.2, 0, 1)),
        2e-3,
        plain().running().axles(),
        new Load(3.5, 0.02, 0.01, 0.06));
  }
}
