package hemline.shared.file;

import hemline.shared.geometry.ArcFit;
import hemline.shared.geometry.Vertex;
import java.awt.geom.AffineTransform;
import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleFunction;
import org.apache.batik.parser.DefaultPointsHandler;
import org.apache.batik.parser.PathParser;
import org.apache.batik.parser.PointsParser;
import org.xml.sax.Attributes;

/** Turns one SVG shape into runs of edges in metres. */
final class SvgShape {
  private static final double LARGEST = 1e9;

  private final String name;
  private final Attributes attributes;
  private final AffineTransform transform;
  private final String origin;
  private final int room;
  private int corners;
  private final List<Contour> contours = new ArrayList<>();
  private List<Vertex> run = new ArrayList<>();

  /**
   * A shape.
   *
   * @param room most corners that it may have
   */
  SvgShape(String name, Attributes attributes, AffineTransform transform, String origin, int room) {
    this.room = room;
    this.name = name;
    this.attributes = attributes;
    this.transform = transform;
    this.origin = origin;
  }

  /** A shape that cannot be drawn, in words. */
  static final class Unsound extends Exception {
    private static final long serialVersionUID = 1L;

    Unsound(String text) {
      super(text);
    }
  }

  /** The shape has more corners than there is room for. */
  static final class TooMany extends RuntimeException {
    private static final long serialVersionUID = 1L;
  }

  List<Contour> contours() throws Unsound {
    switch (name) {
      case "path" -> addPath();
      case "polygon" -> addPoints(true);
      case "polyline" -> addPoints(false);
      case "line" -> {
        line(new double[] {number("x1"), number("y1")}, new double[] {number("x2"), number("y2")});
        end(new double[] {number("x2"), number("y2")}, false);
      }
      case "rect" -> addRectangle();
      case "circle" -> addEllipse(number("r"), number("r"));
      default -> addEllipse(number("rx"), number("ry"));
    }
    for (Contour c : contours) {
      for (Vertex v : c.vertices()) {
        if (!(Math.abs(v.x()) < LARGEST) || !(Math.abs(v.y()) < LARGEST)) {
          throw new Unsound("a coordinate is too large or its transform is singular");
        }
      }
    }
    return contours;
  }

  private void addPath() {
    String data = attributes.getValue("d");
    if (data == null || data.isBlank()) {
      return;
    }
    PathParser parser = new PathParser();
    parser.setPathHandler(new SvgPath(this));
    parser.parse(data);
  }

  private void addPoints(boolean closed) {
    String data = attributes.getValue("points");
    if (data == null || data.isBlank()) {
      return;
    }
    List<double[]> points = new ArrayList<>();
    PointsParser parser = new PointsParser();
    parser.setPointsHandler(
        new DefaultPointsHandler() {
          @Override
          public void point(float x, float y) {
            points.add(new double[] {SvgPath.d(x), SvgPath.d(y)});
          }
        });
    parser.parse(data);
    for (int i = 0; i + 1 < points.size(); i++) {
      line(points.get(i), points.get(i + 1));
    }
    if (!points.isEmpty()) {
      end(points.get(points.size() - 1), closed);
    }
  }

  private void addRectangle() throws Unsound {
    double x = number("x");
    double y = number("y");
    double w = number("width");
    double h = number("height");
    double rx = attributes.getValue("rx") == null ? number("ry") : number("rx");
    double ry = attributes.getValue("ry") == null ? rx : number("ry");
    rx = Math.min(rx, w / 2);
    ry = Math.min(ry, h / 2);
    if (!(w > 0) || !(h > 0) || rx < 0 || ry < 0) {
      throw new Unsound("width and height must be positive");
    }
    double[][] centres = {
      {x + w - rx, y + ry}, {x + w - rx, y + h - ry}, {x + rx, y + h - ry}, {x + rx, y + ry}
    };
    for (int i = 0; i < 4; i++) {
      double start = Math.PI / 2 * (i - 1);
      double[] c = centres[i];
      double[] next = centres[(i + 1) % 4];
      ellipse(c[0], c[1], rx, ry, 0, start, Math.PI / 2);
      double to = start + Math.PI / 2;
      line(
          new double[] {c[0] + rx * Math.cos(to), c[1] + ry * Math.sin(to)},
          new double[] {next[0] + rx * Math.cos(to), next[1] + ry * Math.sin(to)});
    }
    end(new double[] {centres[0][0] + rx * Math.cos(-Math.PI / 2), y}, true);
  }

  private void addEllipse(double rx, double ry) throws Unsound {
    if (!(rx > 0) || !(ry > 0)) {
      throw new Unsound("the radius must be positive");
    }
    double x = number("cx");
    double y = number("cy");
    ellipse(x, y, rx, ry, 0, 0, Math.PI);
    ellipse(x, y, rx, ry, 0, Math.PI, Math.PI);
    end(new double[] {x + rx, y}, true);
  }

  private double number(String attribute) throws Unsound {
    String text = attributes.getValue(attribute);
    if (text == null) {
      return 0;
    }
    String bare = text.strip().replaceFirst("px$", "");
    if (bare.length() > 40 || !bare.matches("[+-]?(\\d+\\.?\\d*|\\.\\d+)([eE][+-]?\\d{1,2})?")) {
      throw new Unsound(attribute + " must be a plain number in user units");
    }
    return Double.parseDouble(bare);
  }

  // ---- edges in user units

  void line(double[] from, double[] to) {
    if (from[0] != to[0] || from[1] != to[1]) {
      run.add(vertex(from));
      count(1);
    }
  }

  private void count(int more) {
    corners += more;
    if (corners > room) {
      throw new TooMany();
    }
  }

  void curve(DoubleFunction<double[]> curve) {
    int before = run.size();
    ArcFit.append(
        t -> {
          double[] p = curve.apply(t);
          transform.transform(p, 0, p, 0, 1);
          return p;
        },
        SvgFile.TOLERANCE,
        run);
    count(run.size() - before);
  }

  /** Part of an ellipse turned by a tilt, from a parameter angle over a sweep, rad. */
  void ellipse(
      double xc, double yc, double rx, double ry, double tilt, double start, double sweep) {
    if (rx == 0 || ry == 0) {
      return;
    }
    double cos = Math.cos(tilt);
    double sin = Math.sin(tilt);
    curve(
        t -> {
          double u = rx * Math.cos(start + sweep * t);
          double v = ry * Math.sin(start + sweep * t);
          return new double[] {xc + cos * u - sin * v, yc + sin * u + cos * v};
        });
  }

  /** Ends the current run at a point. */
  void end(double[] last, boolean closed) {
    if (run.isEmpty()) {
      return;
    }
    run.add(vertex(last));
    count(1);
    contours.add(new Contour(run, closed, origin));
    run = new ArrayList<>();
  }

  private Vertex vertex(double[] p) {
    double[] q = new double[2];
    transform.transform(p, 0, q, 0, 1);
    return new Vertex(q[0], q[1]);
  }
}
