package hemline.shared.file;

import hemline.shared.geometry.Outline;
import hemline.shared.geometry.Polygons;
import hemline.shared.geometry.Ring;
import hemline.shared.problem.InputException;
import hemline.shared.profile.LipProfile;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.algorithm.Orientation;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.triangulate.polygon.PolygonTriangulator;

/**
 * Test coupons for printing: a section drawn out to a length, as binary STL in mm.
 *
 * <p>x and y are those of the section, z runs along the seal. Each body is a closed surface. Arcs
 * are chords within {@link Outline#SAGITTA} of their radius.
 */
public final class StlFile {
  private static final double SCALE = 1000;

  private StlFile() {}

  /**
   * Writes a coupon of a lip and its detached bodies.
   *
   * @param length of the coupon, m, positive
   * @throws InputException if the file cannot be written
   */
  public static void write(Path file, LipProfile profile, double length) throws InputException {
    TextFiles.write(file, bytes(profile.bodies(), length));
  }

  /**
   * Bytes of a coupon.
   *
   * @param outlines sound outlines, m
   * @param length m, positive
   */
  public static byte[] bytes(List<Outline> outlines, double length) {
    if (!(length > 0) || !Double.isFinite(length)) {
      throw new IllegalArgumentException("a coupon needs a positive length, got " + length + " m");
    }
    List<double[]> triangles = new ArrayList<>();
    for (Outline outline : outlines) {
      addBody(triangles, outline, SCALE * length);
    }
    ByteBuffer out = ByteBuffer.allocate(84 + 50 * triangles.size()).order(ByteOrder.LITTLE_ENDIAN);
    out.put("lip test coupon, mm".getBytes(StandardCharsets.US_ASCII));
    out.position(80).putInt(triangles.size());
    for (double[] t : triangles) {
      putTriangle(out, t);
    }
    return out.array();
  }

  private static void addBody(List<double[]> triangles, Outline outline, double length) {
    Ring ring = outline.flatten();
    int n = ring.size();
    for (int i = 0; i < n; i++) {
      int j = (i + 1) % n;
      double ax = SCALE * ring.x()[i];
      double ay = SCALE * ring.y()[i];
      double bx = SCALE * ring.x()[j];
      double by = SCALE * ring.y()[j];
      triangles.add(new double[] {ax, ay, 0, bx, by, 0, bx, by, length});
      triangles.add(new double[] {ax, ay, 0, bx, by, length, ax, ay, length});
    }
    for (Coordinate[] c : cap(Polygons.polygon(outline, SCALE))) {
      triangles.add(new double[] {c[0].x, c[0].y, 0, c[2].x, c[2].y, 0, c[1].x, c[1].y, 0});
      triangles.add(
          new double[] {c[0].x, c[0].y, length, c[1].x, c[1].y, length, c[2].x, c[2].y, length});
    }
  }

  /** Counter-clockwise triangles of a polygon on its own vertices. */
  private static List<Coordinate[]> cap(Polygon polygon) {
    Geometry parts = PolygonTriangulator.triangulate(polygon);
    List<Coordinate[]> out = new ArrayList<>();
    for (int k = 0; k < parts.getNumGeometries(); k++) {
      Coordinate[] c = parts.getGeometryN(k).getCoordinates();
      boolean right = Orientation.index(c[0], c[1], c[2]) == Orientation.CLOCKWISE;
      out.add(right ? new Coordinate[] {c[0], c[2], c[1]} : c);
    }
    return out;
  }

  private static void putTriangle(ByteBuffer out, double[] t) {
    double ux = t[3] - t[0];
    double uy = t[4] - t[1];
    double uz = t[5] - t[2];
    double vx = t[6] - t[0];
    double vy = t[7] - t[1];
    double vz = t[8] - t[2];
    double nx = uy * vz - uz * vy;
    double ny = uz * vx - ux * vz;
    double nz = ux * vy - uy * vx;
    double length = Math.sqrt(nx * nx + ny * ny + nz * nz);
    double unit = length > 0 ? 1 / length : 0;
    out.putFloat((float) (nx * unit)).putFloat((float) (ny * unit)).putFloat((float) (nz * unit));
    for (double c : t) {
      out.putFloat((float) c);
    }
    out.putShort((short) 0);
  }
}
