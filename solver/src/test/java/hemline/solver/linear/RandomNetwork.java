package hemline.solver.linear;

import java.util.SplittableRandom;

/** Connected networks of random links, some of them double, and dense copies of their matrices. */
final class RandomNetwork {
  final int size;
  final int[] first;
  final int[] second;

  private RandomNetwork(int size, int[] first, int[] second) {
    this.size = size;
    this.first = first;
    this.second = second;
  }

  /** A random tree, further random links, and every eighth link once more the other way round. */
  static RandomNetwork of(int size, int further, SplittableRandom random) {
    int base = size - 1 + (size > 1 ? further : 0);
    int links = base + base / 8;
    int[] first = new int[links];
    int[] second = new int[links];
    for (int l = 0; l < base; l++) {
      if (l < size - 1) {
        first[l] = l + 1;
        second[l] = random.nextInt(l + 1);
      } else {
        first[l] = random.nextInt(size);
        second[l] = (first[l] + 1 + random.nextInt(size - 1)) % size;
      }
    }
    for (int l = base; l < links; l++) {
      int twin = random.nextInt(base);
      first[l] = second[twin];
      second[l] = first[twin];
    }
    return new RandomNetwork(size, first, second);
  }

  /** Plane grid of nx by ny unknowns, numbered along x first: links along x, then along y. */
  static RandomNetwork grid(int nx, int ny) {
    int along = (nx - 1) * ny;
    int links = along + nx * (ny - 1);
    int[] first = new int[links];
    int[] second = new int[links];
    int l = 0;
    for (int j = 0; j < ny; j++) {
      for (int i = 0; i + 1 < nx; i++) {
        first[l] = j * nx + i;
        second[l++] = j * nx + i + 1;
      }
    }
    for (int j = 0; j + 1 < ny; j++) {
      for (int i = 0; i < nx; i++) {
        first[l] = j * nx + i;
        second[l++] = (j + 1) * nx + i;
      }
    }
    return new RandomNetwork(nx * ny, first, second);
  }

  static double[] values(int n, double from, double to, SplittableRandom random) {
    double[] v = new double[n];
    for (int i = 0; i < n; i++) {
      v[i] = from + (to - from) * random.nextDouble();
    }
    return v;
  }

  static double norm(double[] a) {
    double sum = 0;
    for (double v : a) {
      sum += v * v;
    }
    return Math.sqrt(sum);
  }

  static double distance(double[] a, double[] b) {
    double sum = 0;
    for (int i = 0; i < a.length; i++) {
      sum += (a[i] - b[i]) * (a[i] - b[i]);
    }
    return Math.sqrt(sum);
  }
}
