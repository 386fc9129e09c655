package hemline.solver.grid;

import hemline.shared.geometry.Ring;
import hemline.solver.grid.Clearance.Wall;
import java.util.ArrayList;
import java.util.List;

/**
 * What the grid lines of a section must respect: walls along the axes, corners and extremes of
 * round parts, each with its free distance to the opposite side.
 *
 * <p>Chords of an arc are no corners: a vertex with a slight turn, or with a moderate turn between
 * two short edges, counts only where it is an extreme.
 */
final class SectionFeatures {
  /** How strongly a feature holds a grid line. */
  enum Rank {
    CORNER,
    EXTREME,
    WALL
  }

  /**
   * A coordinate that a grid line should take.
   *
   * @param at coordinate, m
   * @param from start of the feature along the other axis, m
   * @param to end
   * @param clearance free distance to the opposite side, m
   * @param rank how strongly it holds the line
   */
  record Feature(double at, double from, double to, double clearance, Rank rank) {}

  /** Least turn of a corner, rad. */
  private static final double CORNER = Math.toRadians(2);

  /** Least turn of a corner between two short edges, rad. */
  private static final double SHORT_CORNER = Math.toRadians(20);

  private static final int SAMPLES = 17;

  final List<Feature> columns = new ArrayList<>();
  final List<Feature> rows = new ArrayList<>();

  private final GridDesign.Domain domain;
  private final Clearance clearance;
  private final double step;
  private final double same;
  private final double shortEdge;

  /** Places of corners and extremes, at which walls are probed as well. */
  private final List<Double> probesX = new ArrayList<>();

  private final List<Double> probesY = new ArrayList<>();

  private record Corner(double x, double y, boolean sharp, boolean extremeX, boolean extremeY) {}

  SectionFeatures(GridDesign.Domain domain, double gap) {
    this.domain = domain;
    clearance = new Clearance(domain);
    step = 1e-3 * gap;
    same =
        MeshBuilder.SAME * Math.max(domain.xMax() - domain.xMin(), domain.yMax() - domain.yMin());
    shortEdge = gap / 8;
    List<Corner> corners = new ArrayList<>();
    for (Ring ring : domain.solids()) {
      addCorners(ring, corners);
    }
    for (Corner c : corners) {
      probesX.add(c.x);
      probesY.add(c.y);
    }
    addSides();
    for (Ring ring : domain.solids()) {
      addWalls(ring);
    }
    for (Corner c : corners) {
      addFeatures(c);
    }
  }

  private void addCorners(Ring ring, List<Corner> corners) {
    int n = ring.size();
    for (int k = 0; k < n; k++) {
      int a = (k + n - 1) % n;
      int b = (k + 1) % n;
      double x = ring.x()[k];
      double y = ring.y()[k];
      double ux = x - ring.x()[a];
      double uy = y - ring.y()[a];
      double vx = ring.x()[b] - x;
      double vy = ring.y()[b] - y;
      double turn = Math.abs(Math.atan2(ux * vy - uy * vx, ux * vx + uy * vy));
      boolean isShort = Math.hypot(ux, uy) < shortEdge && Math.hypot(vx, vy) < shortEdge;
      boolean sharp = turn > (isShort ? SHORT_CORNER : CORNER);
      boolean extremeX = ux * vx < 0;
      boolean extremeY = uy * vy < 0;
      boolean within =
          x >= domain.xMin() - same
              && x <= domain.xMax() + same
              && y >= domain.yMin() - same
              && y <= domain.yMax() + same;
      if (within && (sharp || extremeX || extremeY)) {
        corners.add(new Corner(x, y, sharp, extremeX, extremeY));
      }
    }
  }

  private void addFeatures(Corner c) {
    if (!clearance.touchesFluid(c.x, c.y, step)) {
      return;
    }
    // nothing vertical leads out of an acute inner corner: still water, no need for fine cells
    double free = Math.min(clearance.atVertex(c.x, c.y, step), domain.yMax() - domain.yMin());
    if (c.x > domain.xMin() + same && c.x < domain.xMax() - same) {
      Rank rank = c.extremeX || c.extremeY ? Rank.EXTREME : Rank.CORNER;
      columns.add(new Feature(c.x, c.y, c.y, free, rank));
    }
    if (c.y > domain.yMin() + same && c.y < domain.yMax() - same && (c.sharp || c.extremeY)) {
      rows.add(new Feature(c.y, c.x, c.x, free, c.extremeY ? Rank.EXTREME : Rank.CORNER));
    }
  }

