package hemline.solver.grid;

import hemline.solver.grid.SectionFeatures.Feature;
import hemline.solver.grid.SectionFeatures.Rank;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** Wanted cell sizes and line stations of a section, see {@link GridDesign}. */
final class SectionSizes {
  /** Growth of the size along x within {@link #WAKE} gaps of the gap's corners. */
  private static final double WAKE_GROWTH = 0.03;

  private static final double WAKE = 6;

  /** Growth of the size along y within one gap of walls. */
  private static final double LAYER_GROWTH = 0.08;

  /** Size at sharp edges over the gap, over the free distance: the flow is singular there. */
  private static final double EDGE_CELL = 1.0 / 64;

  /** Growth of the size along x and y around such an edge. */
  private static final double EDGE_GROWTH_X = 0.25;

  private static final double EDGE_GROWTH_Y = 0.2;

  /** Free distance in gaps up to which a corner or lip land lies at the jet's edge. */
  private static final double EDGE = 1.25;

  /** A free distance up to this many gaps belongs to the gap. */
  private static final double NARROW = 2;

  /** Free distances below this many gaps get no finer cells. */
  private static final double LEAST = 0.25;

  /** Longest cell in a narrow gap, over the free distance. */
  private static final double GAP_CELL = 1.2;

  /** Largest sizes, over the height of the domain. */
  private static final double LARGEST_X = 1.0 / 18;

  private static final double LARGEST_Y = 1.0 / 12;

  /** Fewest largest cells along a duct. */
  private static final double ALONG = 400;

  /** Most rectangles of the finest medium grid. */
  private static final double MOST = 40_000;

  /** Rectangles of the finest medium grid of a duct without obstacles, about. */
  private static final double BARE = 9_000;

  /** Walls closer than this share of a cell of the finest grid need no line each. */
  private static final double CLOSE_WALLS = 0.25;

  private final GridDesign.Domain domain;
  private final double gap;

  /** True when left and right sides are walls. */
  private final boolean closed;

  private final boolean edges;
  private final SectionFeatures features;
  private final RoundWalls round;

  SectionSizes(
      GridDesign.Domain domain, double gap, double gapReynolds, boolean closed, boolean edges) {
    this.domain = domain;
    this.gap = gap;
    this.closed = closed;
    this.edges = edges;
    features = new SectionFeatures(domain, gap);
    round = new RoundWalls(domain, gap, gapReynolds);
  }

  GridDesign design(MeshLevel level) {
    double scale = scale(level);
    double factor = scale * GridDesign.FINEST;
    GridDesign design = new GridDesign(columns(factor), rows(factor));
    if (domain.solids().isEmpty()) {
      for (int round = 0; round < 4; round++) {
        factor *= Math.sqrt(design.rectangles(GridDesign.FINEST) * scale * scale / BARE);
        design = new GridDesign(columns(factor), rows(factor));
      }
      return design;
    }
    double coarsest = 8 * factor;
    while (design.rectangles(GridDesign.FINEST) * scale * scale > MOST && factor < coarsest) {
      factor *= 1.1;
      design = new GridDesign(columns(factor), rows(factor));
    }
    return design;
  }

  /** Cell size over that of the medium level. */
  private static double scale(MeshLevel level) {
    return switch (level) {
      case COARSE -> 1.58;
      case MEDIUM -> 1;
      case FINE -> 0.577;
    };
  }

  private LineFamily rows(double factor) {
    SizeFunction size = new SizeFunction(LARGEST_Y * (domain.yMax() - domain.yMin()));
    for (Feature f : features.rows) {
      size.add(new SizeFunction.Source(f.at(), f.at(), atWall(clearance(f)), LAYER_GROWTH, gap));
      if (f.at() != domain.yMin() && f.at() != domain.yMax()) {
        addEdge(size, f, EDGE_GROWTH_Y);
      }
    }
    round.add(size, true, atWall(gap));
    if (edges) {
      round.addBodies(size, true);
    }
    return family(features.rows, size, factor, gap);
  }

