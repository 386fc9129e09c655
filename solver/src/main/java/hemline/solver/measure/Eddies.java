package hemline.solver.measure;

import hemline.shared.result.RawFigures.Vortex;
import hemline.solver.grid.GridLines;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * Closed eddies: extremes of the streamfunction beyond the through-flow.
 *
 * <p>A local maximum above max(0, q) or minimum below min(0, q) on the grid corners, refined by the
 * parabolas through its neighbours along both axes.
 */
final class Eddies {
  /** Eddies weaker than this share of the flow are left out. */
  private static final double FAINT = 2e-3;

  private Eddies() {}

  /**
   * Finds eddies inside a window.
   *
   * @param lines of the grid
   * @param psi streamfunction on corners
   * @param leak through-flow, m²/s
   * @param unit strength unit, m²/s, positive
   * @param window x from, x to, y from, y to, m
   * @return strongest first
   */
  static List<Vortex> find(
      GridLines lines, double[] psi, double leak, double unit, double[] window) {
    double upper = Math.max(0, leak);
    double lower = Math.min(0, leak);
    int row = lines.nx() + 1;
    double[] x = lines.x();
    double[] y = lines.y();
    List<Vortex> found = new ArrayList<>();
    for (int j = 1; j < lines.ny(); j++) {
      for (int i = 1; i < lines.nx(); i++) {
        if (x[i] < window[0] || x[i] > window[1] || y[j] < window[2] || y[j] > window[3]) {
          continue;
        }
        int c = j * row + i;
        double value = psi[c];
        double beyond = value > upper ? value - upper : lower - value;
        if (beyond <= FAINT * unit || !extreme(psi, row, c, value > upper ? 1 : -1)) {
          continue;
        }
        double[] px = peak(x[i - 1], x[i], x[i + 1], psi[c - 1], value, psi[c + 1]);
        double[] py = peak(y[j - 1], y[j], y[j + 1], psi[c - row], value, psi[c + row]);
        double refined = px[1] + py[1] - value;
        double strength = (value > upper ? refined - upper : lower - refined) / unit;
        found.add(new Vortex(strength, px[0], py[0]));
      }
    }
    found.sort(
        Comparator.comparingDouble(Vortex::strength)
            .reversed()
            .thenComparingDouble(Vortex::x)
            .thenComparingDouble(Vortex::y));
    return found;
  }

  private static boolean extreme(double[] psi, int row, int c, int sign) {
    for (int dj = -1; dj <= 1; dj++) {
      for (int di = -1; di <= 1; di++) {
        int k = c + dj * row + di;
        // of equal neighbours the first counts
        double lead = sign * (psi[c] - psi[k]);
        if (k != c && (lead < 0 || (lead == 0 && k < c))) {
          return false;
        }
      }
    }
    return true;
  }

  /** Place and value of the extreme of the parabola through three points. */
  private static double[] peak(double a, double b, double c, double fa, double fb, double fc) {
    double sa = (fb - fa) / (b - a);
    double sc = (fc - fb) / (c - b);
    double curvature = (sc - sa) / (c - a);
    if (curvature == 0) {
      return new double[] {b, fb};
    }
    double slope = (sa * (c - b) + sc * (b - a)) / (c - a);
    double step = Math.max(a - b, Math.min(c - b, -0.5 * slope / curvature));
    return new double[] {b + step, fb + slope * step + curvature * step * step};
  }
}
