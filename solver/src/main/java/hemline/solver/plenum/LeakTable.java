package hemline.solver.plenum;

import hemline.shared.result.Estimate;
import hemline.shared.result.LeakPoint;
import hemline.shared.vehicle.MonotoneCurve;
import java.util.List;
import java.util.function.ToDoubleFunction;

/**
 * Discharge coefficient and lip lift of one lip over gap and suction, between solved points.
 *
 * <p>Monotone curves over ln Δp at each solved gap (at a given gap that is twice ln Re), then over
 * ln h. How far they lie from straight lines between the same points counts as an error of
 * interpolation and is added to the numerical part of the band. Beyond the solved points the
 * coefficient stays as at the nearest one, and the band grows by what it would change if its last
 * slope went on; below the smallest gap it also reaches down to the flow of a viscous film, C_d ~
 * h², to which every lip comes as its gap closes. The lift's band grows likewise. Laid out once on
 * a fine grid, because a balance reads it very often.
 */
final class LeakTable {
  private static final int FINE = 24;

  /** Largest widening of a band beyond the solved points. */
  private static final double MOST_BEYOND = 0.5;

  private static final int VALUE = 0;
  private static final int NUMERICAL = 1;
  private static final int ITERATION = 2;
  private static final int MODEL_LOW = 3;
  private static final int MODEL_HIGH = 4;
  private static final int LIFT = 5;
  private static final int LIFT_WIDTH = 6;
  private static final int FIELDS = 7;

  private final double[] logGap;
  private final double[] logSuction;
  private final double gapLow;
  private final double gapStep;
  private final double suctionLow;
  private final double suctionStep;
  private final int rows;
  private final int columns;
  private final double[][][] fine;

  /**
   * Table through usable points.
   *
   * @param gaps m, increasing
   * @param suctions Pa, positive, increasing
   * @param points by gap, then by suction, all usable
   */
  LeakTable(List<Double> gaps, List<Double> suctions, List<LeakPoint> points) {
    this(gaps, suctions, points, true);
  }

  /**
   * Table through usable points.
   *
   * @param smooth false for straight lines between the points
   */
  LeakTable(List<Double> gaps, List<Double> suctions, List<LeakPoint> points, boolean smooth) {
    if (points.size() != gaps.size() * suctions.size()) {
      throw new IllegalArgumentException("a leak table needs a point for each gap and suction");
    }
    logGap = gaps.stream().mapToDouble(Math::log).toArray();
    logSuction = suctions.stream().mapToDouble(Math::log).toArray();
    gapLow = logGap[0];
    suctionLow = logSuction[0];
    rows = fine(logGap);
    columns = fine(logSuction);
    gapStep = rows == 1 ? 1 : (logGap[logGap.length - 1] - gapLow) / (rows - 1);
    suctionStep =
        columns == 1 ? 1 : (logSuction[logSuction.length - 1] - suctionLow) / (columns - 1);
    fine = new double[FIELDS][rows][columns];
    fine[VALUE] = layOut(points, p -> p.discharge().value(), smooth);
    fine[NUMERICAL] = smooth(points, p -> p.discharge().numerical());
    fine[ITERATION] = smooth(points, p -> p.discharge().iteration());
    fine[MODEL_LOW] = smooth(points, p -> p.discharge().modelLow());
    fine[MODEL_HIGH] = smooth(points, p -> p.discharge().modelHigh());
    fine[LIFT] = smooth(points, p -> p.lift().value());
    fine[LIFT_WIDTH] = smooth(points, p -> 0.5 * (p.lift().high() - p.lift().low()));
    double[][] straight = layOut(points, p -> p.discharge().value(), false);
    double[][] straightLift = layOut(points, p -> p.lift().value(), false);
    for (int i = 0; i < rows; i++) {
      for (int j = 0; j < columns; j++) {
        fine[NUMERICAL][i][j] += Math.abs(straight[i][j] - fine[VALUE][i][j]);
        fine[LIFT_WIDTH][i][j] += Math.abs(straightLift[i][j] - fine[LIFT][i][j]);
      }
    }
  }

  /** Lines of the fine grid, so that solved points that stand on a ladder lie on them. */
  private static int fine(double[] log) {
    if (log.length == 1) {
      return 1;
    }
    double least = Double.POSITIVE_INFINITY;
    for (int i = 1; i < log.length; i++) {
      least = Math.min(least, log[i] - log[i - 1]);
    }
    return (int) Math.round((log[log.length - 1] - log[0]) / least) * FINE + 1;
  }

  private double[][] smooth(List<LeakPoint> points, ToDoubleFunction<LeakPoint> of) {
    return layOut(points, of, true);
  }

