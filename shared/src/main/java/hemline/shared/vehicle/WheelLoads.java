package hemline.shared.vehicle;

import java.util.ArrayList;
import java.util.List;

/**
 * Normal forces of the wheels of a rigid frame on springs.
 *
 * <p>A sink w(x, y) = z + a x + b y of the frame presses wheel i by k_i w(x_i, y_i); a normal force
 * N (towards the ground) at (x, y) fixes z, a, b by force and two moments: K (z, a, b)ᵀ = N (1, x,
 * y)ᵀ with K = Σ k_i (1, x_i, y_i)ᵀ (1, x_i, y_i).
 */
public final class WheelLoads {
  private WheelLoads() {}

  /**
   * A wheel.
   *
   * @param axle number of its axle
   * @param x m, forwards
   * @param y m, to the left
   * @param stiffness N/m
   */
  public record Wheel(int axle, double x, double y, double stiffness) {}

  /** Wheels of the axles, left before right. */
  public static List<Wheel> wheels(List<Axle> axles) {
    List<Wheel> wheels = new ArrayList<>();
    for (int i = 0; i < axles.size(); i++) {
      Axle axle = axles.get(i);
      if (axle.track() == 0) {
        wheels.add(new Wheel(i, axle.x(), 0, axle.stiffness()));
      } else {
        wheels.add(new Wheel(i, axle.x(), 0.5 * axle.track(), 0.5 * axle.stiffness()));
        wheels.add(new Wheel(i, axle.x(), -0.5 * axle.track(), 0.5 * axle.stiffness()));
      }
    }
    return wheels;
  }

  /** Stiffness K against (z, a, b). */
  public static double[][] stiffness(List<Axle> axles) {
    double[][] k = new double[3][3];
    for (Wheel w : wheels(axles)) {
      double[] at = {1, w.x(), w.y()};
      for (int i = 0; i < 3; i++) {
        for (int j = 0; j < 3; j++) {
          k[i][j] += w.stiffness() * at[i] * at[j];
        }
      }
    }
    return k;
  }

  /** True when the wheels hold the frame against heave, pitch and roll. */
  public static boolean stand(List<Axle> axles) {
    List<Wheel> wheels = wheels(axles);
    if (wheels.size() < 3) {
      return false;
    }
    double largest = 0;
    double span = 0;
    for (Wheel a : wheels) {
      for (Wheel b : wheels) {
        span = Math.max(span, Math.hypot(a.x() - b.x(), a.y() - b.y()));
        for (Wheel c : wheels) {
          double cross = (b.x() - a.x()) * (c.y() - a.y()) - (b.y() - a.y()) * (c.x() - a.x());
          largest = Math.max(largest, Math.abs(cross));
        }
      }
    }
    return largest > 1e-6 * span * span && span > 0;
  }

  /**
   * Wheel loads under a normal force towards the ground and its moments.
   *
   * @param force {N, Σ N x, Σ N y}; N, N m, N m
   * @return N by wheel; negative where a wheel would have to pull
   */
  public static double[] under(List<Axle> axles, double[] force) {
    double[] sink = solve(stiffness(axles), force);
    return wheels(axles).stream()
        .mapToDouble(w -> w.stiffness() * (sink[0] + sink[1] * w.x() + sink[2] * w.y()))
        .toArray();
  }

  /** Solves a symmetric system of three by Cramer's rule; neither argument is modified. */
  public static double[] solve(double[][] m, double[] r) {
    double det = determinant(m);
    double[] out = new double[3];
    for (int c = 0; c < 3; c++) {
      double[][] changed = {m[0].clone(), m[1].clone(), m[2].clone()};
      for (int row = 0; row < 3; row++) {
        changed[row][c] = r[row];
      }
      out[c] = determinant(changed) / det;
    }
    return out;
  }

  private static double determinant(double[][] m) {
    return m[0][0] * (m[1][1] * m[2][2] - m[1][2] * m[2][1])
        - m[0][1] * (m[1][0] * m[2][2] - m[1][2] * m[2][0])
        + m[0][2] * (m[1][0] * m[2][1] - m[1][1] * m[2][0]);
  }
}
