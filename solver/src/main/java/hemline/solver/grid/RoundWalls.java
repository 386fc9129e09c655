package hemline.solver.grid;

import hemline.shared.geometry.Ring;
import java.util.Arrays;

/**
 * Sizes beside round walls over the gap, from which the flow separates where its boundary layer
 * says and not at a corner.
 *
 * <p>At a corner the flow separates on any grid, and cells of the gap's size give the leak of grids
 * six times as fine within 0.3 %. On a convex round wall the place of separation follows the layer
 * beside the wall, whose first cell must lie in the sublayer: with cells of the gap's size a nose
 * of two gaps radius leaks 34, 26 and 24 % too much on the three grids, with these 2, 0.5 and 0.3
 * %. The layer is the thinner the faster the flow, and it separates where the wall has turned by 10
 * to 15°, which lies above the least passage by more the rounder the wall: see the note on round
 * walls in the module's notes.
 */
final class RoundWalls {
  /** Largest turn between two chords of one round wall, rad. */
  private static final double TURN = Math.toRadians(20);

  /** Free distance in gaps up to which a wall counts whatever its slope. */
  private static final double REACH = 1.06;

  /** Slope up to which a wall counts further up, and the free distance in gaps that ends this. */
  private static final double SLOPE = Math.tan(Math.toRadians(15));

  private static final double FURTHER = 1.35;

  /** Cell size along the wall's normal, over that at an upright wall of the gap, in slow flow. */
  private static final double SHARE = 0.2;

  /** Gap Reynolds number from which that share falls with its root, as laminar layers do. */
  private static final double SLOW = 4000;

  private static final double LEAST_SHARE = 0.08;

  /** Growth of the size along y and x within one gap. */
  private static final double GROWTH_Y = 0.25;

  private static final double GROWTH_X = 0.1;

  /** Largest size along x over the free distance. */
  private static final double ALONG = 1.0 / 16;

  /** Least sines by which the size along the normal is turned into one along an axis. */
  private static final double LEAST_X = 0.05;

  private static final double LEAST_Y = 0.3;

  /** Cells over a body that is round all over, and growth of their size within half its extent. */
  private static final double OVER_BODY = 20;

  private static final double BODY_GROWTH = 0.1;

  /** Pieces of a chord are no longer than this many gaps. */
  private static final double PIECE = 1.0 / 16;

  private final GridDesign.Domain domain;
  private final Clearance clearance;
  private final double gap;
  private final double share;

  RoundWalls(GridDesign.Domain domain, double gap, double gapReynolds) {
    this.domain = domain;
    this.gap = gap;
    share = Math.max(LEAST_SHARE, SHARE * Math.min(1, Math.sqrt(SLOW / gapReynolds)));
    clearance = new Clearance(domain);
  }

  /**
   * Adds what round walls ask for.
   *
   * @param size along y where rows is true, else along x; sources are added
   * @param atWall size at an upright wall of the gap, m
   */
  void add(SizeFunction size, boolean rows, double atWall) {
    for (Ring ring : domain.solids()) {
      for (int k = 0; k < ring.size(); k++) {
        if (isRound(ring, k)) {
          addChord(ring, k, size, rows, share * atWall);
        }
      }
    }
  }

  /**
   * Adds what free bodies without corners ask for: even cells over and around them, or the forces
   * on their opposite sides do not cancel as they should. On a cylinder in a channel the lift, a
   * five hundredth of the drag, was 13 % low; even cells at a growth of 0.15 still leave it wander
   * by 10 % from one count to the next, at 0.1 it converges.
   *
   * @param size along y where rows is true, else along x; sources are added
   */
  void addBodies(SizeFunction size, boolean rows) {
    for (Ring ring : domain.solids()) {
      if (isRoundBody(ring)) {
        double[] at = rows ? ring.y() : ring.x();
        double from = Arrays.stream(at).min().orElseThrow();
        double to = Arrays.stream(at).max().orElseThrow();
        double extent = to - from;
        size.add(new SizeFunction.Source(from, to, extent / OVER_BODY, BODY_GROWTH, 0.5 * extent));
      }
    }
  }

  /** True for a ring inside the domain that turns by little everywhere, to its own side. */
  private boolean isRoundBody(Ring ring) {
    for (int k = 0; k < ring.size(); k++) {
      double turn = turn(ring, k, ring.size());
      double x = ring.x()[k];
      double y = ring.y()[k];
      boolean inside =
          x > domain.xMin() && x < domain.xMax() && y > domain.yMin() && y < domain.yMax();
      if (!inside || turn < 0 || turn > TURN) {
        return false;
      }
    }
    return true;
  }

  /** True for an edge that faces down and turns on by little, to the solid's side, at its ends. */
  private static boolean isRound(Ring ring, int k) {
    int n = ring.size();
    double before = turn(ring, k, n);
    double after = turn(ring, (k + 1) % n, n);
    // the solid lies left of its edges
    return ring.x()[(k + 1) % n] > ring.x()[k]
        && ring.y()[(k + 1) % n] != ring.y()[k]
        && before >= 0
        && after >= 0
        && before < TURN
        && after < TURN
        && Math.max(before, after) > 0;
  }

  /** Turn to the left at a vertex, rad. */
  private static double turn(Ring ring, int k, int n) {
    int a = (k + n - 1) % n;
    int b = (k + 1) % n;
    double ux = ring.x()[k] - ring.x()[a];
    double uy = ring.y()[k] - ring.y()[a];
    double vx = ring.x()[b] - ring.x()[k];
    double vy = ring.y()[b] - ring.y()[k];
    return Math.atan2(ux * vy - uy * vx, ux * vx + uy * vy);
  }

  private void addChord(Ring ring, int k, SizeFunction size, boolean rows, double normal) {
    int m = (k + 1) % ring.size();
    double dx = ring.x()[m] - ring.x()[k];
    double dy = ring.y()[m] - ring.y()[k];
    double length = Math.hypot(dx, dy);
    double sine = Math.abs(rows ? dx : dy) / length;
    double wanted = normal / Math.max(rows ? LEAST_Y : LEAST_X, sine);
    double off = 1e-3 * gap;
    int pieces = (int) Math.ceil(length / (PIECE * gap));
    for (int q = 0; q < pieces; q++) {
      double x = ring.x()[k] + dx * (q + 0.5) / pieces;
      double y = ring.y()[k] + dy * (q + 0.5) / pieces - off;
      double free =
          clearance.inFluid(x, y)
              ? clearance.vertical(x, y, false, null) + off
              : Double.POSITIVE_INFINITY;
      boolean flat = Math.abs(dy) <= SLOPE * Math.abs(dx);
      if (free > (flat ? FURTHER : REACH) * gap) {
        continue;
      }
      double start = (rows ? ring.y()[k] : ring.x()[k]) + (rows ? dy : dx) * q / pieces;
      double end = start + (rows ? dy : dx) / pieces;
      size.add(
          new SizeFunction.Source(
              Math.min(start, end),
              Math.max(start, end),
              rows ? wanted : Math.min(wanted, ALONG * free),
              rows ? GROWTH_Y : GROWTH_X,
              gap));
    }
  }
}
