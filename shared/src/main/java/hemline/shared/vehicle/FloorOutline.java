package hemline.shared.vehicle;

import hemline.shared.geometry.Arc;
import hemline.shared.geometry.Polygons;
import hemline.shared.geometry.Vertex;
import hemline.shared.profile.LipProfile;
import java.util.ArrayList;
import java.util.List;

/**
 * Floor of the machine in plan: the line on which the plenum side of the skirt stands, and the seal
 * on each edge.
 *
 * <p>x points forwards, y to the left, m. Vertices run counter-clockwise; edge i runs from vertex i
 * to the next, straight or as an arc.
 *
 * @param vertices counter-clockwise
 * @param edges seal by edge, as many as vertices
 * @param ceilingHeight height of the floor above the ground, m
 */
public record FloorOutline(List<Vertex> vertices, List<SealEdge> edges, double ceilingHeight) {
  /** Most turn of one straight piece that stands for a part of an arc, rad. */
  public static final double FINEST_TURN = Math.toRadians(15);

  public FloorOutline {
    vertices = List.copyOf(vertices);
    edges = List.copyOf(edges);
    if (vertices.size() != edges.size()) {
      throw new IllegalArgumentException("each edge of the floor needs its seal");
    }
    if (!(Polygons.signedArea(vertices) > 0)) {
      throw new IllegalArgumentException("the floor must run counter-clockwise");
    }
  }

  /**
   * A straight piece of the seal.
   *
   * @param edge number of the edge it belongs to
   * @param x0 first end, m
   * @param y0 first end, m
   * @param x1 second end, m
   * @param y1 second end, m
   * @param length along the seal, of the arc where it stands for one, m
   */
  public record Piece(int edge, double x0, double y0, double x1, double y1, double length) {
    /** Direction away from the plenum, forwards part. */
    public double outwardX() {
      return (y1 - y0) / Math.hypot(x1 - x0, y1 - y0);
    }

    /** Direction away from the plenum, part to the left. */
    public double outwardY() {
      return -(x1 - x0) / Math.hypot(x1 - x0, y1 - y0);
    }
  }

  /** Area inside the outline with its arcs exact, m². */
  public double area() {
    return Polygons.signedArea(vertices);
  }

  /** Length of the seal, m. */
  public double perimeter() {
    return pieces().stream().mapToDouble(Piece::length).sum();
  }

  /** Straight pieces of the seal in order; arcs are cut so that each turns by 15° at most. */
  public List<Piece> pieces() {
    List<Piece> pieces = new ArrayList<>();
    for (int i = 0; i < vertices.size(); i++) {
      Vertex a = vertices.get(i);
      Vertex b = vertices.get((i + 1) % vertices.size());
      if (a.bulge() == 0) {
        pieces.add(
            new Piece(i, a.x(), a.y(), b.x(), b.y(), Math.hypot(b.x() - a.x(), b.y() - a.y())));
        continue;
      }
      Arc arc = Arc.of(a, b);
      int n = Math.max(1, (int) Math.ceil(Math.abs(arc.sweep()) / FINEST_TURN - 1e-9));
      double step = arc.sweep() / n;
      for (int k = 0; k < n; k++) {
        double from = arc.start() + k * step;
        double to = from + step;
        pieces.add(
            new Piece(
                i,
                arc.xc() + arc.radius() * Math.cos(from),
                arc.yc() + arc.radius() * Math.sin(from),
                arc.xc() + arc.radius() * Math.cos(to),
                arc.yc() + arc.radius() * Math.sin(to),
                arc.radius() * Math.abs(step)));
      }
    }
    return pieces;
  }

  /**
   * Centre of the area, m: {x, y}.
   *
   * <p>Polygon of the vertices by the shoelace formula, and for each arc its segment of area S,
   * whose centre lies 4 R sin³(φ/2) / (3 (φ − sin φ)) from that of the circle.
   */
  public double[] centre() {
    double area = 0;
    double mx = 0;
    double my = 0;
    Vertex o = vertices.get(0);
    for (int i = 0; i < vertices.size(); i++) {
      Vertex a = vertices.get(i);
      Vertex b = vertices.get((i + 1) % vertices.size());
      double part = 0.5 * ((a.x() - o.x()) * (b.y() - o.y()) - (b.x() - o.x()) * (a.y() - o.y()));
      area += part;
      mx += part * (o.x() + a.x() + b.x()) / 3;
      my += part * (o.y() + a.y() + b.y()) / 3;
      if (a.bulge() != 0) {
        Arc arc = Arc.of(a, b);
        double segment = arc.segmentArea();
        double turn = Math.abs(arc.sweep());
        double half = Math.sin(0.5 * turn);
        double out = 4 * arc.radius() * half * half * half / (3 * (turn - Math.sin(turn)));
        double middle = arc.start() + 0.5 * arc.sweep();
        area += segment;
        mx += segment * (arc.xc() + out * Math.cos(middle));
        my += segment * (arc.yc() + out * Math.sin(middle));
      }
    }
    return new double[] {mx / area, my / area};
  }

  /** The floor stretched about its centre, x and y each by a factor. */
  public FloorOutline stretched(double factorX, double factorY) {
    double[] c = centre();
    List<Vertex> moved =
        vertices.stream()
            .map(
                v ->
                    new Vertex(
                        c[0] + factorX * (v.x() - c[0]),
                        c[1] + factorY * (v.y() - c[1]),
                        v.bulge()))
            .toList();
    return new FloorOutline(moved, edges, ceilingHeight);
  }

  /** The same floor with all gaps times a factor. */
  public FloorOutline withGaps(double factor) {
    return new FloorOutline(
        vertices,
        edges.stream().map(e -> new SealEdge(e.lip(), factor * e.gap())).toList(),
        ceilingHeight);
  }

  /** The same floor with all gaps wider by a length, m; none closes altogether. */
  public FloorOutline withGapsWider(double more) {
    return new FloorOutline(
        vertices,
        edges.stream()
            .map(e -> new SealEdge(e.lip(), Math.max(0.01 * e.gap(), e.gap() + more)))
            .toList(),
        ceilingHeight);
  }

  /** The same floor with one lip on all edges. */
  public FloorOutline withLip(LipProfile lip) {
    return new FloorOutline(
        vertices, edges.stream().map(e -> new SealEdge(lip, e.gap())).toList(), ceilingHeight);
  }

  /** The smallest static gap of all edges, m. */
  public double leastGap() {
    return edges.stream().mapToDouble(SealEdge::gap).min().orElseThrow();
  }
}