  private double[][] layOut(
      List<LeakPoint> points, ToDoubleFunction<LeakPoint> of, boolean smooth) {
    int m = logSuction.length;
    double[][] along = new double[logGap.length][columns];
    for (int g = 0; g < logGap.length; g++) {
      double[] y = points.subList(g * m, g * m + m).stream().mapToDouble(of).toArray();
      MonotoneCurve curve = new MonotoneCurve(logSuction, y);
      for (int j = 0; j < columns; j++) {
        double at = suctionLow + j * suctionStep;
        along[g][j] = smooth ? curve.at(at) : curve.straightAt(at);
      }
    }
    double[][] out = new double[rows][columns];
    double[] y = new double[logGap.length];
    for (int j = 0; j < columns; j++) {
      for (int g = 0; g < logGap.length; g++) {
        y[g] = along[g][j];
      }
      MonotoneCurve curve = new MonotoneCurve(logGap, y);
      for (int i = 0; i < rows; i++) {
        double at = gapLow + i * gapStep;
        out[i][j] = smooth ? curve.at(at) : curve.straightAt(at);
      }
    }
    return out;
  }

  /** Smallest solved gap, m. */
  double leastGap() {
    return Math.exp(gapLow);
  }

  /** True when gap and suction lie among the solved points, with 2 % to spare. */
  boolean holds(double gap, double suction) {
    double edge = 0.02;
    return Math.log(gap) > gapLow - edge
        && Math.log(gap) < logGap[logGap.length - 1] + edge
        && Math.log(suction) > suctionLow - edge
        && Math.log(suction) < logSuction[logSuction.length - 1] + edge;
  }

  /** Discharge coefficient on one side of its band, by the logarithms of gap and suction. */
  double discharge(double x, double y, Side side) {
    return switch (side) {
      case VALUE -> read(VALUE, x, y);
      case LOW -> Math.max(0, estimate(x, y).low());
      case HIGH -> estimate(x, y).high();
    };
  }

  /** Discharge coefficient with its band, by the logarithms of gap and suction. */
  Estimate estimate(double x, double y) {
    return new Estimate(
        read(VALUE, x, y),
        read(NUMERICAL, x, y) + beyond(VALUE, x, y),
        read(ITERATION, x, y),
        read(MODEL_LOW, x, y) + film(x, y),
        read(MODEL_HIGH, x, y),
        Estimate.Trend.UNKNOWN);
  }

  /**
   * Upward lip force per metre over the suction, m, by the logarithms of gap and suction. Where the
   * leaks are taken high the lip is taken to pull down least, so that no downforce is over-stated.
   */
  double lift(double x, double y, Side side) {
    double lift = read(LIFT, x, y);
    return switch (side) {
      case VALUE -> lift;
      case LOW -> lift - read(LIFT_WIDTH, x, y) - beyond(LIFT, x, y);
      case HIGH -> lift + read(LIFT_WIDTH, x, y) + beyond(LIFT, x, y);
    };
  }

  /** What the coefficient loses below the smallest solved gap when the leak becomes a film. */
  private double film(double x, double y) {
    return x >= gapLow ? 0 : read(VALUE, gapLow, y) * (1 - Math.exp(2 * (x - gapLow)));
  }

  /** What a field would change beyond the solved points if its last slope went on. */
  private double beyond(int field, double x, double y) {
    double last = logGap[logGap.length - 1];
    double top = logSuction[logSuction.length - 1];
    if (x >= gapLow && x <= last && y >= suctionLow && y <= top) {
      return 0;
    }
    double out = 0;
    if (rows > 1 && (x < gapLow || x > last)) {
      double edge = x < gapLow ? gapLow : last;
      double inside = x < gapLow ? gapLow + gapStep : last - gapStep;
      out += Math.abs((read(field, edge, y) - read(field, inside, y)) / gapStep * (x - edge));
    }
    if (columns > 1 && (y < suctionLow || y > top)) {
      double edge = y < suctionLow ? suctionLow : top;
      double inside = y < suctionLow ? suctionLow + suctionStep : top - suctionStep;
      out += Math.abs((read(field, x, edge) - read(field, x, inside)) / suctionStep * (y - edge));
    }
    return Math.min(out, MOST_BEYOND);
  }

  private double read(int field, double lnGap, double lnSuction) {
    double[][] f = fine[field];
    double u = Math.max(0, Math.min(rows - 1, (lnGap - gapLow) / gapStep));
    double v = Math.max(0, Math.min(columns - 1, (lnSuction - suctionLow) / suctionStep));
    int i = Math.min((int) u, Math.max(0, rows - 2));
    int j = Math.min((int) v, Math.max(0, columns - 2));
    int i1 = Math.min(i + 1, rows - 1);
    int j1 = Math.min(j + 1, columns - 1);
    double a = u - i;
    double b = v - j;
    return (1 - a) * ((1 - b) * f[i][j] + b * f[i][j1]) + a * ((1 - b) * f[i1][j] + b * f[i1][j1]);
  }
}