  private void addSides() {
    double floor = domain.yMax() - domain.yMin();
    double ceiling = floor;
    for (double x : positions(domain.xMin(), domain.xMax(), probesX)) {
      for (double px : new double[] {x - step, x + step}) {
        if (clearance.inFluid(px, domain.yMin() + step)) {
          floor = Math.min(floor, clearance.vertical(px, domain.yMin() + step, true, null) + step);
        }
        if (clearance.inFluid(px, domain.yMax() - step)) {
          ceiling =
              Math.min(ceiling, clearance.vertical(px, domain.yMax() - step, false, null) + step);
        }
      }
    }
    rows.add(new Feature(domain.yMin(), domain.xMin(), domain.xMax(), floor, Rank.WALL));
    rows.add(new Feature(domain.yMax(), domain.xMin(), domain.xMax(), ceiling, Rank.WALL));
    double length = domain.xMax() - domain.xMin();
    columns.add(new Feature(domain.xMin(), domain.yMin(), domain.yMax(), length, Rank.WALL));
    columns.add(new Feature(domain.xMax(), domain.yMin(), domain.yMax(), length, Rank.WALL));
  }

  private void addWalls(Ring ring) {
    int n = ring.size();
    for (int k = 0; k < n; k++) {
      int b = (k + 1) % n;
      double dx = ring.x()[b] - ring.x()[k];
      double dy = ring.y()[b] - ring.y()[k];
      // the solid lies left of its edges, so an edge towards +x faces down
      if (Math.abs(dy) <= same && Math.abs(dx) > same) {
        addRow(new Wall(ring, k), ring.x()[k], ring.x()[b], ring.y()[k], dx < 0);
      } else if (Math.abs(dx) <= same && Math.abs(dy) > same) {
        addColumn(new Wall(ring, k), ring.y()[k], ring.y()[b], ring.x()[k], dy > 0);
      }
    }
  }

  private void addRow(Wall wall, double a, double b, double y, boolean up) {
    double from = Math.max(Math.min(a, b), domain.xMin());
    double to = Math.min(Math.max(a, b), domain.xMax());
    if (!(to > from) || y <= domain.yMin() + same || y >= domain.yMax() - same) {
      return;
    }
    double py = up ? y + step : y - step;
    double free = Double.POSITIVE_INFINITY;
    for (double x : positions(from, to, probesX)) {
      if (clearance.inFluid(x, py)) {
        free = Math.min(free, clearance.vertical(x, py, up, wall) + step);
      }
    }
    if (Double.isFinite(free)) {
      rows.add(new Feature(y, from, to, free, Rank.WALL));
    }
  }

  private void addColumn(Wall wall, double a, double b, double x, boolean right) {
    double from = Math.max(Math.min(a, b), domain.yMin());
    double to = Math.min(Math.max(a, b), domain.yMax());
    if (!(to > from) || x <= domain.xMin() + same || x >= domain.xMax() - same) {
      return;
    }
    double px = right ? x + step : x - step;
    double free = Double.POSITIVE_INFINITY;
    for (double y : positions(from, to, probesY)) {
      if (clearance.inFluid(px, y)) {
        free = Math.min(free, clearance.horizontal(px, y, right, wall) + step);
      }
    }
    if (Double.isFinite(free)) {
      columns.add(new Feature(x, from, to, free, Rank.WALL));
    }
  }

  /** Places at which to probe between two ends. */
  private static List<Double> positions(double from, double to, List<Double> probes) {
    List<Double> all = new ArrayList<>();
    for (int k = 0; k < SAMPLES; k++) {
      all.add(from + (to - from) * (k + 0.5) / SAMPLES);
    }
    for (double p : probes) {
      if (p > from && p < to) {
        all.add(p);
      }
    }
    return all;
  }
}
