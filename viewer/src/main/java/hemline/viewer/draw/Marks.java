package hemline.viewer.draw;

import hemline.viewer.picture.Picture;
import hemline.viewer.picture.Sheet;
import java.awt.Shape;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;

/** What a picture tells a reader who points at it. */
public final class Marks implements Sheet {
  /** Farther away a mark is not meant, sheet units. */
  private static final double NEAR = 12;

  private final List<Mark> marks = new ArrayList<>();

  private record Mark(Rectangle2D where, String words) {
    double distance(double x, double y) {
      double dx = Math.max(0, Math.max(where.getMinX() - x, x - where.getMaxX()));
      double dy = Math.max(0, Math.max(where.getMinY() - y, y - where.getMaxY()));
      double within = Math.hypot(x - where.getCenterX(), y - where.getCenterY());
      return Math.hypot(dx, dy) + 1e-6 * within;
    }
  }

  private Marks() {}

  /** All marks of a picture. */
  public static Marks of(Picture picture) {
    Marks marks = new Marks();
    picture.paint(marks);
    return marks;
  }

  /** What is told at a place, sheet units; empty for nothing. */
  public String at(double x, double y) {
    String words = "";
    double nearest = NEAR;
    for (Mark mark : marks) {
      double distance = mark.distance(x, y);
      if (distance < nearest) {
        nearest = distance;
        words = mark.words();
      }
    }
    return words;
  }

  @Override
  public void mark(Rectangle2D where, String words) {
    marks.add(new Mark(where, words));
  }

  @Override
  public void fill(Shape shape, int rgb, double opacity) {}

  @Override
  public void stroke(Shape shape, Pen pen) {}

  @Override
  public void text(double x, double y, String text, Lettering lettering) {}

  @Override
  public void clip(Shape shape) {}

  @Override
  public void unclip() {}
}
