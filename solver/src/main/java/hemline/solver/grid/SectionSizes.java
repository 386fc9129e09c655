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

  /** Growth of the size along y within one gap of walls at the gap. */
  private static final double LAYER_GROWTH = 0.08;

  /** A free distance up to this many gaps belongs to the gap. */
  private static final double NARROW = 2;

  /** Largest length of a cell in a narrow gap over its height. */
  private static final double GAP_ASPECT = 20;

  private final GridDesign.Domain domain;
  private final double gap;
  private final SectionFeatures features;

  SectionSizes(GridDesign.Domain domain, double gap) {
    this.domain = domain;
    this.gap = gap;
    features = new SectionFeatures(domain, gap);
  }

  GridDesign design(MeshLevel level) {
    double factor = factor(level) * GridDesign.FINEST;
    double limit = limit(level);
    while (true) {
      GridDesign design = GridDesign.of(columns(factor), rows(factor));
      if (design.rectangles(GridDesign.FINEST) <= limit) {
        return design;
      }
      factor *= 1.1;
    }
  }

  /** Cell size over that of the medium level. */
  private static double factor(MeshLevel level) {
    return switch (level) {
      case COARSE -> 1.58;
      case MEDIUM -> 1;
      case FINE -> 0.577;
    };
  }

  /** Most rectangles on the finest grid. */
  private static double limit(MeshLevel level) {
    return 40_000 / Math.pow(factor(level), 2);
  }

  /** Free distances below this many gaps get no finer cells. */
  private static final double LEAST = 0.25;

  /** Largest size, over the height of the domain. */
  private static final double LARGEST_X = 1.0 / 18;

  private static final double LARGEST_Y = 1.0 / 12;

  private double height() {
    return domain.yMax() - domain.yMin();
  }

  private LineFamily rows(double factor) {
    SizeFunction size = new SizeFunction(LARGEST_Y * height());
    for (Feature f : features.rows) {
      double c = clamp(f.clearance());
      double wanted = Math.min(c, gap) / 32 + Math.max(0, c - gap) / 16;
      size.add(new SizeFunction.Source(f.at(), f.at(), wanted, LAYER_GROWTH, gap));
    }
    return family(features.rows, size, factor);
  }

  private LineFamily columns(double factor) {
    double length = domain.xMax() - domain.xMin();
    SizeFunction size = new SizeFunction(Math.max(LARGEST_X * height(), length / 400));
    for (Feature f : features.columns) {
      double c = clamp(f.clearance());
      boolean end = f.at() == domain.xMin() || f.at() == domain.xMax();
      if (end) {
        continue;
      }
      double wanted = f.rank() == Rank.WALL ? Math.max(gap, c) / 16 : c / 16;
      boolean near = f.rank() != Rank.WALL && c <= NARROW * gap;
      size.add(
          new SizeFunction.Source(
              f.at(),
              f.at(),
              wanted,
              near ? WAKE_GROWTH : SizeFunction.GROWTH,
              near ? WAKE * gap : 0));
    }
    for (Feature f : features.rows) {
      double c = clamp(f.clearance());
      boolean side = f.at() == domain.yMin() || f.at() == domain.yMax();
      if (!side && f.rank() == Rank.WALL && c <= NARROW * gap) {
        size.add(
            new SizeFunction.Source(f.from(), f.to(), GAP_ASPECT * c / 15, SizeFunction.GROWTH, 0));
      }
    }
    return family(features.columns, size, factor);
  }

  private double clamp(double clearance) {
    return Math.max(clearance, LEAST * gap);
  }

  /** Puts lines on the features, walls first, and sizes between them. */
  private LineFamily family(List<Feature> all, SizeFunction size, double factor) {
    List<Feature> order = new ArrayList<>(all);
    order.sort(
        Comparator.comparing(Feature::rank)
            .reversed()
            .thenComparingDouble(Feature::clearance)
            .thenComparingDouble(Feature::at));
    double same = MeshBuilder.SAME * Math.max(length(all), gap);
    List<Double> taken = new ArrayList<>();
    for (Feature f : order) {
      double apart = f.rank() == Rank.WALL ? same : 0.25 * factor * size.at(f.at());
      if (taken.stream().allMatch(t -> Math.abs(t - f.at()) > apart)) {
        taken.add(f.at());
      }
    }
    double[] station = taken.stream().mapToDouble(Double::doubleValue).sorted().toArray();
    for (int k = 0; k + 1 < station.length; k++) {
      double d = (station[k + 1] - station[k]) / factor;
      if (d < size.at(0.5 * (station[k] + station[k + 1]))) {
        size.add(new SizeFunction.Source(station[k], station[k + 1], d, SizeFunction.GROWTH, 0));
      }
    }
    return new LineFamily(station, size, factor);
  }

  private static double length(List<Feature> all) {
    double low = Double.POSITIVE_INFINITY;
    double high = Double.NEGATIVE_INFINITY;
    for (Feature f : all) {
      low = Math.min(low, f.at());
      high = Math.max(high, f.at());
    }
    return high - low;
  }
}
