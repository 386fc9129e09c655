package hemline.solver.plenum;

import hemline.shared.geometry.Arc;
import hemline.shared.geometry.Vertex;
import hemline.shared.vehicle.Machine;
import java.util.ArrayList;
import java.util.List;

/** The seal in many straight samples and its corners, floor area and centre by a fine polygon. */
final class SecondSeal {
  private static final int SAMPLES = 12;

  /**
   * A sample.
   *
   * @param length m; 0 at a corner
   * @param turn right angles of turn that belong to it; 0 along edges
   * @param corner number of the corner; -1 along edges
   */
  record Sample(double x, double y, double length, double gap, double turn, int edge, int corner) {
    /** Gap over a plane of sink. */
    double over(double[] plane) {
      return gap - plane[0] - plane[1] * x - plane[2] * y;
    }
  }

  final List<Sample> samples = new ArrayList<>();
  final double area;
  final double[] centre;
  private final double[] edgeLength;

  SecondSeal(Machine m) {
    List<Vertex> v = m.floor().vertices();
    int n = v.size();
    edgeLength = new double[n];
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
        samples.add(new Sample(0.5 * (p[0] + q[0]), 0.5 * (p[1] + q[1]), length, gap, 0, i, -1));
        edgeLength[i] += length;
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
          samples.add(new Sample(b.x(), b.y(), 0, g, turn / Math.PI, e, (i + 1) % n));
        }
      }
    }
    double s = 0;
    double sx = 0;
    double sy = 0;
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
  }

  double edgeLength(int edge) {
    return edgeLength[edge];
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
}
