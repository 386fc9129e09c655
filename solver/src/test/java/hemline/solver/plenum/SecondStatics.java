package hemline.solver.plenum;

import hemline.shared.geometry.Arc;
import hemline.shared.geometry.Vertex;
import hemline.shared.vehicle.Axle;
import hemline.shared.vehicle.FanCurve;
import hemline.shared.vehicle.Machine;
import hemline.shared.vehicle.OtherLeak;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.function.DoubleUnaryOperator;

/**
 * A second computation of a machine on tilted ground, from first principles and with none of the
 * product's formulas: the seal in many straight samples, forces as vectors in space with moments by
 * the vector product, wheels that press or hang free by trying all sets of them, friction by trying
 * ways to slide, tipping by asking whether any wheel forces at all can carry the load.
 */
final class SecondStatics {
  static final double G = 9.80665;
  private static final int SAMPLES = 12;
  private static final int STEPS = 40;

  private final Machine m;
  private final DoubleUnaryOperator discharge;
  private final double lift;
  private final List<double[]> wheels = new ArrayList<>(); // x, y, k, held along
  private final List<double[]> seal = new ArrayList<>(); // x, y, length, gap, right angles, edge, v
  private final double area;
  private final double[] centre;
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
    this.m = m;
    this.discharge = discharge;
    this.lift = lift;
    for (Axle a : m.running().axles()) {
      double held = a.driven() || a.braked() ? 1 : 0;
      if (a.track() == 0) {
        wheels.add(new double[] {a.x(), 0, a.stiffness(), held});
      } else {
        wheels.add(new double[] {a.x(), 0.5 * a.track(), 0.5 * a.stiffness(), held});
        wheels.add(new double[] {a.x(), -0.5 * a.track(), 0.5 * a.stiffness(), held});
      }
    }
    List<Vertex> v = m.floor().vertices();
    int n = v.size();
    double s = 0;
    double sx = 0;
    double sy = 0;
    List<double[]> ring = new ArrayList<>();
    for (int i = 0; i < n; i++) {
      Vertex a = v.get(i);
      Vertex b = v.get((i + 1) % n);
      double gap = m.floor().edges().get(i).gap();
      Arc arc = a.bulge() == 0 ? null : Arc.of(a, b);
      int parts = arc == null ? SAMPLES : 3 * SAMPLES;
      for (int k = 0; k < parts; k++) {
        double[] p = on(a, b, arc, (double) k / parts);
        double[] q = on(a, b, arc, (k + 1.0) / parts);
        double chord = Math.hypot(q[0] - p[0], q[1] - p[1]);
        double length = arc == null ? chord : arc.radius() * Math.abs(arc.sweep()) / parts;
        seal.add(new double[] {0.5 * (p[0] + q[0]), 0.5 * (p[1] + q[1]), length, gap, 0, i, -1});
      }
      for (int k = 0; k < 300; k++) {
        ring.add(on(a, b, arc, k / 300.0));
      }
      Vertex c = v.get((i + 2) % n);
      double[] in = along(a, b, arc, 1);
      double[] out = along(b, c, b.bulge() == 0 ? null : Arc.of(b, c), 0);
      double turn = Math.atan2(in[0] * out[1] - in[1] * out[0], in[0] * out[0] + in[1] * out[1]);
      if (turn > Math.toRadians(16)) {
        for (int e : new int[] {i, (i + 1) % n}) {
          double g = m.floor().edges().get(e).gap();
          seal.add(new double[] {b.x(), b.y(), 0, g, turn / Math.PI, e, (i + 1) % n});
        }
      }
    }
    for (int i = 0; i < ring.size(); i++) {
      double[] p = ring.get(i);
      double[] q = ring.get((i + 1) % ring.size());
      double cross = p[0] * q[1] - q[0] * p[1];
      s += cross / 2;
      sx += cross * (p[0] + q[0]) / 6;
      sy += cross * (p[1] + q[1]) / 6;
    }
    area = s;
    centre = new double[] {sx / s, sy / s};
    double w = m.load().mass() * G;
    sinkAtRest = contact(w, w * m.load().x(), w * m.load().y());
  }

  private static double[] on(Vertex a, Vertex b, Arc arc, double t) {
    if (arc == null) {
      return new double[] {a.x() + t * (b.x() - a.x()), a.y() + t * (b.y() - a.y())};
    }
    double at = arc.start() + t * arc.sweep();
    return new double[] {
      arc.xc() + arc.radius() * Math.cos(at), arc.yc() + arc.radius() * Math.sin(at)
    };
  }

  private static double[] along(Vertex a, Vertex b, Arc arc, double t) {
    double[] p = on(a, b, arc, t == 0 ? 0 : t - 1e-6);
    double[] q = on(a, b, arc, t == 0 ? 1e-6 : t);
    double l = Math.hypot(q[0] - p[0], q[1] - p[1]);
    return new double[] {(q[0] - p[0]) / l, (q[1] - p[1]) / l};
  }

  /**
   * Plane of the wheels' sink by trying every set of wheels that stand; null when none carries it.
   */
  private double[] contact(double n, double mx, double my) {
    for (int set = (1 << wheels.size()) - 1; set > 0; set--) {
      double[][] a = new double[3][4];
      for (int i = 0; i < wheels.size(); i++) {
        if ((set >> i & 1) == 1) {
          double[] w = wheels.get(i);
          double[] at = {1, w[0], w[1]};
          for (int r = 0; r < 3; r++) {
            for (int c = 0; c < 3; c++) {
              a[r][c] += w[2] * at[r] * at[c];
            }
          }
        }
      }
      a[0][3] = n;
      a[1][3] = mx;
      a[2][3] = my;
      double[] s = eliminated(a);
      if (s == null) {
        continue;
      }
      boolean fits = true;
      for (int i = 0; i < wheels.size() && fits; i++) {
        double sink = s[0] + s[1] * wheels.get(i)[0] + s[2] * wheels.get(i)[1];
        fits = (set >> i & 1) == 1 ? sink >= -1e-12 : sink <= 1e-12;
      }
      if (fits) {
        return s;
      }
    }
    return null;
  }

  private static double[] eliminated(double[][] a) {
    double size = a[0][0];
    for (int k = 0; k < 3; k++) {
      int best = k;
      for (int r = k; r < 3; r++) {
        best = Math.abs(a[r][k]) > Math.abs(a[best][k]) ? r : best;
      }
      double[] row = a[k];
      a[k] = a[best];
      a[best] = row;
      if (Math.abs(a[k][k]) < 1e-9 * size) {
        return null;
      }
      for (int r = 0; r < 3; r++) {
        if (r != k) {
          double f = a[r][k] / a[k][k];
          for (int c = k; c < 4; c++) {
            a[r][c] -= f * a[k][c];
          }
        }
      }
    }
    return new double[] {a[0][3] / a[0][0], a[1][3] / a[1][1], a[2][3] / a[2][2]};
  }

  private FanCurve fan() {
    return m.fan().running(m.air().air().density());
  }

  /**
   * The machine on tilted ground; null when it does not settle there.
   *
   * @param downhill angle of the way down in the machine
   * @param keep plane to keep; null to let the springs decide
   */
  Found settle(double tilt, double downhill, Dip dip, double[] keep) {
    FanCurve fan = fan();
    double top = fan.largestFlow();
    double step = top / STEPS;
    double high = top;
    double was = missing(tilt, downhill, high, dip, keep);
    for (int k = STEPS - 1; k > 0; k--) {
      double low = k * step;
      double now = missing(tilt, downhill, low, dip, keep);
      if (was < 0 && now >= 0) {
        double a = low;
        double b = high;
        for (int i = 0; i < 36; i++) {
          double mid = 0.5 * (a + b);
          if (missing(tilt, downhill, mid, dip, keep) >= 0) {
            a = mid;
          } else {
            b = mid;
          }
        }
        Found f = at(tilt, downhill, 0.5 * (a + b), keep);
        return f != null && clear(f.plane()) ? f : null;
      }
      was = now;
      high = low;
    }
    return null;
  }

  private boolean clear(double[] plane) {
    for (double[] s : seal) {
      if (s[3] - plane[0] - plane[1] * s[0] - plane[2] * s[1] <= 0) {
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
    double rho = m.air().air().density();
    double jet = Math.sqrt(2 * f.suction() / rho);
    double q = 0;
    for (double[] s : seal) {
      double h = s[3] - f.plane()[0] - f.plane()[1] * s[0] - f.plane()[2] * s[1];
      double share = 0;
      if (dip != null && s[6] < 0 && dip.edges().contains((int) s[5])) {
        share = Math.min(1, dip.length() / edgeLength((int) s[5]));
      } else if (dip != null && s[6] >= 0 && dip.corner() == (int) s[6]) {
        share = 1;
      }
      q += (1 - share) * through(h, s) * jet;
      q += share > 0 ? share * through(h + dip.height(), s) * jet : 0;
    }
    if (m.valve() != null) {
      q += m.valve().flow(f.suction(), rho);
    }
    for (OtherLeak o : m.otherLeaks()) {
      q += o.dischargeCoefficient() * o.area() * jet;
    }
    return q - flow;
  }

  private double edgeLength(int edge) {
    return seal.stream().filter(s -> (int) s[5] == edge).mapToDouble(s -> s[2]).sum();
  }

  private double through(double h, double[] s) {
    return h <= 0 ? 0 : discharge.applyAsDouble(h) * h * (s[2] + s[4] * h);
  }

  /** Forces and sink at a flow of the fan. */
  private Found at(double tilt, double downhill, double flow, double[] keep) {
    FanCurve fan = fan();
    double p = fan.pressureAt(flow);
    if (!(p > 1e-3)) {
      return null;
    }
    double rho = m.air().air().density();
    double w = m.load().mass() * G;
    double[] force = new double[3];
    double[] moment = new double[3];
    double valve = m.valve() == null ? 0 : 0.5 * m.valve().flow(p, rho) * Math.sqrt(2 * p * rho);
    add(force, moment, new double[] {0, 0, -p * area + valve}, centre[0], centre[1], 0);
    for (double[] s : seal) {
      add(force, moment, new double[] {0, 0, lift * p * s[2]}, s[0], s[1], 0);
    }
    if (m.fan().exitArea() > 0) {
      double power = m.fan().shaftPower(fan, flow, p);
      double v = flow / m.fan().exitArea();
      double left = power - flow * p;
      v = 0.5 * rho * flow * v * v > left ? Math.sqrt(Math.max(0, 2 * left / (rho * flow))) : v;
      double f = rho * flow * v;
      double angle = m.fan().exitAngle();
      add(
          force,
          moment,
          new double[] {f * Math.cos(angle), 0, -f * Math.sin(angle)},
          m.fan().x(),
          m.fan().y(),
          m.fan().height());
    }
    double down = -force[2];
    add(
        force,
        moment,
        new double[] {
          w * Math.sin(tilt) * Math.cos(downhill),
          w * Math.sin(tilt) * Math.sin(downhill),
          -w * Math.cos(tilt)
        },
        m.load().x(),
        m.load().y(),
        m.load().height());
    double[] plane = keep;
    if (plane == null) {
      // ground forces: N = -Fz, and about the origin Σ N y = -Mx... with Σ N x = My
      double n = -force[2];
      double[] s = contact(n, moment[1], -moment[0]);
      if (s == null) {
        return null;
      }
      double middle = m.running().axles().stream().mapToDouble(Axle::x).average().orElse(0);
      double n0 = n - w;
      double m0 = moment[1] - w * m.load().x();
      double heave = n0 / m.running().heaveStiffness();
      double pitch = (m0 - middle * n0) / m.running().pitchStiffness();
      plane =
          new double[] {
            s[0] - sinkAtRest[0] + heave - pitch * middle,
            s[1] - sinkAtRest[1] + pitch,
            s[2] - sinkAtRest[2]
          };
    }
    return new Found(p, flow, plane, force, moment, down);
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
    double[] s = contact(-f.force()[2], f.moment()[1], -f.moment()[0]);
    if (s == null) {
      return null;
    }
    double[] n = new double[wheels.size()];
    for (int i = 0; i < n.length; i++) {
      n[i] =
          wheels.get(i)[2] * Math.max(0, s[0] + s[1] * wheels.get(i)[0] + s[2] * wheels.get(i)[1]);
    }
    return n;
  }

  /** Friction there is over friction needed, by trying ways to slide; 0 when it tips. */
  double slip(Found f) {
    double[] n = wheelLoads(f);
    if (n == null) {
      return 0;
    }
    double[] load = {f.force()[0], f.force()[1], f.moment()[2]};
    double pull = Math.hypot(load[0], load[1]);
    if (pull < 1e-9) {
      return Double.POSITIVE_INFINITY;
    }
    double size = 0;
    for (double[] w : wheels) {
      size = Math.max(size, Math.hypot(w[0], w[1]));
    }
    double best = Double.POSITIVE_INFINITY;
    double[] at = new double[3];
    for (int i = 0; i < 24; i++) {
      for (int k = -12; k <= 12; k++) {
        double turn = Math.PI * k / 26;
        double[] t = {
          Math.cos(2 * Math.PI * i / 24) * Math.cos(turn),
          Math.sin(2 * Math.PI * i / 24) * Math.cos(turn),
          Math.sin(turn) / size
        };
        double r = resists(n, load, t);
        if (r < best) {
          best = r;
          at = t;
        }
      }
    }
    for (double d = 0.2; d > 1e-5; d *= 0.6) {
      for (int again = 0; again < 12; again++) {
        double before = best;
        for (int i = 0; i < 26; i++) {
          int code = i < 13 ? i : i + 1;
          double[] t = {
            at[0] + d * (code % 3 - 1),
            at[1] + d * (code / 3 % 3 - 1),
            at[2] + d / size * (code / 9 - 1)
          };
          double r = resists(n, load, t);
          if (r < best) {
            best = r;
            at = t;
          }
        }
        if (best == before) {
          break;
        }
      }
    }
    SplittableRandom chance = new SplittableRandom(7);
    for (double d = 0.03; d > 1e-7; d *= 0.9) {
      for (int i = 0; i < 30; i++) {
        double[] t = at.clone();
        for (int c = 0; c < 3; c++) {
          t[c] += d * (c == 2 ? 1 / size : 1) * (2 * chance.nextDouble() - 1);
        }
        double r = resists(n, load, t);
        if (r < best) {
          best = r;
          at = t;
        }
      }
    }
    return m.running().peakFriction() * best;
  }

  /** Work of friction of coefficient 1 over work of the load, for one way to slide. */
  private double resists(double[] n, double[] load, double[] t) {
    double work = load[0] * t[0] + load[1] * t[1] + load[2] * t[2];
    if (work <= 1e-12 * Math.abs(load[0] + load[1])) {
      return Double.POSITIVE_INFINITY;
    }
    double lost = 0;
    for (int i = 0; i < n.length; i++) {
      double u = t[0] - t[2] * wheels.get(i)[1];
      double v = t[1] + t[2] * wheels.get(i)[0];
      lost += n[i] * (wheels.get(i)[3] > 0 ? Math.hypot(u, v) : Math.abs(v));
    }
    return lost / work;
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
      if (l[0] > 0 && contact(l[0], l[1], l[2]) != null) {
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
      double least = Double.POSITIVE_INFINITY;
      double[] n = bonded(l);
      double left = 0;
      double right = 0;
      int k = 0;
      for (Axle a : m.running().axles()) {
        double sum = 0;
        for (int w = 0; w < (a.track() == 0 ? 1 : 2); w++, k++) {
          sum += n[k];
          double y = wheels.get(k)[1];
          left += n[k] * (y > 0 ? 1 : y < 0 ? 0 : 0.5);
          right += n[k] * (y < 0 ? 1 : y > 0 ? 0 : 0.5);
        }
        least = Math.min(least, sum);
      }
      if (Math.min(least, Math.min(left, right)) > 0) {
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
            + more * (pull * Math.cos(downhill) * h + jet * m.fan().height())
            + weight * w * Math.cos(tilt) * m.load().x();
    double my =
        -f.moment()[0]
            + more * pull * Math.sin(downhill) * h
            + weight * w * Math.cos(tilt) * m.load().y();
    return new double[] {n, mx, my};
  }

  private double[] bonded(double[] load) {
    double[][] a = new double[3][4];
    for (double[] w : wheels) {
      double[] at = {1, w[0], w[1]};
      for (int r = 0; r < 3; r++) {
        for (int c = 0; c < 3; c++) {
          a[r][c] += w[2] * at[r] * at[c];
        }
      }
    }
    for (int r = 0; r < 3; r++) {
      a[r][3] = load[r];
    }
    double[] s = eliminated(a);
    double[] n = new double[wheels.size()];
    for (int i = 0; i < n.length; i++) {
      n[i] = wheels.get(i)[2] * (s[0] + s[1] * wheels.get(i)[0] + s[2] * wheels.get(i)[1]);
    }
    return n;
  }

  /** True when it lets go: no balance, no wheel forces, or too little friction. */
  boolean letsGo(double tilt, double downhill, Dip dip, double[] keep) {
    Found f = settle(tilt, downhill, dip, keep);
    return f == null || wheelLoads(f) == null || slip(f) < 1;
  }
}
