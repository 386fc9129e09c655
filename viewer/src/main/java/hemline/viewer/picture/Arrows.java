package hemline.viewer.picture;

import java.awt.geom.Path2D;

/** Arrow heads. */
public final class Arrows {
  private Arrows() {}

  /** A filled head with its tip at a point. */
  public static Path2D head(double tipX, double tipY, double dx, double dy, double size) {
    double length = Math.hypot(dx, dy);
    double ux = dx / length;
    double uy = dy / length;
    double bx = tipX - size * ux;
    double by = tipY - size * uy;
    Path2D head = new Path2D.Double();
    head.moveTo(tipX, tipY);
    head.lineTo(bx - 0.42 * size * uy, by + 0.42 * size * ux);
    head.lineTo(bx + 0.25 * size * ux, by + 0.25 * size * uy);
    head.lineTo(bx + 0.42 * size * uy, by - 0.42 * size * ux);
    head.closePath();
    return head;
  }

  /** Head on a contour line at a share of the length that lies inside the window. */
  public static Path2D on(Contours.Line line, Projection view, double share, double size) {
    double[] x = line.x();
    double[] y = line.y();
    double total = 0;
    for (int k = 0; k + 1 < x.length; k++) {
      total += visible(view, x, y, k);
    }
    double gone = 0;
    for (int k = 0; k + 1 < x.length; k++) {
      double piece = visible(view, x, y, k);
      if (piece > 0 && gone + piece >= share * total) {
        double dx = view.x(x[k + 1]) - view.x(x[k]);
        double dy = view.y(y[k + 1]) - view.y(y[k]);
        double t = (share * total - gone) / piece;
        return head(view.x(x[k]) + t * dx, view.y(y[k]) + t * dy, dx, dy, size);
      }
      gone += piece;
    }
    return new Path2D.Double();
  }

  /** Length on the sheet of the part of a line that lies inside the window. */
  public static double visibleLength(Contours.Line line, Projection view) {
    double total = 0;
    for (int k = 0; k + 1 < line.x().length; k++) {
      total += visible(view, line.x(), line.y(), k);
    }
    return total;
  }

  private static double visible(Projection view, double[] x, double[] y, int k) {
    SectionWindow w = view.window();
    boolean inside =
        x[k] >= w.left()
            && x[k + 1] >= w.left()
            && x[k] <= w.right()
            && x[k + 1] <= w.right()
            && y[k] <= w.top()
            && y[k + 1] <= w.top();
    return inside ? Math.hypot(x[k + 1] - x[k], y[k + 1] - y[k]) * view.scale() : 0;
  }
}
