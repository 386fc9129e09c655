package hemline.solver.rig;

import java.util.ArrayList;
import java.util.List;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.CholeskyDecomposition;
import org.apache.commons.math3.linear.RealMatrix;

/**
 * How the predicted discharge changes with gap and suction between the points: ln C_d as a cubic in
 * ln h and ln Δp by least squares. It serves small steps from a point; the points themselves keep
 * their own values.
 */
final class ResponseSurface {
  /** Weight of "no change" against the points, for gaps and suctions that rise together. */
  private static final double RIDGE = 1e-4;

  private static final int TERMS = 8;

  private final double[] coefficients = new double[TERMS];
  private final double gapMiddle;
  private final double suctionMiddle;

  /** A surface through points; each row is gap, suction, discharge, all positive. */
  ResponseSurface(List<double[]> points) {
    gapMiddle = points.stream().mapToDouble(p -> Math.log(p[0])).average().orElse(0);
    suctionMiddle = points.stream().mapToDouble(p -> Math.log(p[1])).average().orElse(0);
    double mean = points.stream().mapToDouble(p -> Math.log(p[2])).average().orElse(0);
    List<Integer> used = terms(points);
    if (used.isEmpty()) {
      return;
    }
    int n = points.size();
    int m = used.size();
    RealMatrix x = new Array2DRowRealMatrix(n, m);
    ArrayRealVector y = new ArrayRealVector(n);
    double[] means = new double[m];
    for (int k = 0; k < n; k++) {
      double[] all = terms(points.get(k)[0], points.get(k)[1]);
      y.setEntry(k, Math.log(points.get(k)[2]) - mean);
      for (int t = 0; t < m; t++) {
        means[t] += all[used.get(t)] / n;
      }
    }
    for (int k = 0; k < n; k++) {
      double[] all = terms(points.get(k)[0], points.get(k)[1]);
      for (int t = 0; t < m; t++) {
        x.setEntry(k, t, all[used.get(t)] - means[t]);
      }
    }
    RealMatrix normal = x.transpose().multiply(x);
    for (int t = 0; t < m; t++) {
      normal.addToEntry(t, t, RIDGE);
    }
    double[] solved =
        new CholeskyDecomposition(normal)
            .getSolver()
            .solve(new ArrayRealVector(x.preMultiply(y)))
            .toArray();
    for (int t = 0; t < m; t++) {
      coefficients[used.get(t)] = solved[t];
    }
  }

  /** Discharge at one place over that at another. */
  double ratio(double gap, double suction, double fromGap, double fromSuction) {
    double[] to = terms(gap, suction);
    double[] from = terms(fromGap, fromSuction);
    double sum = 0;
    for (int t = 0; t < TERMS; t++) {
      sum += coefficients[t] * (to[t] - from[t]);
    }
    return Math.exp(sum);
  }

  private double[] terms(double gap, double suction) {
    double x = Math.log(gap) - gapMiddle;
    double y = Math.log(suction) - suctionMiddle;
    return new double[] {x, y, x * x, x * y, y * y, x * x * x, x * x * y, x * y * y};
  }

  /** The terms that the points can tell. */
  private static List<Integer> terms(List<double[]> points) {
    long gaps = points.stream().map(p -> p[0]).distinct().count();
    long suctions = points.stream().map(p -> Math.round(20 * Math.log(p[1]))).distinct().count();
    List<Integer> used = new ArrayList<>();
    add(used, 0, gaps >= 2);
    add(used, 1, suctions >= 2);
    add(used, 2, gaps >= 3 && points.size() >= 4);
    add(used, 3, gaps >= 2 && suctions >= 2 && points.size() >= 5);
    add(used, 4, suctions >= 3 && points.size() >= 6);
    add(used, 5, gaps >= 4 && points.size() >= 8);
    add(used, 6, gaps >= 3 && suctions >= 2 && points.size() >= 9);
    add(used, 7, gaps >= 2 && suctions >= 3 && points.size() >= 10);
    return used;
  }

  private static void add(List<Integer> used, int term, boolean told) {
    if (told) {
      used.add(term);
    }
  }
}
