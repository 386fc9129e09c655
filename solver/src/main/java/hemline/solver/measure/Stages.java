package hemline.solver.measure;

import java.util.ArrayList;
import java.util.List;

/**
 * Constrictions under a lip: how they share the pressure drop and what kinetic energy is carried
 * over between them.
 *
 * <p>A constriction is a run of columns whose clearance is below 1.3 gaps, bounded by columns of
 * more than 1.5 gaps. The total pressure between two constrictions is taken in the column of
 * greatest clearance.
 */
final class Stages {
  private static final double NARROW = 1.3;
  private static final double WIDE = 1.5;

  final List<Double> shares = new ArrayList<>();
  final List<Double> carryOver = new ArrayList<>();

  /**
   * Measures.
   *
   * @param columns under the lip
   * @param gap m
   * @param before total pressure upstream, over density
   * @param after what is left downstream, over density: static pressure where the flow ends in a
   *     plenum, total pressure in a duct
   */
  Stages(GapColumns columns, double gap, double before, double after) {
    List<int[]> runs = runs(columns, gap);
    if (runs.isEmpty() || before == after) {
      return;
    }
    double upstream = before;
    for (int r = 0; r < runs.size(); r++) {
      double downstream =
          r + 1 < runs.size()
              ? columns.totalPressure(widest(columns, runs.get(r)[1], runs.get(r + 1)[0]))
              : after;
      shares.add((upstream - downstream) / (before - after));
      upstream = downstream;
      if (r + 1 < runs.size()) {
        double left = columns.kineticFlux(runs.get(r)[1], gap);
        double right = columns.kineticFlux(runs.get(r + 1)[0], gap);
        // a leak from the plenum runs the other way
        double leaving = left < 0 ? right : left;
        double arriving = left < 0 ? left : right;
        if (leaving != 0) {
          carryOver.add(arriving / leaving);
        }
      }
    }
  }

  private static List<int[]> runs(GapColumns columns, double gap) {
    List<int[]> runs = new ArrayList<>();
    int[] current = null;
    boolean parted = true;
    for (int i = columns.first; i <= columns.last; i++) {
      double clearance = columns.clearance(i);
      if (clearance < NARROW * gap) {
        if (current == null || parted) {
          current = new int[] {i, i};
          runs.add(current);
          parted = false;
        }
        current[1] = i;
      } else if (clearance > WIDE * gap) {
        parted = true;
      }
    }
    return runs;
  }

  private static int widest(GapColumns columns, int after, int before) {
    int best = after + 1;
    for (int i = after + 1; i < before; i++) {
      // the middle of several equal ones
      double c = columns.clearance(i);
      double b = columns.clearance(best);
      double middle = 0.5 * (after + before);
      if (c > b * (1 + 1e-9)
          || (c > b * (1 - 1e-9) && Math.abs(i - middle) < Math.abs(best - middle))) {
        best = i;
      }
    }
    return best;
  }
}
