package hemline.solver.plenum;

import hemline.shared.vehicle.Axle;
import hemline.shared.vehicle.FanCurve;
import hemline.shared.vehicle.Machine;
import hemline.shared.vehicle.OtherLeak;
import java.util.List;
import java.util.function.DoubleBinaryOperator;
import java.util.function.DoubleUnaryOperator;

/**
 * A second computation of a machine on tilted ground, from first principles and with none of the
 * product's formulas: the seal in many straight samples, forces as vectors in space with moments by
 * the vector product, wheels that press or hang free by trying all sets of them, friction by trying
 * ways to slide, tipping by asking whether any wheel forces at all can carry the load.
 */
final class SecondStatics {
  static final double G = 9.80665;
  private static final int STEPS = 40;
  private static final double LEAST = 1e-5;
  private static final double AGREED = 1e-7;
  private static final double HAIR = 1e-3;
  private static final int LIP_ROUNDS = 30;

  private final Machine m;
  private final DoubleBinaryOperator discharge;
  private final DoubleBinaryOperator lift;
  private final SecondWheels wheels;
  private final SecondSeal seal;
  private final FanCurve fan;
  private final double rho;
  private final double[] sinkAtRest;

  /** Part of the seal that lies over other ground: height, length, edges, corner or -1. */
  record Dip(double height, double length, List<Integer> edges, int corner) {}

  /** What it finds: suction, flow, load in space and its moment about the origin. */
  record Found(
      double suction, double flow, double[] plane, double[] force, double[] moment, double down) {}

  /**
   * Statics of a machine.
   *
   * @param discharge coefficient over the gap
   * @param lift upward lip force per metre over the suction, m
   */
  SecondStatics(Machine m, DoubleUnaryOperator discharge, double lift) {
    this(m, (h, p) -> discharge.applyAsDouble(h), (h, p) -> lift);
  }

  /**
   * Statics of a machine.
   *
   * @param discharge coefficient over gap and suction
   * @param lift upward lip force per metre over the suction, m, over gap and suction
   */
  SecondStatics(Machine m, DoubleBinaryOperator discharge, DoubleBinaryOperator lift) {
    this.m = m;
    this.discharge = discharge;
    this.lift = lift;
    wheels = new SecondWheels(m);
    seal = new SecondSeal(m);
    rho = m.duty().air().air().density();
    fan = m.fan().running(rho);
    double w = m.load().mass() * G;
    sinkAtRest = wheels.contact(w, w * m.load().x(), w * m.load().y());
  }

  /**
   * The machine on tilted ground; null when it does not settle there.
   *
   * @param downhill angle of the way down in the machine
   * @param keep plane to keep; null to let the springs decide
   */
  Found settle(double tilt, double downhill, Dip dip, double[] keep) {
    double top = fan.largestFlow();
    double high = top;
    double was = missing(tilt, downhill, high, dip, keep);
    for (double low = top - top / STEPS; low > LEAST * top; low = below(low, top)) {
      double now = missing(tilt, downhill, low, dip, keep);
      if (was < 0 && now >= 0) {
        double flow = crossing(tilt, downhill, dip, keep, new double[] {low, high, now, was});
        Found f = at(tilt, downhill, flow, keep);
        boolean agrees =
            Math.abs(missing(tilt, downhill, flow, dip, keep)) < AGREED * flow
                && at(tilt, downhill, flow * (1 + HAIR), keep) != null;
        // else a leap, or a thousandth more flow and it falls, or it lies on its lip
        if (f != null && agrees && clear(f.plane(), dip)) {
          return f;
        }
      }
      was = now;
      high = low;
    }
    return null;
  }

  /** The next flow to look at: even steps, then halves. */
  private static double below(double flow, double top) {
    return flow > 1.5 * top / STEPS ? flow - top / STEPS : 0.5 * flow;
  }

  /** Where the flows agree between two flows: halving, drawn in by straight lines. */
  private double crossing(double tilt, double downhill, Dip dip, double[] keep, double[] ends) {
    double a = ends[0];
    double b = ends[1];
    double fa = ends[2];
    double fb = ends[3];
    for (int i = 0; i < 60 && b - a > 1e-11 * b; i++) {
      double at = i % 3 == 2 ? 0.5 * (a + b) : a + (b - a) * fa / (fa - fb);
      double f = missing(tilt, downhill, at, dip, keep);
      if (Math.abs(f) < 1e-11 * b) {
        return at;
      }
      if (f > 0) {
        a = at;
        fa = f;
      } else {
        b = at;
        fb = f;
      }
    }
    return 0.5 * (a + b);
  }

