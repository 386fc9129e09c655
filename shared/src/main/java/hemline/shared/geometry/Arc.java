package hemline.shared.geometry;

/**
 * The circle of an edge with a bulge.
 *
 * @param xc centre, m
 * @param yc centre, m
 * @param radius m
 * @param start angle of the first end, rad
 * @param sweep signed opening angle, rad, positive counter-clockwise
 */
public record Arc(double xc, double yc, double radius, double start, double sweep) {

  /** Arc of the edge from a to b; a's bulge must not be zero. */
  public static Arc of(Vertex a, Vertex b) {
    double bulge = a.bulge();
    double dx = b.x() - a.x();
    double dy = b.y() - a.y();
    // the centre lies off the middle of the chord by (1 - b²) / (4 b) chords
    double offset = (1 - bulge * bulge) / (4 * bulge);
    double xc = 0.5 * (a.x() + b.x()) - offset * dy;
    double yc = 0.5 * (a.y() + b.y()) + offset * dx;
    double radius = Math.hypot(dx, dy) * (1 + bulge * bulge) / (4 * Math.abs(bulge));
    return new Arc(xc, yc, radius, Math.atan2(a.y() - yc, a.x() - xc), 4 * Math.atan(bulge));
  }

  /** Area between chord and arc, m², positive if the arc bulges to the right of the chord. */
  public double segmentArea() {
    return 0.5 * radius * radius * (sweep - Math.sin(sweep));
  }

  /** True if the arc passes the direction strictly between its ends. */
  public boolean passes(double angle) {
    double turn = 2 * Math.PI;
    double ahead = (sweep > 0 ? angle - start : start - angle) % turn;
    double along = ahead < 0 ? ahead + turn : ahead;
    return along > 1e-9 && along < Math.abs(sweep) - 1e-9;
  }
}
