package hemline.solver.grid;

/**
 * Grid lines of one direction on fixed stations, as a family of similar grids.
 *
 * <p>Each interval between stations has a base count of cells and a smooth map from cell number to
 * place. A multiple of the base count uses the same map, so that the grids of a family are
 * geometrically similar. The map follows the density 1/size; where the count had to be rounded the
 * density is stretched, with the stretch blended to that of the next interval at stations.
 */
final class LineFamily {
  private static final int SAMPLES_PER_CELL = 64;

  private final double[] station;
  private final int[] count;

  /** Per interval the places at equal steps of the cell number from 0 to its count. */
  private final double[][] place;

  /** Per interval the cell number at those places. */
  private final double[][] number;

  /**
   * @param station increasing; first and last are the ends of the domain
   * @param size wanted size of the base cells
   * @param factor on the wanted size
   * @param anchor index of an interval that is stretched evenly whatever its neighbours do, so that
   *     it looks the same in every section; -1 for none
   */
  LineFamily(double[] station, SizeFunction size, double factor, int anchor) {
    this.station = station;
    int n = station.length - 1;
    count = new int[n];
    place = new double[n][];
    number = new double[n][];
    double[] stretch = new double[n];
    for (int k = 0; k < n; k++) {
      int samples = SAMPLES_PER_CELL * Math.max(4, (int) estimate(k, size, factor) + 1);
      place[k] = new double[samples + 1];
      number[k] = new double[samples + 1];
      for (int s = 0; s <= samples; s++) {
        place[k][s] = between(station[k], station[k + 1], (double) s / samples);
        if (s > 0) {
          double middle = 0.5 * (place[k][s - 1] + place[k][s]);
          number[k][s] =
              number[k][s - 1] + (place[k][s] - place[k][s - 1]) / (factor * size.at(middle));
        }
      }
      count[k] = Math.max(1, (int) Math.rint(number[k][samples]));
      stretch[k] = count[k] / number[k][samples];
    }
    for (int k = 0; k < n; k++) {
      blend(k, stretchAt(stretch, k, k - 1, anchor), stretchAt(stretch, k, k + 1, anchor));
    }
  }

  private double estimate(int k, SizeFunction size, double factor) {
    double sum = 0;
    int samples = 200;
    for (int s = 0; s < samples; s++) {
      sum +=
          (station[k + 1] - station[k])
              / samples
              / (factor * size.at(between(station[k], station[k + 1], (s + 0.5) / samples)));
    }
    return sum;
  }

  private static double between(double a, double b, double t) {
    return t <= 0.5 ? a + (b - a) * t : b - (b - a) * (1 - t);
  }

  /** Stretch of the density at the station an interval shares with a neighbour. */
  private static double stretchAt(double[] stretch, int k, int neighbour, int anchor) {
    if (neighbour < 0 || neighbour >= stretch.length || k == anchor) {
      return stretch[k];
    }
    double shared =
        neighbour == anchor ? stretch[anchor] : Math.sqrt(stretch[k] * stretch[neighbour]);
    return Math.max(0.5 * stretch[k], Math.min(2 * stretch[k], shared));
  }

  /**
   * Stretches the cell numbers of an interval so that they end at the count: with t the share of
   * the wanted cells, density factor {@code a (1 - t) + b t + 6 c t (1 - t)}.
   */
  private void blend(int k, double a, double b) {
    int samples = place[k].length - 1;
    double total = number[k][samples];
    double c = count[k] / total - 0.5 * (a + b);
    for (int s = 1; s < samples; s++) {
      double t = number[k][s] / total;
      number[k][s] = total * (a * t + 0.5 * (b - a) * t * t + c * t * t * (3 - 2 * t));
    }
    number[k][samples] = count[k];
  }

  /** Base cells in all. */
  int cells() {
    int sum = 0;
    for (int c : count) {
      sum += c;
    }
    return sum;
  }

  /** Lines with {@code multiplier} cells for each base cell. */
  double[] lines(int multiplier) {
    double[] line = new double[cells() * multiplier + 1];
    int next = 0;
    for (int k = 0; k < count.length; k++) {
      line[next++] = station[k];
      int cells = count[k] * multiplier;
      int s = 1;
      for (int m = 1; m < cells; m++) {
        double target = (double) m / multiplier;
        while (number[k][s] < target) {
          s++;
        }
        double t = (target - number[k][s - 1]) / (number[k][s] - number[k][s - 1]);
        line[next++] = place[k][s - 1] + t * (place[k][s] - place[k][s - 1]);
      }
    }
    line[next] = station[count.length];
    return line;
  }
}