  /** True when no part of the lip touches, a ledge under some edges included. */
  private boolean clear(double[] plane, Dip dip) {
    for (SecondSeal.Sample s : seal.samples) {
      double ledge =
          dip != null && dip.height() < 0 && dip.edges().contains(s.edge()) ? dip.height() : 0;
      if (s.over(plane) + ledge <= 0) {
        return false;
      }
    }
    return true;
  }

  /** Demand of all leaks less the flow. */
  private double missing(double tilt, double downhill, double flow, Dip dip, double[] keep) {
    Found f = at(tilt, downhill, flow, keep);
    if (f == null) {
      return -flow;
    }
    double jet = Math.sqrt(2 * f.suction() / rho);
    double q = 0;
    for (SecondSeal.Sample s : seal.samples) {
      double h = s.over(f.plane());
      double share = 0;
      if (dip != null && s.corner() < 0 && dip.edges().contains(s.edge())) {
        share = Math.min(1, dip.length() / seal.edgeLength(s.edge()));
      } else if (dip != null && s.corner() >= 0 && dip.corner() == s.corner()) {
        share = 1;
      }
      q += share < 1 ? (1 - share) * through(h, f.suction(), s) * jet : 0;
      q += share > 0 ? share * through(h + dip.height(), f.suction(), s) * jet : 0;
    }
    if (m.openings().valve() != null) {
      q += m.openings().valve().flow(f.suction(), rho);
    }
    for (OtherLeak o : m.openings().leaks()) {
      q += o.dischargeCoefficient() * o.area() * jet;
    }
    return q - flow;
  }

  private double through(double h, double p, SecondSeal.Sample s) {
    return h <= 0 ? 0 : discharge.applyAsDouble(h, p) * h * (s.length() + s.turn() * h);
  }

  /** Forces and sink at a flow of the fan. */
  private Found at(double tilt, double downhill, double flow, double[] keep) {
    double p = fan.pressureAt(flow);
    if (!(p > 1e-3)) {
      return null;
    }
    double[] force = new double[3];
    double[] moment = new double[3];
    double valve =
        m.openings().valve() == null
            ? 0
            : 0.5 * m.openings().valve().flow(p, rho) * Math.sqrt(2 * p * rho);
    double[] press = {0, 0, -p * seal.area + valve};
    add(force, moment, press, seal.centre[0], seal.centre[1], 0);
    jet(force, moment, flow, p);
    double w = m.load().mass() * G;
    double[] weight = {
      w * Math.sin(tilt) * Math.cos(downhill),
      w * Math.sin(tilt) * Math.sin(downhill),
      -w * Math.cos(tilt)
    };
    double[] plane = keep;
    for (int round = 0; round < LIP_ROUNDS; round++) {
      double[] f = force.clone();
      double[] t = moment.clone();
      double[] at = plane == null ? new double[3] : plane;
      for (SecondSeal.Sample s : seal.samples) {
        double h = Math.max(1e-6, s.over(at));
        double up = s.length() > 0 ? lift.applyAsDouble(h, p) * p * s.length() : 0;
        add(f, t, new double[] {0, 0, up}, s.x(), s.y(), 0);
      }
      double down = -f[2];
      add(f, t, weight, m.load().x(), m.load().y(), m.load().height());
      double[] next = keep == null ? plane(f, t) : keep;
      if (next == null) {
        return null;
      }
      if (plane != null && Math.abs(next[0] - plane[0]) < 1e-10) {
        return new Found(p, flow, next, f, t, down);
      }
      plane = next;
    }
    return null;
  }

  /** Air blown out of the fan's outlet. */
  private void jet(double[] force, double[] moment, double flow, double p) {
    if (m.fan().outlet().area() > 0) {
      double power = m.fan().shaftPower(fan, flow, p);
      double v = flow / m.fan().outlet().area();
      double left = power - flow * p;
      v = 0.5 * rho * flow * v * v > left ? Math.sqrt(Math.max(0, 2 * left / (rho * flow))) : v;
      double f = rho * flow * v;
      double angle = m.fan().outlet().angle();
      double[] push = {f * Math.cos(angle), 0, -f * Math.sin(angle)};
      add(
          force,
          moment,
          push,
          m.fan().outlet().x(),
          m.fan().outlet().y(),
          m.fan().outlet().height());
    }
  }

