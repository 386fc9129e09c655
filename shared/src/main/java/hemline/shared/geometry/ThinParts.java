package hemline.shared.geometry;

import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.operation.buffer.BufferOp;
import org.locationtech.jts.operation.buffer.BufferParameters;

/**
 * Finds walls thinner, or slots narrower, than a width: what a disc of that diameter cannot reach.
 *
 * <p>The solid (for slots: the space around it) is opened with the disc. What is lost is a thin
 * part where it is some times as long as the disc is wide; shorter losses are corners that the disc
 * cannot fill.
 */
public final class ThinParts {
  /** Works in mm: the buffer operations like coordinates near one. */
  private static final double SCALE = 1000;

  private static final BufferParameters ROUND = new BufferParameters(16);

  private ThinParts() {}

  /**
   * A thin part.
   *
   * @param x middle, m
   * @param y middle, m
   * @param length extent, m
   */
  public record Part(double x, double y, double length) {}

  /**
   * Walls of the outlines thinner than a width.
   *
   * @param width m
   * @param slenderness least length of a thin part over the width; 1.25 lets corners of 45 degrees
   *     pass, 10 those of 6 degrees
   */
  public static List<Part> thinWalls(List<Outline> outlines, double width, double slenderness) {
    return lost(union(outlines), SCALE * width, slenderness);
  }

  /** Slots between and within the outlines narrower than a width; see {@link #thinWalls}. */
  public static List<Part> narrowSlots(List<Outline> outlines, double width, double slenderness) {
    Geometry solid = union(outlines);
    Geometry frame = solid.getEnvelope().buffer(10 * SCALE * width);
    return lost(frame.difference(solid), SCALE * width, slenderness);
  }

  private static Geometry union(List<Outline> outlines) {
    List<Polygon> polygons = outlines.stream().map(o -> Polygons.polygon(o, SCALE)).toList();
    return new GeometryFactory().buildGeometry(polygons).union();
  }

  private static List<Part> lost(Geometry g, double diameter, double slenderness) {
    // a hair below the half width, so that a wall of just that width passes
    double radius = 0.5 * diameter * (1 - 1e-3);
    Geometry core = BufferOp.bufferOp(g, -radius, ROUND);
    Geometry opened = BufferOp.bufferOp(core, radius * (1 + 1e-2), ROUND);
    Geometry rest = g.difference(opened);
    List<Part> parts = new ArrayList<>();
    for (int i = 0; i < rest.getNumGeometries(); i++) {
      Geometry piece = rest.getGeometryN(i);
      if (piece.isEmpty() || piece.getDimension() < 2) {
        continue;
      }
      double across = longestSpan(piece.convexHull().getCoordinates());
      if (across > slenderness * diameter) {
        Coordinate c = piece.getInteriorPoint().getCoordinate();
        parts.add(new Part(c.x / SCALE, c.y / SCALE, across / SCALE));
      }
    }
    return parts;
  }

  private static double longestSpan(Coordinate[] hull) {
    double longest = 0;
    for (Coordinate a : hull) {
      for (Coordinate b : hull) {
        longest = Math.max(longest, a.distance(b));
      }
    }
    return longest;
  }
}
