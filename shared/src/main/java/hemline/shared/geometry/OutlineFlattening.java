package hemline.shared.geometry;

import java.util.ArrayList;
import java.util.List;

/** Turns arcs into chords. */
final class OutlineFlattening {
  private OutlineFlattening() {}

  static Ring flatten(Outline outline) {
    List<Vertex> v = outline.vertices();
    List<double[]> points = new ArrayList<>();
    for (int i = 0; i < v.size(); i++) {
      Vertex a = v.get(i);
      Vertex b = v.get((i + 1) % v.size());
      points.add(new double[] {a.x(), a.y()});
      if (a.bulge() != 0) {
        addArc(points, a, b);
      }
    }
    int n = points.size();
    double twiceArea = 0;
    for (int i = 0; i < n; i++) {
      double[] p = points.get(i);
      double[] q = points.get((i + 1) % n);
      twiceArea += p[0] * q[1] - q[0] * p[1];
    }
    double[] x = new double[n];
    double[] y = new double[n];
    for (int i = 0; i < n; i++) {
      double[] p = points.get(twiceArea >= 0 ? i : n - 1 - i);
      x[i] = p[0];
      y[i] = p[1];
    }
    return new Ring(x, y);
  }

  /** Adds the inner points of the arc from a to b: chords between the axis extremes. */
  static void addArc(List<double[]> points, Vertex a, Vertex b) {
    Arc arc = Arc.of(a, b);
    double xc = arc.xc();
    double yc = arc.yc();
    double radius = arc.radius();
    double start = arc.start();
    double sweep = arc.sweep();
    List<Double> cuts = new ArrayList<>();
    cuts.add(start);
    double quarter = Math.PI / 2;
    if (sweep > 0) {
      for (double k = Math.floor(start / quarter) + 1; k * quarter < start + sweep - 1e-9; k++) {
        if (k * quarter > start + 1e-9) {
          cuts.add(k * quarter);
        }
      }
    } else {
      for (double k = Math.ceil(start / quarter) - 1; k * quarter > start + sweep + 1e-9; k--) {
        if (k * quarter < start - 1e-9) {
          cuts.add(k * quarter);
        }
      }
    }
    cuts.add(start + sweep);
    double step = 2 * Math.acos(1 - Outline.SAGITTA);
    for (int c = 0; c + 1 < cuts.size(); c++) {
      double from = cuts.get(c);
      double to = cuts.get(c + 1);
      int chords = Math.max(1, (int) Math.ceil(Math.abs(to - from) / step));
      for (int k = c == 0 ? 1 : 0; k < chords; k++) {
        double t = from + (to - from) * k / chords;
        // exact on the axes, so that extremes are extremes to the last bit
        boolean onAxis = c > 0 && k == 0;
        double cos = onAxis ? Math.rint(Math.cos(t)) : Math.cos(t);
        double sin = onAxis ? Math.rint(Math.sin(t)) : Math.sin(t);
        points.add(new double[] {xc + radius * cos, yc + radius * sin});
      }
    }
  }
}
