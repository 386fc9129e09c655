package hemline.shared.vehicle;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A rigid frame on wheels that press but never pull.
 *
 * <p>The plane w = z + a x + b y that carries a load makes the energy Σ ½ k max(0, w)² − N z − Mx a
 * − My b least; it exists while the resultant lies within the wheels. Found by Newton's method with
 * halved steps, which for piecewise quadratics ends after a few changes of the wheels that stand.
 */
public final class WheelStand {
  private static final int MOST_STEPS = 60;
  private static final double SETTLED = 1e-10;
  private static final double BARELY = 1e-12;

  private final double[] x;
  private final double[] y;
  private final double[] k;
  private final double[][] all;
  private final double[][] inverse = new double[3][];
  private final SupportPolygon polygon;

  public WheelStand(List<Axle> axles) {
    List<WheelLoads.Wheel> wheels = WheelLoads.wheels(axles);
    x = wheels.stream().mapToDouble(WheelLoads.Wheel::x).toArray();
    y = wheels.stream().mapToDouble(WheelLoads.Wheel::y).toArray();
    k = wheels.stream().mapToDouble(WheelLoads.Wheel::stiffness).toArray();
    all = WheelLoads.stiffness(axles);
    for (int i = 0; i < 3; i++) {
      double[] unit = new double[3];
      unit[i] = 1;
      inverse[i] = WheelLoads.solve(all, unit);
    }
    polygon = new SupportPolygon(axles);
  }

  public SupportPolygon polygon() {
    return polygon;
  }

  /** The plane {z, a, b} with every wheel held to the ground, pulling where it must, m. */
  public double[] bonded(double[] load) {
    double[] s = new double[3];
    for (int i = 0; i < 3; i++) {
      for (int j = 0; j < 3; j++) {
        s[j] += inverse[i][j] * load[i];
      }
    }
    return s;
  }

  /**
   * The plane {z, a, b} in which wheels only press.
   *
   * @param load {N, Σ N x, Σ N y} towards the ground
   * @return null when the resultant leaves the wheels
   */
  public double @Nullable [] plane(double[] load) {
    double[] s = bonded(load);
    if (everyWheelPresses(s)) {
      return s;
    }
    if (load[0] <= 0 || polygon.restoring(load) <= 0) {
      return null;
    }
    double size = Math.abs(load[0]);
    for (int step = 0; step < MOST_STEPS; step++) {
      double[] g = slope(s, load);
      if (norm(g) < SETTLED * size) {
        return s;
      }
      double[] d = WheelLoads.solve(standing(s), new double[] {-g[0], -g[1], -g[2]});
      double now = energy(s, load);
      double part = 1;
      double[] next = moved(s, d, part);
      while (part > BARELY && energy(next, load) >= now) {
        part *= 0.5;
        next = moved(s, d, part);
      }
      if (part <= BARELY) {
        return norm(g) < 1e4 * SETTLED * size ? s : null;
      }
      s = next;
    }
    return norm(slope(s, load)) < 1e4 * SETTLED * size ? s : null;
  }

  /** Loads of the wheels on a plane, N; 0 where one hangs free. */
  public double[] pressed(double[] plane) {
    double[] n = new double[x.length];
    for (int i = 0; i < n.length; i++) {
      n[i] = k[i] * Math.max(0, sink(plane, i));
    }
    return n;
  }

  private boolean everyWheelPresses(double[] s) {
    for (int i = 0; i < x.length; i++) {
      if (sink(s, i) < 0) {
        return false;
      }
    }
    return true;
  }

  private double sink(double[] s, int i) {
    return s[0] + s[1] * x[i] + s[2] * y[i];
  }

  private double energy(double[] s, double[] load) {
    double e = -load[0] * s[0] - load[1] * s[1] - load[2] * s[2];
    for (int i = 0; i < x.length; i++) {
      double w = Math.max(0, sink(s, i));
      e += 0.5 * k[i] * w * w;
    }
    return e;
  }

  private double[] slope(double[] s, double[] load) {
    double[] g = {-load[0], -load[1], -load[2]};
    for (int i = 0; i < x.length; i++) {
      double n = k[i] * Math.max(0, sink(s, i));
      g[0] += n;
      g[1] += n * x[i];
      g[2] += n * y[i];
    }
    return g;
  }

  /** Stiffness of the wheels that stand, with a trace of all of them where two alone do. */
  private double[][] standing(double[] s) {
    double[][] m = new double[3][3];
    for (int i = 0; i < 3; i++) {
      for (int j = 0; j < 3; j++) {
        m[i][j] = 1e-9 * all[i][j];
      }
    }
    for (int w = 0; w < x.length; w++) {
      if (sink(s, w) > 0) {
        double[] at = {1, x[w], y[w]};
        for (int i = 0; i < 3; i++) {
          for (int j = 0; j < 3; j++) {
            m[i][j] += k[w] * at[i] * at[j];
          }
        }
      }
    }
    return m;
  }

  private static double[] moved(double[] s, double[] d, double part) {
    return new double[] {s[0] + part * d[0], s[1] + part * d[1], s[2] + part * d[2]};
  }

  private static double norm(double[] g) {
    return Math.sqrt(g[0] * g[0] + g[1] * g[1] + g[2] * g[2]);
  }
}