  /** Sink of the floor under forces; null when no wheel forces carry them. */
  private double[] plane(double[] force, double[] moment) {
    // ground forces: N = -Fz, and about the origin Σ N y = -Mx and Σ N x = My
    double n = -force[2];
    double[] s = wheels.contact(n, moment[1], -moment[0]);
    if (s == null) {
      return null;
    }
    double w = m.load().mass() * G;
    double middle = m.running().axles().stream().mapToDouble(Axle::x).average().orElse(0);
    double n0 = n - w;
    double m0 = moment[1] - w * m.load().x();
    double heave = n0 / m.running().heaveStiffness();
    double pitch = (m0 - middle * n0) / m.running().pitchStiffness();
    return new double[] {
      s[0] - sinkAtRest[0] + heave - pitch * middle,
      s[1] - sinkAtRest[1] + pitch,
      s[2] - sinkAtRest[2]
    };
  }

  private static void add(
      double[] force, double[] moment, double[] f, double x, double y, double z) {
    force[0] += f[0];
    force[1] += f[1];
    force[2] += f[2];
    moment[0] += y * f[2] - z * f[1];
    moment[1] += z * f[0] - x * f[2];
    moment[2] += x * f[1] - y * f[0];
  }

  /** Loads of the wheels in a state; null when no wheel forces carry it. */
  double[] wheelLoads(Found f) {
    return wheels.loads(-f.force()[2], f.moment()[1], -f.moment()[0]);
  }

  /** Friction there is over friction needed, by trying ways to slide; 0 when it tips. */
  double slip(Found f) {
    SecondSlide s = slide(f, m.running().peakFriction());
    return s == null ? 0 : s.margin();
  }

  /** The same once the tyres slip. */
  double sliding(Found f) {
    SecondSlide s = slide(f, m.running().slidingFriction());
    return s == null ? 0 : s.margin();
  }

  /** The margin against slip from above, by a coarse fan of ways to slide; 0 when it tips. */
  double roughSlip(Found f) {
    SecondSlide s = slide(f, m.running().peakFriction());
    return s == null ? 0 : s.rough();
  }

  private SecondSlide slide(Found f, double friction) {
    double[] n = wheelLoads(f);
    if (n == null) {
      return null;
    }
    for (int i = 0; i < n.length; i++) {
      n[i] *= friction;
    }
    return new SecondSlide(wheels.all, n, new double[] {f.force()[0], f.force()[1], f.moment()[2]});
  }

  /**
   * Factor by which pull and jet may grow along the ground before no wheel forces that only press
   * carry the load.
   */
  double tip(Found f, double tilt, double downhill) {
    double low = 0;
    double high = 1000;
    for (int i = 0; i < 60; i++) {
      double mid = 0.5 * (low + high);
      double[] l = grown(f, tilt, downhill, mid, 0);
      if (l[0] > 0 && wheels.contact(l[0], l[1], l[2]) != null) {
        low = mid;
      } else {
        high = mid;
      }
    }
    return low;
  }

  /** Factor by which the change by the pull may grow before an axle or side bears nothing. */
  double lift(Found f, double tilt, double downhill) {
    double low = 0;
    double high = 1000;
    for (int i = 0; i < 60; i++) {
      double mid = 0.5 * (low + high);
      double[] l = grown(f, tilt, downhill, mid, Math.cos(tilt) < 0 ? mid - 1 : 0);
      if (wheels.leastOfAxlesAndSides(l[0], l[1], l[2]) > 0) {
        low = mid;
      } else {
        high = mid;
      }
    }
    return low;
  }

  /** N and moments with the forces along the ground, and maybe the lifting weight, grown. */
  private double[] grown(Found f, double tilt, double downhill, double factor, double weight) {
    double h = m.load().height();
    double w = m.load().mass() * G;
    double pull = w * Math.sin(tilt);
    double jet = f.force()[0] - pull * Math.cos(downhill);
    double more = factor - 1;
    double n = -f.force()[2] + weight * w * Math.cos(tilt);
    double mx =
        f.moment()[1]
            + more * (pull * Math.cos(downhill) * h + jet * m.fan().outlet().height())
            + weight * w * Math.cos(tilt) * m.load().x();
    double my =
        -f.moment()[0]
            + more * pull * Math.sin(downhill) * h
            + weight * w * Math.cos(tilt) * m.load().y();
    return new double[] {n, mx, my};
  }

  /** True when it lets go: no balance, no wheel forces, or too little friction. */
  boolean letsGo(double tilt, double downhill, Dip dip, double[] keep) {
    Found f = settle(tilt, downhill, dip, keep);
    return f == null || slip(f) < 1;
  }
}
