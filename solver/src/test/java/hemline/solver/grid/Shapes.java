package hemline.solver.grid;

import hemline.shared.geometry.Outline;
import hemline.shared.geometry.Ring;
import hemline.shared.geometry.Vertex;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;

/** Solids and grids for the mesh tests, metres; x = 0 at the ambient edge, ground at y = 0. */
final class Shapes {
  private Shapes() {}

  /** Ring from coordinates x, y, x, y, ... */
  static Ring ring(double... xy) {
    double[] x = new double[xy.length / 2];
    double[] y = new double[xy.length / 2];
    for (int k = 0; k < x.length; k++) {
      x[k] = xy[2 * k];
      y[k] = xy[2 * k + 1];
    }
    return new Ring(x, y);
  }

  static Ring box(double x0, double y0, double x1, double y1) {
    return ring(x0, y0, x1, y0, x1, y1, x0, y1);
  }

  static Ring flatLip(double width, double gap, double top) {
    return box(0, gap, width, top);
  }

  /** Straight teeth under a body: pitch from tooth to tooth, {@code depth} long. */
  static Ring labyrinth(
      int teeth, double pitch, double thickness, double depth, double gap, double top) {
    List<double[]> p = new ArrayList<>();
    for (int k = 0; k < teeth; k++) {
      double x = k * pitch;
      if (k > 0) {
        p.add(new double[] {x, gap + depth});
      }
      p.add(new double[] {x, gap});
      p.add(new double[] {x + thickness, gap});
      if (k < teeth - 1) {
        p.add(new double[] {x + thickness, gap + depth});
      }
    }
    p.add(new double[] {(teeth - 1) * pitch + thickness, top});
    p.add(new double[] {0, top});
    return of(p);
  }

  /** Teeth that lean towards the ambient side by {@code lean}. */
  static Ring inclinedTeeth(int teeth, double pitch, double lean, double gap, double top) {
    double thickness = 0.2 * pitch;
    double depth = pitch;
    List<double[]> p = new ArrayList<>();
    p.add(new double[] {0, gap + depth});
    for (int k = 0; k < teeth; k++) {
      double x = k * pitch;
      p.add(new double[] {x - lean, gap});
      p.add(new double[] {x - lean + thickness, gap});
      p.add(new double[] {x + 2 * thickness, gap + depth});
      if (k < teeth - 1) {
        p.add(new double[] {x + pitch, gap + depth});
      }
    }
    p.add(new double[] {(teeth - 1) * pitch + 2 * thickness, top});
    p.add(new double[] {0, top});
    return of(p);
  }

  /** A lip whose lower end is half a circle. */
  static Ring roundNose(double width, double gap, double top) {
    double r = 0.5 * width;
    return new Outline(
            List.of(
                new Vertex(0, top),
                new Vertex(0, gap + r, 1),
                new Vertex(width, gap + r),
                new Vertex(width, top)))
        .flatten();
  }

  static Ring disc(double x, double y, double radius) {
    return new Outline(List.of(new Vertex(x - radius, y, 1), new Vertex(x + radius, y, 1)))
        .flatten();
  }

  /** A lip with one pocket in its bottom. */
  static Ring pocket(double width, double gap, double top) {
    double d = width / 4;
    return ring(
        0,
        top,
        0,
        gap,
        d,
        gap,
        d,
        gap + 2 * d,
        3 * d,
        gap + 2 * d,
        3 * d,
        gap,
        width,
        gap,
        width,
        top);
  }

  /** A lip with an undercut hook towards the ambient side. */
  static Ring hook(double size, double gap, double top) {
    return ring(
        size,
        top,
        size,
        gap + size,
        0,
        gap + size,
        0,
        gap + 0.4 * size,
        -0.3 * size,
        gap,
        1.5 * size,
        gap,
        1.5 * size,
        top);
  }

  /** A star-shaped polygon with slanted edges. */
  static Ring star(SplittableRandom random, double x, double y, double size) {
    int n = 3 + random.nextInt(9);
    double[] angle = random.doubles(n, 0, 2 * Math.PI).sorted().toArray();
    double[] px = new double[n];
    double[] py = new double[n];
    for (int k = 0; k < n; k++) {
      double r = size * (0.2 + 0.8 * random.nextDouble());
      px[k] = x + r * Math.cos(angle[k]);
      py[k] = y + r * Math.sin(angle[k]);
    }
    Ring ring = new Ring(px, py);
    return area(ring) > 0 ? ring : reversed(ring);
  }

  static Ring reversed(Ring ring) {
    int n = ring.size();
    double[] x = new double[n];
    double[] y = new double[n];
    for (int k = 0; k < n; k++) {
      x[k] = ring.x()[n - 1 - k];
      y[k] = ring.y()[n - 1 - k];
    }
    return new Ring(x, y);
  }

  static Ring mirrored(Ring ring) {
    Ring back = reversed(ring);
    double[] x = new double[ring.size()];
    for (int k = 0; k < x.length; k++) {
      x[k] = -back.x()[k];
    }
    return new Ring(x, back.y());
  }

  static Ring rotated(Ring ring, int by) {
    int n = ring.size();
    double[] x = new double[n];
    double[] y = new double[n];
    for (int k = 0; k < n; k++) {
      x[k] = ring.x()[(k + by) % n];
      y[k] = ring.y()[(k + by) % n];
    }
    return new Ring(x, y);
  }

  static double area(Ring ring) {
    double a = 0;
    int n = ring.size();
    double x0 = ring.x()[0];
    double y0 = ring.y()[0];
    for (int k = 0; k < n; k++) {
      int m = (k + 1) % n;
      a += (ring.x()[k] - x0) * (ring.y()[m] - y0) - (ring.x()[m] - x0) * (ring.y()[k] - y0);
    }
    return 0.5 * a;
  }

  static GridLines uniform(double x0, double x1, int nx, double y0, double y1, int ny) {
    double[] x = new double[nx + 1];
    double[] y = new double[ny + 1];
    for (int i = 0; i <= nx; i++) {
      x[i] = x0 + (x1 - x0) * i / nx;
    }
    for (int j = 0; j <= ny; j++) {
      y[j] = y0 + (y1 - y0) * j / ny;
    }
    return new GridLines(x, y);
  }

  static GridLines irregular(
      SplittableRandom random, double x0, double x1, int nx, double y0, double y1, int ny) {
    return new GridLines(line(random, x0, x1, nx), line(random, y0, y1, ny));
  }

  private static double[] line(SplittableRandom random, double a, double b, int n) {
    double[] line = new double[n + 1];
    for (int i = 1; i <= n; i++) {
      line[i] = line[i - 1] + 0.3 + random.nextDouble();
    }
    double length = line[n];
    for (int i = 0; i <= n; i++) {
      line[i] = a + (b - a) * line[i] / length;
    }
    line[n] = b;
    return line;
  }

  private static Ring of(List<double[]> points) {
    double[] x = new double[points.size()];
    double[] y = new double[points.size()];
    for (int k = 0; k < x.length; k++) {
      x[k] = points.get(k)[0];
      y[k] = points.get(k)[1];
    }
    Ring ring = new Ring(x, y);
    return area(ring) > 0 ? ring : reversed(ring);
  }
}
