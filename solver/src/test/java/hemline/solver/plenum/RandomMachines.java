package hemline.solver.plenum;

import hemline.shared.geometry.Vertex;
import hemline.shared.vehicle.Axle;
import hemline.shared.vehicle.Fan;
import hemline.shared.vehicle.GroundStep;
import hemline.shared.vehicle.HoldTerms;
import hemline.shared.vehicle.Load;
import hemline.shared.vehicle.Machine;
import hemline.shared.vehicle.OtherLeak;
import hemline.shared.vehicle.ReliefValve;
import hemline.shared.vehicle.Tolerances;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;

/** Machines of chance: outlines, axles, brakes, loads, fans, outlets, valves, air and gaps. */
final class RandomMachines {
  private RandomMachines() {}

  /** A machine of chance. */
  static Machine of(SplittableRandom r) {
    double length = between(r, 0.25, 0.9);
    double width = between(r, 0.2, 0.5);
    List<Vertex> outline = HoldMachines.rectangle(length, width);
    double shape = r.nextDouble();
    if (shape < 0.2) {
      double q = 0.5 * length;
      outline = List.of(new Vertex(q, 0, 1), new Vertex(-q, 0, 1));
    } else if (shape < 0.4) {
      double a = 0.5 * length;
      double b = 0.5 * width;
      double u = between(r, -0.5, 0.5) * a;
      double v = between(r, -0.5, 0.5) * b;
      outline =
          List.of(
              new Vertex(a, -b, 0),
              new Vertex(a, v, 0),
              new Vertex(u, v, 0),
              new Vertex(u, b, 0),
              new Vertex(-a, b, 0),
              new Vertex(-a, -b, 0));
    }
    double p0 = between(r, 400, 4000);
    double area = length * width;
    double gap = between(r, 1e-3, 3.5e-3);
    double base = between(r, 0.25, 0.5) * length;
    List<Axle> axles = axles(r, base, width, area * p0 / gap);
    Load load =
        new Load(
            area * p0 * between(r, 0.1, 0.9) / SecondStatics.G,
            between(r, -0.25, 0.25) * base,
            between(r, -0.08, 0.08) * width,
            between(r, 0.02, 0.25) * length);
    Machine m = HoldMachines.machine(outline, gap, axles, load);
    double most = 0.7 * 2 * (length + width) * gap * Math.sqrt(2 * p0 / 1.2) * between(r, 0.8, 4);
    Fan fan =
        new Fan(
            Machines.quadratic(p0, p0 / (most * most)),
            400,
            Double.POSITIVE_INFINITY,
            0.5,
            new Fan.Outlet(
                r.nextDouble() < 0.4 ? most / between(r, 10, 60) : 0,
                between(r, -0.5, 1) * Math.PI / 2,
                between(r, -0.3, 0.3) * length,
                between(r, -0.3, 0.3) * width,
                between(r, 0.02, 0.2)),
            0);
    m =
        m.withFan(fan)
            .withRunning(m.running().gripping(between(r, 0.5, 1.5)))
            .withSlope(between(r, 0.2, 2.9))
            .withStep(new GroundStep(between(r, 0.2, 2) * gap, between(r, 0.05, 0.5) * length))
            .withTerms(new HoldTerms(r.nextBoolean(), 1, 1e-4, Tolerances.NONE));
    m = r.nextDouble() < 0.5 ? HoldMachines.gaps(m, gap, gap * between(r, 0.6, 1.4), gap) : m;
    m =
        r.nextDouble() < 0.25
            ? m.withValve(
                new ReliefValve(2e-3, 400, 2e-3 * p0 * between(r, 0.3, 0.9), 0.05, 0.62, 0.01, 0.5))
            : m;
    m = r.nextDouble() < 0.3 ? HoldMachines.air(m, between(r, 250, 310), between(r, 0, 4000)) : m;
    return r.nextDouble() < 0.3 ? leaking(m) : m;
  }

  /** Two or three axles that would sink by a twentieth to twice the gap under the whole suction. */
  private static List<Axle> axles(SplittableRandom r, double base, double width, double perGap) {
    double stiffness = perGap * Math.exp(between(r, Math.log(0.5), Math.log(20)));
    boolean all = r.nextDouble() < 0.6;
    List<Axle> axles = new ArrayList<>();
    double frontTrack = r.nextDouble() < 0.15 ? 0 : between(r, 0.5, 1.1) * width;
    axles.add(new Axle("front", base, frontTrack, share(r) * stiffness, all));
    if (r.nextDouble() < 0.2) {
      double x = between(r, -0.4, 0.4) * base;
      axles.add(new Axle("middle", x, between(r, 0.5, 1.1) * width, share(r) * stiffness, all));
    }
    double rear = -base * between(r, 0.7, 1.2);
    axles.add(new Axle("rear", rear, between(r, 0.5, 1.1) * width, share(r) * stiffness, true));
    for (int i = 0; i < axles.size(); i++) {
      if (r.nextDouble() < 0.25) {
        double most = perGap * 1e-3 * between(r, 0.02, 0.6);
        axles.set(i, axles.get(i).withBrake(r.nextBoolean() ? most : Double.POSITIVE_INFINITY));
      }
    }
    return axles;
  }

  private static double share(SplittableRandom r) {
    return between(r, 0.3, 0.7);
  }

  private static Machine leaking(Machine m) {
    return m.withOtherLeaks(List.of(new OtherLeak("hole", 1e-4, 0.62)));
  }

  private static double between(SplittableRandom r, double low, double high) {
    return low + (high - low) * r.nextDouble();
  }
}
