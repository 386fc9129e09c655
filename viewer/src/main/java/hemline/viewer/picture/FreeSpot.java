package hemline.viewer.picture;

import java.awt.Shape;
import java.awt.geom.Line2D;
import java.awt.geom.PathIterator;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;

/** Finds room for the name of a point where no line runs and no other name stands. */
public final class FreeSpot {
  /** Distance of a name that stands right beside its point. */
  static final double NEAR = 9;

  private static final double[] DISTANCES = {NEAR, 18, 30, 45, 62, 82, 105};
  private static final double AIR = 2;

  /** Right above first, because text reads on from there. */
  private static final double[][] WAYS = {
    {1, -1}, {1, 1}, {-1, 1}, {-1, -1}, {1, -0.4}, {1, 0.4}, {-1, 0.4}, {-1, -0.4}, {0, -1}, {0, 1}
  };

  private final Rectangle2D box;
  private final List<Line2D> lines = new ArrayList<>();
  private final List<Rectangle2D> taken = new ArrayList<>();

  /**
   * Room inside a box.
   *
   * @param box names stay in it
   */
  public FreeSpot(Rectangle2D box) {
    this.box = box;
  }

  /** Keeps names off a line of straight pieces. */
  public void avoid(Shape line) {
    double[] at = new double[6];
    double x = 0;
    double y = 0;
    for (PathIterator i = line.getPathIterator(null, 0.5); !i.isDone(); i.next()) {
      int kind = i.currentSegment(at);
      if (kind == PathIterator.SEG_LINETO) {
        lines.add(new Line2D.Double(x, y, at[0], at[1]));
      }
      if (kind != PathIterator.SEG_CLOSE) {
        x = at[0];
        y = at[1];
      }
    }
  }

  /** Keeps names off a rectangle. */
  public void block(Rectangle2D rectangle) {
    taken.add(rectangle);
  }

  /** A rectangle where it is free, else the nearest free one of its size. */
  public Rectangle2D near(Rectangle2D wanted) {
    if (free(wanted)) {
      taken.add(wanted);
      return wanted;
    }
    return take(wanted.getCenterX(), wanted.getCenterY(), wanted.getWidth(), wanted.getHeight());
  }

  /** The nearest free rectangle of a size beside a point; right above it where none is free. */
  public Rectangle2D take(double x, double y, double width, double height) {
    for (double d : DISTANCES) {
      for (double[] way : WAYS) {
        Rectangle2D spot = beside(x, y, width, height, d, way);
        if (free(spot)) {
          taken.add(spot);
          return spot;
        }
      }
    }
    return beside(x, y, width, height, NEAR, WAYS[0]);
  }

  private static Rectangle2D beside(
      double x, double y, double width, double height, double d, double[] way) {
    double left = way[0] > 0 ? x + d * way[0] : way[0] < 0 ? x + d * way[0] - width : x - width / 2;
    double top = way[1] > 0 ? y + d * way[1] : y + d * way[1] - height;
    return new Rectangle2D.Double(left, top, width, height);
  }

  private boolean free(Rectangle2D spot) {
    Rectangle2D roomy =
        new Rectangle2D.Double(
            spot.getX() - AIR,
            spot.getY() - AIR,
            spot.getWidth() + 2 * AIR,
            spot.getHeight() + 2 * AIR);
    return box.contains(roomy)
        && lines.stream().noneMatch(roomy::intersectsLine)
        && taken.stream().noneMatch(roomy::intersects);
  }
}
