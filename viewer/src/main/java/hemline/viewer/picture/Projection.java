package hemline.viewer.picture;

import hemline.shared.geometry.Ring;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;

/**
 * Section coordinates to sheet coordinates, the same scale both ways.
 *
 * @param window what is shown, m
 * @param left sheet x of the window's left side
 * @param base sheet y of the window's lower side
 * @param scale sheet units per metre
 */
public record Projection(SectionWindow window, double left, double base, double scale) {

  public double x(double metres) {
    return left + (metres - window.left()) * scale;
  }

  public double y(double metres) {
    return base - (metres - window.bottom()) * scale;
  }

  public double width() {
    return window.width() * scale;
  }

  public double height() {
    return window.height() * scale;
  }

  public Rectangle2D frame() {
    return new Rectangle2D.Double(left, base - height(), width(), height());
  }

  public Path2D path(Ring ring) {
    Path2D path = new Path2D.Double();
    for (int k = 0; k < ring.size(); k++) {
      if (k == 0) {
        path.moveTo(x(ring.x()[k]), y(ring.y()[k]));
      } else {
        path.lineTo(x(ring.x()[k]), y(ring.y()[k]));
      }
    }
    path.closePath();
    return path;
  }

  /** Adds a contour line as straight pieces. */
  public void append(Path2D path, Contours.Line line) {
    for (int k = 0; k < line.x().length; k++) {
      if (k == 0) {
        path.moveTo(x(line.x()[k]), y(line.y()[k]));
      } else {
        path.lineTo(x(line.x()[k]), y(line.y()[k]));
      }
    }
    if (line.closed()) {
      path.closePath();
    }
  }

  /**
   * Adds a contour line as parabolas through the middles of its pieces; it never leaves the strip
   * of grid cells that the straight pieces cross.
   */
  public void appendSmooth(Path2D path, Contours.Line line) {
    double[] lx = line.x();
    double[] ly = line.y();
    int n = lx.length;
    if (n < 3) {
      append(path, line);
      return;
    }
    if (line.closed()) {
      path.moveTo(x(0.5 * (lx[n - 1] + lx[0])), y(0.5 * (ly[n - 1] + ly[0])));
    } else {
      path.moveTo(x(lx[0]), y(ly[0]));
    }
    int last = line.closed() ? n : n - 1;
    for (int k = line.closed() ? 0 : 1; k < last; k++) {
      int after = (k + 1) % n;
      boolean end = !line.closed() && k == last - 1;
      path.quadTo(
          x(lx[k]),
          y(ly[k]),
          x(end ? lx[after] : 0.5 * (lx[k] + lx[after])),
          y(end ? ly[after] : 0.5 * (ly[k] + ly[after])));
    }
    if (line.closed()) {
      path.closePath();
    }
  }
}
