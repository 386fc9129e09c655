package hemline.solver.plenum;

import hemline.shared.vehicle.Axle;
import hemline.shared.vehicle.Machine;
import java.util.ArrayList;
import java.util.List;

/** Wheels that press or hang free, by trying every set of them. */
final class SecondWheels {
  /**
   * A wheel.
   *
   * @param holds most force along the machine beside friction, N
   */
  record Wheel(double x, double y, double k, double holds) {}

  final List<Wheel> all = new ArrayList<>();
  private final List<Axle> axles;

  SecondWheels(Machine m) {
    axles = m.running().axles();
    for (Axle a : axles) {
      double most = a.braked() ? a.brakeForce() : a.driven() ? Double.POSITIVE_INFINITY : 0;
      if (a.track() == 0) {
        all.add(new Wheel(a.x(), 0, a.stiffness(), most));
      } else {
        all.add(new Wheel(a.x(), 0.5 * a.track(), 0.5 * a.stiffness(), 0.5 * most));
        all.add(new Wheel(a.x(), -0.5 * a.track(), 0.5 * a.stiffness(), 0.5 * most));
      }
    }
  }

  private static double sink(double[] plane, Wheel w) {
    return plane[0] + plane[1] * w.x() + plane[2] * w.y();
  }

  /** Plane of the wheels' sink under {N, Σ N x, Σ N y}; null when no set of wheels carries it. */
  double[] contact(double n, double mx, double my) {
    for (int set = (1 << all.size()) - 1; set > 0; set--) {
      double[] s = carried(set, n, mx, my);
      if (s == null) {
        continue;
      }
      boolean fits = true;
      for (int i = 0; i < all.size() && fits; i++) {
        double sink = sink(s, all.get(i));
        fits = (set >> i & 1) == 1 ? sink >= -1e-12 : sink <= 1e-12;
      }
      if (fits) {
        return s;
      }
    }
    return null;
  }

  /** Plane on which the wheels of a set carry a load, pulling where they must. */
  private double[] carried(int set, double n, double mx, double my) {
    double[][] a = new double[3][4];
    for (int i = 0; i < all.size(); i++) {
      if ((set >> i & 1) == 1) {
        Wheel w = all.get(i);
        double[] at = {1, w.x(), w.y()};
        for (int r = 0; r < 3; r++) {
          for (int c = 0; c < 3; c++) {
            a[r][c] += w.k() * at[r] * at[c];
          }
        }
      }
    }
    a[0][3] = n;
    a[1][3] = mx;
    a[2][3] = my;
    return eliminated(a);
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

  /** Loads of the wheels, N; null when no wheel forces carry it. */
  double[] loads(double n, double mx, double my) {
    double[] s = contact(n, mx, my);
    if (s == null) {
      return null;
    }
    return all.stream().mapToDouble(w -> w.k() * Math.max(0, sink(s, w))).toArray();
  }

  /** The least load of an axle or a side with every wheel held to the ground, N. */
  double leastOfAxlesAndSides(double n, double mx, double my) {
    double[] s = carried((1 << all.size()) - 1, n, mx, my);
    double least = Double.POSITIVE_INFINITY;
    double left = 0;
    double right = 0;
    int k = 0;
    for (Axle a : axles) {
      double sum = 0;
      for (int i = 0; i < (a.track() == 0 ? 1 : 2); i++, k++) {
        Wheel w = all.get(k);
        double load = w.k() * sink(s, w);
        sum += load;
        left += load * (w.y() > 0 ? 1 : w.y() < 0 ? 0 : 0.5);
        right += load * (w.y() < 0 ? 1 : w.y() > 0 ? 0 : 0.5);
      }
      least = Math.min(least, sum);
    }
    return Math.min(least, Math.min(left, right));
  }
}
