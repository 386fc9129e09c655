package hemline.solver.refine;

import hemline.shared.result.Estimate;
import hemline.shared.result.RawFigures.Vortex;
import hemline.shared.result.SectionFigures.TrappedVortex;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Finds the eddies of the finest grid again on the coarser ones, and under other flow models, by
 * their centres.
 *
 * <p>Pairs are taken by growing distance, each eddy once. A pair must be closer than half the way
 * to the nearest other eddy of the finest grid, so that neighbours are not mistaken for each other.
 * An eddy that no coarser grid shows may be an artefact: its band reaches down to zero.
 */
final class VortexMatching {
  private VortexMatching() {}

  private record Pair(int fine, int coarse, double distance) {}

  static List<TrappedVortex> estimates(
      FigureSeries series, List<GridFamily> others, ModelSpread models) {
    int finest = series.finest();
    List<Vortex> fine = usable(series, finest);
    double[][] strength = new double[fine.size()][series.places()];
    for (int k = 0; k < series.places(); k++) {
      @Nullable Vortex[] match =
          k == finest ? fine.toArray(Vortex[]::new) : match(fine, usable(series, k));
      for (int i = 0; i < match.length; i++) {
        Vortex vortex = match[i];
        strength[i][k] = vortex == null ? Double.NaN : vortex.strength();
      }
    }
    List<TrappedVortex> result = new ArrayList<>();
    for (int i = 0; i < fine.size(); i++) {
      Vortex vortex = fine.get(i);
      result.add(new TrappedVortex(estimate(series, strength[i]), vortex.x(), vortex.y()));
    }
    return withModels(result, series, strength, fine, others, models);
  }

  private static List<Vortex> usable(FigureSeries series, int k) {
    if (!series.usable(k)) {
      return List.of();
    }
    return series.run(k).figures().vortices().stream()
        .filter(v -> FigureSeries.sane(v.strength()) && FigureSeries.sane(v.x() + v.y()))
        .toList();
  }

  private static Estimate estimate(FigureSeries series, double[] strength) {
    double[] size = new double[strength.length];
    double[] noise = new double[strength.length];
    for (int k = 0; k < strength.length; k++) {
      size[k] = series.size(k);
      noise[k] = 2 * Math.abs(strength[k]) * series.relativeSpread(k);
    }
    GridValues values = new GridValues(strength, size, noise);
    Estimate e = ThreeGrid.estimate(values, 0);
    if (values.count() > 1 || series.places() == 1) {
      return e;
    }
    return new Estimate(
        e.value(), Math.abs(e.value()), e.iteration(), 0, 0, Estimate.Trend.UNKNOWN);
  }

  private static List<TrappedVortex> withModels(
      List<TrappedVortex> vortices,
      FigureSeries series,
      double[][] strength,
      List<Vortex> fine,
      List<GridFamily> others,
      ModelSpread models) {
    double[] low = new double[fine.size()];
    double[] high = new double[fine.size()];
    for (GridFamily other : others) {
      FigureSeries there = FigureSeries.of(other);
      int k = there.finest();
      if (k < 0 || !series.usable(k)) {
        continue;
      }
      @Nullable Vortex[] match = match(fine, usable(there, k));
      for (int i = 0; i < match.length; i++) {
        Vortex vortex = match[i];
        double distance =
            models.weight(other) * ((vortex == null ? 0 : vortex.strength()) - strength[i][k]);
        if (Double.isFinite(distance)) {
          low[i] = Math.max(low[i], -distance);
          high[i] = Math.max(high[i], distance);
        }
      }
    }
    List<TrappedVortex> widened = new ArrayList<>();
    for (int i = 0; i < fine.size(); i++) {
      TrappedVortex v = vortices.get(i);
      widened.add(
          new TrappedVortex(ModelSpread.withSpread(v.strength(), low[i], high[i]), v.x(), v.y()));
    }
    return widened;
  }

  /** For each fine eddy its partner, or null. */
  static @Nullable Vortex[] match(List<Vortex> fine, List<Vortex> coarse) {
    List<Pair> pairs = new ArrayList<>();
    for (int i = 0; i < fine.size(); i++) {
      double reach = reach(fine, i);
      for (int j = 0; j < coarse.size(); j++) {
        double distance = distance(fine.get(i), coarse.get(j));
        if (distance <= reach) {
          pairs.add(new Pair(i, j, distance));
        }
      }
    }
    pairs.sort(
        Comparator.comparingDouble(Pair::distance)
            .thenComparingInt(Pair::fine)
            .thenComparingInt(Pair::coarse));
    @Nullable Vortex[] match = new Vortex[fine.size()];
    boolean[] taken = new boolean[coarse.size()];
    Arrays.fill(taken, false);
    for (Pair pair : pairs) {
      if (match[pair.fine()] == null && !taken[pair.coarse()]) {
        match[pair.fine()] = coarse.get(pair.coarse());
        taken[pair.coarse()] = true;
      }
    }
    return match;
  }

  private static double reach(List<Vortex> fine, int i) {
    double nearest = Double.POSITIVE_INFINITY;
    for (int other = 0; other < fine.size(); other++) {
      if (other != i) {
        nearest = Math.min(nearest, distance(fine.get(i), fine.get(other)));
      }
    }
    return 0.5 * nearest;
  }

  private static double distance(Vortex a, Vortex b) {
    return Math.hypot(a.x() - b.x(), a.y() - b.y());
  }
}