  private double atWall(double clearance) {
    return Math.min(clearance, gap) / 32 + Math.max(0, clearance - gap) / 16;
  }

  private LineFamily columns(double factor) {
    double length = domain.xMax() - domain.xMin();
    double height = domain.yMax() - domain.yMin();
    double largest = closed ? LARGEST_Y * height : Math.max(LARGEST_X * height, length / ALONG);
    SizeFunction size = new SizeFunction(largest);
    for (Feature f : features.columns) {
      double c = clearance(f);
      boolean side = f.at() == domain.xMin() || f.at() == domain.xMax();
      if (side && closed) {
        size.add(new SizeFunction.Source(f.at(), f.at(), atWall(c), LAYER_GROWTH, gap));
      } else if (!side && f.rank() == Rank.WALL) {
        size.add(
            new SizeFunction.Source(f.at(), f.at(), Math.max(gap, c) / 16, SizeFunction.GROWTH, 0));
      } else if (!side) {
        boolean near = c <= NARROW * gap;
        size.add(
            new SizeFunction.Source(
                f.at(),
                f.at(),
                c / 16,
                near ? WAKE_GROWTH : SizeFunction.GROWTH,
                near ? WAKE * gap : 0));
        addEdge(size, f, EDGE_GROWTH_X);
      }
    }
    for (Feature f : features.rows) {
      double c = clearance(f);
      boolean side = f.at() == domain.yMin() || f.at() == domain.yMax();
      if (!side && f.rank() == Rank.WALL && c <= NARROW * gap) {
        size.add(new SizeFunction.Source(f.from(), f.to(), GAP_CELL * c, SizeFunction.GROWTH, 0));
      }
    }
    round.add(size, false, atWall(gap));
    if (edges) {
      round.addBodies(size, false);
    }
    return family(features.columns, size, factor, 0);
  }

  private void addEdge(SizeFunction size, Feature f, double growth) {
    double c = clearance(f);
    if (edges && c <= EDGE * gap) {
      size.add(new SizeFunction.Source(f.at(), f.at(), EDGE_CELL * c, growth, Double.MAX_VALUE));
    }
  }

  private double clearance(Feature feature) {
    return Math.max(feature.clearance(), LEAST * gap);
  }

  /**
   * Puts lines on the features, walls first, and sizes between them.
   *
   * @param anchor length of the first interval at which it is the gap and comes out the same in
   *     every section; 0 for none
   */
  private LineFamily family(List<Feature> all, SizeFunction size, double factor, double anchor) {
    List<Feature> order = new ArrayList<>(all);
    order.sort(
        Comparator.comparing(Feature::rank)
            .reversed()
            .thenComparingDouble(Feature::clearance)
            .thenComparingDouble(Feature::at));
    double same =
        MeshBuilder.SAME * Math.max(domain.xMax() - domain.xMin(), domain.yMax() - domain.yMin());
    List<Double> taken = new ArrayList<>();
    for (Feature f : order) {
      // a quarter of a base cell is one cell of the finest grid
      double cell = 0.25 * factor * size.at(f.at());
      double apart = f.rank() == Rank.WALL ? Math.max(same, CLOSE_WALLS * cell) : cell;
      if (taken.stream().allMatch(t -> Math.abs(t - f.at()) > apart)) {
        taken.add(f.at());
      }
    }
    double[] station = taken.stream().mapToDouble(Double::doubleValue).sorted().toArray();
    for (int k = 0; k + 1 < station.length; k++) {
      // an interval narrower than a base cell still takes one: let its neighbours follow
      double d = (station[k + 1] - station[k]) / factor;
      if (d < size.at(0.5 * (station[k] + station[k + 1]))) {
        size.add(new SizeFunction.Source(station[k], station[k + 1], d, SizeFunction.GROWTH, 0));
      }
    }
    boolean anchored = Math.abs(station[1] - station[0] - anchor) <= 1e-6 * anchor;
    return new LineFamily(station, size, factor, anchored ? 0 : -1);
  }
}
