package hemline.solver.linear;

import java.util.Arrays;
import java.util.stream.IntStream;

/**
 * A network of unknowns, and the finest {@link LineLevel} that stands for it.
 *
 * <p>Unknowns with several places have all links where they lie; their places are bonded by large
 * conductances, the first one carries right-hand side and answer. A link that does not lie between
 * the places of its unknowns counts as a link to ground on the level.
 */
final class PlacedNetwork {
  /** Conductance of a bond over all others of its places. */
  private static final double BOND = 100;

  final LineLevel level;
  private final PlaceGrid grid;

  /** Place of each unknown on the level, or -1. */
  private final int[] home;

  /** True when some unknown has no place. */
  private final boolean homeless;

  /** Lower place of each link on the level, and how far the other one is. */
  private final int[] linkAt;

  private final int[] linkStep;

  /** Whether the unknowns of a link hold its lower and its upper place. */
  private final boolean[] holdsLower;

  private final boolean[] holdsUpper;

  /** Lower places of bonds along x and along y. */
  private final int[] bondX;

  private final int[] bondY;

  private final double[] diagonal;

  PlacedNetwork(PlaceGrid grid) {
    this.grid = grid;
    int nx = grid.nx();
    int ny = grid.ny();
    int[] unknownAt = grid.unknownAt();
    level = new LineLevel(nx, ny);
    home = new int[grid.size()];
    diagonal = new double[grid.size()];
    Arrays.fill(home, -1);
    IntStream.Builder along = IntStream.builder();
    IntStream.Builder up = IntStream.builder();
    for (int place = 0; place < nx * ny; place++) {
      int unknown = unknownAt[place];
      if (unknown < 0) {
        continue;
      }
      int i = place % nx;
      int j = place / nx;
      if (home[unknown] < 0) {
        home[unknown] = level.at(i, j);
      }
      if (i + 1 < nx && unknownAt[place + 1] == unknown) {
        along.add(level.at(i, j));
      }
      if (j + 1 < ny && unknownAt[place + nx] == unknown) {
        up.add(level.at(i, j));
      }
    }
    bondX = along.build().toArray();
    bondY = up.build().toArray();
    homeless = Arrays.stream(home).anyMatch(p -> p < 0);
    int links = grid.first().length;
    linkAt = new int[links];
    linkStep = new int[links];
    holdsLower = new boolean[links];
    holdsUpper = new boolean[links];
    for (int l = 0; l < links; l++) {
      int lower = grid.lowerPlace()[l];
      boolean alongX = grid.alongX()[l];
      linkAt[l] = level.at(lower % nx, lower / nx);
      linkStep[l] = alongX ? 1 : level.width;
      holdsLower[l] = unknownAt[lower] == grid.first()[l];
      holdsUpper[l] = unknownAt[lower + (alongX ? 1 : nx)] == grid.second()[l];
    }
  }

  /** Sets the conductances of the level and sums its diagonal. */
  void fill(double[] conductance, double[] grounding) {
    level.clear();
    for (int l = 0; l < linkAt.length; l++) {
      int p = linkAt[l];
      if (holdsLower[l] && holdsUpper[l]) {
        (linkStep[l] == 1 ? level.east : level.north)[p] += conductance[l];
      } else if (holdsLower[l]) {
        level.grounding[p] += conductance[l];
      } else if (holdsUpper[l]) {
        level.grounding[p + linkStep[l]] += conductance[l];
      }
    }
    for (int c = 0; c < home.length; c++) {
      if (home[c] >= 0) {
        level.grounding[home[c]] += grounding[c];
      }
    }
    if (bondX.length + bondY.length > 0) {
      level.sum();
      bond(bondX, level.east, 1);
      bond(bondY, level.north, level.width);
    }
    level.sum();
    if (homeless) {
      System.arraycopy(grounding, 0, diagonal, 0, diagonal.length);
      for (int l = 0; l < conductance.length; l++) {
        diagonal[grid.first()[l]] += conductance[l];
        diagonal[grid.second()[l]] += conductance[l];
      }
    }
  }

  private void bond(int[] at, double[] link, int step) {
    for (int p : at) {
      link[p] = BOND * (level.diagonal[p] + level.diagonal[p + step]);
    }
  }

  /** Residuals become the level's right-hand side. */
  void put(double[] r) {
    for (int c = 0; c < home.length; c++) {
      if (home[c] >= 0) {
        level.b[home[c]] = r[c];
      }
    }
  }

  /** Takes the level's answer; unknowns without a place get r over their diagonal. */
  void take(double[] r, double[] z) {
    for (int c = 0; c < home.length; c++) {
      z[c] = home[c] >= 0 ? level.x[home[c]] : r[c] / diagonal[c];
    }
  }

  /** y = A x of the network itself. */
  void multiply(double[] conductance, double[] grounding, double[] x, double[] y) {
    for (int c = 0; c < y.length; c++) {
      y[c] = grounding[c] * x[c];
    }
    int[] first = grid.first();
    int[] second = grid.second();
    for (int l = 0; l < first.length; l++) {
      int a = first[l];
      int b = second[l];
      double flow = conductance[l] * (x[a] - x[b]);
      y[a] += flow;
      y[b] -= flow;
    }
  }
}
