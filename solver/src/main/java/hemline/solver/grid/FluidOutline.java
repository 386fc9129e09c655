package hemline.solver.grid;

import hemline.shared.geometry.Ring;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.locationtech.jts.algorithm.Distance;
import org.locationtech.jts.algorithm.Orientation;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LinearRing;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.geom.util.GeometryFixer;
import org.locationtech.jts.operation.overlayng.OverlayNG;
import org.locationtech.jts.operation.overlayng.OverlayNGRobust;

/**
 * Boundary of the fluid in a section: the rectangle of the grid minus all solids, as directed
 * segments with the fluid on their left.
 *
 * <p>Coordinates that all but lie on a grid line are moved onto it, before and after the solids are
 * subtracted.
 */
final class FluidOutline {
  final DoubleList x0 = new DoubleList();
  final DoubleList y0 = new DoubleList();
  final DoubleList x1 = new DoubleList();
  final DoubleList y1 = new DoubleList();
  final IntList patch = new IntList();

  private final GeometryFactory factory = new GeometryFactory();
  private final LineSnap snapX;
  private final LineSnap snapY;
  private final double xMin;
  private final double xMax;
  private final double yMin;
  private final double yMax;
  private final List<Coordinate[]> snapped = new ArrayList<>();
  private final List<Integer> solidOf = new ArrayList<>();
  private final Map<Coordinate, List<int[]>> edgesAt = new HashMap<>();

  FluidOutline(GridLines lines, List<Ring> solids, LineSnap snapX, LineSnap snapY) {
    this.snapX = snapX;
    this.snapY = snapY;
    xMin = lines.x()[0];
    xMax = lines.x()[lines.nx()];
    yMin = lines.y()[0];
    yMax = lines.y()[lines.ny()];
    for (int k = 0; k < solids.size(); k++) {
      addSolid(solids.get(k), k);
    }
    addFluid(subtract());
  }

  int size() {
    return patch.size();
  }

  private void addSolid(Ring ring, int solid) {
    List<Coordinate> points = new ArrayList<>();
    for (int i = 0; i < ring.size(); i++) {
      if (!Double.isFinite(ring.x()[i]) || !Double.isFinite(ring.y()[i])) {
        throw new IllegalArgumentException("solid " + solid + " has a corner that is not finite");
      }
      Coordinate c = new Coordinate(snapX.snap(ring.x()[i]), snapY.snap(ring.y()[i]));
      if (points.isEmpty() || !points.get(points.size() - 1).equals2D(c)) {
        points.add(c);
      }
    }
    while (points.size() > 1 && points.get(0).equals2D(points.get(points.size() - 1))) {
      points.remove(points.size() - 1);
    }
    if (points.size() < 3) {
      return;
    }
    points.add(points.get(0));
    int index = snapped.size();
    snapped.add(points.toArray(new Coordinate[0]));
    solidOf.add(solid);
    for (int e = 0; e + 1 < points.size(); e++) {
      edgesAt.computeIfAbsent(points.get(e), c -> new ArrayList<>()).add(new int[] {index, e});
      edgesAt.computeIfAbsent(points.get(e + 1), c -> new ArrayList<>()).add(new int[] {index, e});
    }
  }

  private Geometry subtract() {
    Geometry domain =
        factory.createPolygon(
            new Coordinate[] {
              new Coordinate(xMin, yMin),
              new Coordinate(xMax, yMin),
              new Coordinate(xMax, yMax),
              new Coordinate(xMin, yMax),
              new Coordinate(xMin, yMin)
            });
    List<Geometry> parts = new ArrayList<>();
    for (Coordinate[] ring : snapped) {
      Geometry polygon = factory.createPolygon(ring);
      parts.add(polygon.isValid() ? polygon : GeometryFixer.fix(polygon));
    }
    if (parts.isEmpty()) {
      return domain;
    }
    Geometry union = parts.size() == 1 ? parts.get(0) : OverlayNGRobust.union(parts);
    return OverlayNGRobust.overlay(domain, union, OverlayNG.DIFFERENCE);
  }

  private void addFluid(Geometry fluid) {
    for (int g = 0; g < fluid.getNumGeometries(); g++) {
      if (fluid.getGeometryN(g) instanceof Polygon polygon && !polygon.isEmpty()) {
        addRing(polygon.getExteriorRing(), true);
        for (int h = 0; h < polygon.getNumInteriorRing(); h++) {
          addRing(polygon.getInteriorRingN(h), false);
        }
      }
    }
  }

  private void addRing(LinearRing ring, boolean shell) {
    Coordinate[] c = ring.getCoordinates();
    boolean forward = Orientation.isCCW(c) == shell;
    for (int k = 0; k + 1 < c.length; k++) {
      Coordinate a = c[forward ? k : c.length - 1 - k];
      Coordinate b = c[forward ? k + 1 : c.length - 2 - k];
      double ax = snapX.snap(a.x);
      double ay = snapY.snap(a.y);
      double bx = snapX.snap(b.x);
      double by = snapY.snap(b.y);
      if (ax == bx && ay == by) {
        continue;
      }
      x0.add(ax);
      y0.add(ay);
      x1.add(bx);
      y1.add(by);
      patch.add(patchOf(a, b, ax, ay, bx, by));
    }
  }

  private int patchOf(Coordinate a, Coordinate b, double ax, double ay, double bx, double by) {
    if (ax == bx && (ax == xMin || ax == xMax)) {
      return ax == xMin ? Patch.LEFT : Patch.RIGHT;
    }
    if (ay == by && (ay == yMin || ay == yMax)) {
      return ay == yMin ? Patch.BOTTOM : Patch.TOP;
    }
    return Patch.FIRST_SOLID + solidOf.get(edgeUnder(a, b));
  }

  /** Index of the solid whose surface carries the segment; the first one if several do. */
  private int edgeUnder(Coordinate a, Coordinate b) {
    int found = -1;
    for (int[] edge : edgesAt.getOrDefault(a, List.of())) {
      Coordinate[] s = snapped.get(edge[0]);
      Coordinate p = s[edge[1]];
      Coordinate q = s[edge[1] + 1];
      boolean same = p.equals2D(a) && q.equals2D(b) || p.equals2D(b) && q.equals2D(a);
      if (same && (found < 0 || edge[0] < found)) {
        found = edge[0];
      }
    }
    if (found >= 0) {
      return found;
    }
    // cut by the overlay: the edge nearest to the middle that runs along the segment
    Coordinate mid = new Coordinate(0.5 * (a.x + b.x), 0.5 * (a.y + b.y));
    double length = a.distance(b);
    double best = Double.POSITIVE_INFINITY;
    for (int r = 0; r < snapped.size(); r++) {
      Coordinate[] s = snapped.get(r);
      for (int e = 0; e + 1 < s.length; e++) {
        double side = s[e].distance(s[e + 1]);
        double cross = (s[e + 1].x - s[e].x) * (b.y - a.y) - (s[e + 1].y - s[e].y) * (b.x - a.x);
        double miss = Distance.pointToSegment(mid, s[e], s[e + 1]) / length;
        double score = miss + Math.abs(cross) / (side * length) * 1e-3;
        if (score < best - 1e-12) {
          best = score;
          found = r;
        }
      }
    }
    return found;
  }
}
