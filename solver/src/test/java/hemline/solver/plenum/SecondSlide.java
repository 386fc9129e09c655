package hemline.solver.plenum;

import java.util.List;
import java.util.SplittableRandom;

/**
 * Friction there is over friction needed, by trying ways to slide: every way is an upper bound, the
 * least of them the answer.
 */
final class SecondSlide {
  private static final int AROUND = 24;
  private static final int TURNS = 12;

  private final List<SecondWheels.Wheel> wheels;
  private final double[] limit;
  private final double[] load;
  private final double size;
  private double best = Double.POSITIVE_INFINITY;
  private double[] at = new double[3];

  /**
   * Wheels under a load.
   *
   * @param limit friction by wheel, N
   * @param load along x, along y, about the origin
   */
  SecondSlide(List<SecondWheels.Wheel> wheels, double[] limit, double[] load) {
    this.wheels = wheels;
    this.limit = limit;
    this.load = load;
    double most = 0;
    for (SecondWheels.Wheel w : wheels) {
      most = Math.max(most, Math.hypot(w.x(), w.y()));
    }
    size = most;
  }

  /** A bound from above by a coarse fan of ways. */
  double rough() {
    for (int i = 0; i < AROUND; i++) {
      for (int k = -TURNS; k <= TURNS; k++) {
        double turn = Math.PI * k / (2 * TURNS + 2);
        attempt(
            Math.cos(2 * Math.PI * i / AROUND) * Math.cos(turn),
            Math.sin(2 * Math.PI * i / AROUND) * Math.cos(turn),
            Math.sin(turn) / size);
      }
    }
    return best;
  }

  /** The margin. */
  double margin() {
    rough();
    for (double d = 0.2; d > 1e-5; d *= 0.6) {
      for (int again = 0; again < 12; again++) {
        double before = best;
        for (int i = 0; i < 26; i++) {
          int code = i < 13 ? i : i + 1;
          attempt(
              at[0] + d * (code % 3 - 1),
              at[1] + d * (code / 3 % 3 - 1),
              at[2] + d / size * (code / 9 - 1));
        }
        if (best == before) {
          break;
        }
      }
    }
    SplittableRandom chance = new SplittableRandom(7);
    for (double d = 0.03; d > 1e-7; d *= 0.9) {
      for (int i = 0; i < 30; i++) {
        attempt(
            at[0] + d * (2 * chance.nextDouble() - 1),
            at[1] + d * (2 * chance.nextDouble() - 1),
            at[2] + d / size * (2 * chance.nextDouble() - 1));
      }
    }
    return best;
  }

  private void attempt(double x, double y, double turn) {
    double r = resists(x, y, turn);
    if (r < best) {
      best = r;
      at = new double[] {x, y, turn};
    }
  }

  /** Work of friction over work of the load, for one way to slide. */
  private double resists(double x, double y, double turn) {
    double work = load[0] * x + load[1] * y + load[2] * turn;
    if (work <= 1e-12 * Math.abs(load[0] + load[1])) {
      return Double.POSITIVE_INFINITY;
    }
    double lost = 0;
    for (int i = 0; i < limit.length; i++) {
      SecondWheels.Wheel w = wheels.get(i);
      lost += most(limit[i], w.holds(), x - turn * w.y(), y + turn * w.x());
    }
    return lost / work;
  }

  /**
   * The most work that a force of at most c, and at most b along, takes from a wheel sliding by (u,
   * v): the force against the motion where it is allowed, else one with b along.
   */
  private static double most(double c, double b, double u, double v) {
    double speed = Math.hypot(u, v);
    if (speed == 0 || c * Math.abs(u) / speed <= b) {
      return c * speed;
    }
    return b * Math.abs(u) + Math.sqrt(c * c - b * b) * Math.abs(v);
  }
}
