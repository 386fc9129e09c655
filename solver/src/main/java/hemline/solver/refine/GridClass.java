package hemline.solver.refine;

import hemline.shared.geometry.Outline;
import hemline.shared.geometry.Ring;
import hemline.shared.section.SealSection;
import hemline.shared.section.Section;
import hemline.solver.flow.Closure;
import hemline.solver.grid.MeshLevel;
import java.util.List;
import java.util.stream.Stream;

/**
 * Kind of lip, for the least numerical band of turbulent sections: three grids that agree by chance
 * say nothing.
 *
 * <p>The half-widths were fitted on every other section of the campaign and hold on the rest: the
 * tables {@code campaign.csv} and {@code campaign-coarse.csv} of the validation module, whose test
 * makes the comparison anew.
 */
public enum GridClass {
  /** Only upright and level walls. */
  UPRIGHT(0.007, 0.019),
  /** Some walls lean. */
  SLANTED(0.010, 0.020),
  /** Some walls are round. */
  ROUND(0.012, 0.022);

  /** Gap over the lip's width up to which a gap is narrow, and from which it is wide. */
  private static final double NARROW = 0.2;

  private static final double WIDE = 0.35;

  /**
   * Widths on the coarse level over those on the medium one. Its cells are 1.58 times as large, and
   * its errors twice: order 1.5. On the fine level, for which there are no finer answers, the
   * widths of the medium one stand.
   */
  private static final double COARSER = 2;

  /** Largest turn between two chords of a round wall, rad. */
  private static final double TURN = Math.toRadians(20);

  /** Sine below which a wall is upright or level. */
  private static final double LEVEL = 1e-6;

  private final double narrow;
  private final double wide;

  GridClass(double narrow, double wide) {
    this.narrow = narrow;
    this.wide = wide;
  }

  /** Kind of a section's lip. */
  public static GridClass of(SealSection section) {
    GridClass most = UPRIGHT;
    for (Ring ring : rings(section)) {
      most = worse(most, of(ring));
    }
    return most;
  }

  /**
   * Least half-width of the numerical part of the leak, of its value; 0 for ducts and in laminar
   * flow, where grids alone decide.
   *
   * @param level of its grids
   * @param closure flow model used
   */
  public static double leastWidth(Section section, MeshLevel level, Closure closure) {
    return section instanceof SealSection lip && closure != Closure.LAMINAR
        ? (level == MeshLevel.COARSE ? COARSER : 1) * mediumWidth(lip)
        : 0;
  }

  private static double mediumWidth(SealSection section) {
    GridClass kind = of(section);
    double share = (section.gap() / width(section) - NARROW) / (WIDE - NARROW);
    return kind.narrow + Math.max(0, Math.min(1, share)) * (kind.wide - kind.narrow);
  }

  private static GridClass worse(GridClass a, GridClass b) {
    return a.compareTo(b) >= 0 ? a : b;
  }

  private static GridClass of(Ring ring) {
    int n = ring.size();
    GridClass kind = UPRIGHT;
    for (int k = 0; k < n; k++) {
      double dx = ring.x()[(k + 1) % n] - ring.x()[k];
      double dy = ring.y()[(k + 1) % n] - ring.y()[k];
      double fx = ring.x()[(k + 2) % n] - ring.x()[(k + 1) % n];
      double fy = ring.y()[(k + 2) % n] - ring.y()[(k + 1) % n];
      boolean leans = Math.min(Math.abs(dx), Math.abs(dy)) > LEVEL * Math.hypot(dx, dy);
      double turn = Math.abs(Math.atan2(dx * fy - dy * fx, dx * fx + dy * fy));
      if (leans) {
        kind = worse(kind, turn > 0 && turn < TURN ? ROUND : SLANTED);
      }
    }
    return kind;
  }

  private static double width(SealSection section) {
    double low = Double.POSITIVE_INFINITY;
    double high = Double.NEGATIVE_INFINITY;
    for (Ring ring : rings(section)) {
      for (double x : ring.x()) {
        low = Math.min(low, x);
        high = Math.max(high, x);
      }
    }
    return high - low;
  }

  private static List<Ring> rings(SealSection section) {
    return Stream.concat(
            Stream.of(section.profile().outline()), section.profile().detached().stream())
        .map(Outline::flatten)
        .toList();
  }
}
