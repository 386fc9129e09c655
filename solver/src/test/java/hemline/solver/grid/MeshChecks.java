package hemline.solver.grid;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import hemline.shared.geometry.Ring;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.util.GeometryFixer;
import org.locationtech.jts.operation.overlayng.OverlayNG;
import org.locationtech.jts.operation.overlayng.OverlayNGRobust;

/** Properties every mesh must have. */
final class MeshChecks {
  private static final GeometryFactory FACTORY = new GeometryFactory();

  private MeshChecks() {}

  /** Builds a mesh and checks it against the polygons. */
  static Mesh check(GridLines lines, List<Ring> solids, Set<Integer> open, String what) {
    Geometry fluid = fluid(lines, solids, open);
    if (fluid.isEmpty()) {
      return MeshBuilder.build(Shapes.uniform(0, 1, 1, 0, 1, 1), List.of());
    }
    Mesh mesh = MeshBuilder.build(lines, solids, open);
    double total = 0;
    double least = Double.POSITIVE_INFINITY;
    for (double v : mesh.volume) {
      least = Math.min(least, v);
      total += v;
    }
    assertThat(least).as(what).isPositive();
    double domain = (lines.x()[lines.nx()] - lines.x()[0]) * (lines.y()[lines.ny()] - lines.y()[0]);
    assertThat(total).as("%s: area", what).isCloseTo(fluid.getArea(), within(1e-12 * domain));
    closed(mesh, what);
    ordered(mesh, what);
    return mesh;
  }

  /** Outward area vectors of every cell sum to zero. */
  static void closed(Mesh mesh, String what) {
    double[] sx = new double[mesh.cells];
    double[] sy = new double[mesh.cells];
    double[] size = new double[mesh.cells];
    double least = Double.POSITIVE_INFINITY;
    for (int f = 0; f < mesh.faces; f++) {
      double ax = mesh.vertical[f] ? mesh.area[f] : 0;
      double ay = mesh.vertical[f] ? 0 : mesh.area[f];
      least = Math.min(least, mesh.area[f]);
      sx[mesh.owner[f]] += ax;
      sy[mesh.owner[f]] += ay;
      sx[mesh.neighbour[f]] -= ax;
      sy[mesh.neighbour[f]] -= ay;
      size[mesh.owner[f]] += mesh.area[f];
      size[mesh.neighbour[f]] += mesh.area[f];
    }
    for (int b = 0; b < mesh.boundaryFaces; b++) {
      sx[mesh.bCell[b]] += mesh.bnx[b];
      sy[mesh.bCell[b]] += mesh.bny[b];
      size[mesh.bCell[b]] += Math.hypot(mesh.bnx[b], mesh.bny[b]);
    }
    assertThat(least).as("%s: least face", what).isPositive();
    double extent = extent(mesh.lines);
    int worst = 0;
    double worstDefect = -1;
    for (int c = 0; c < mesh.cells; c++) {
      double defect = Math.hypot(sx[c], sy[c]) / (1e-14 * extent + 1e-13 * size[c]);
      if (!(defect <= worstDefect)) {
        worst = c;
        worstDefect = defect;
      }
    }
    assertThat(worstDefect).as("%s: closure of cell %d over round-off", what, worst).isLessThan(1);
  }

  /** Faces join different cells, cells are numbered by row, owners ascend. */
  static void ordered(Mesh mesh, String what) {
    boolean ascending = true;
    for (int f = 0; f < mesh.faces; f++) {
      ascending &= mesh.owner[f] != mesh.neighbour[f];
      ascending &= f == 0 || mesh.owner[f] >= mesh.owner[f - 1];
    }
    assertThat(ascending).as(what).isTrue();
    int most = -1;
    for (int c : mesh.cellAt) {
      most = Math.max(most, c);
    }
    // the last cell has a rectangle unless it is the lesser part of one
    assertThat(most).as(what).isLessThan(mesh.cells);
  }

  /** Number of cells that can be reached from open sides across faces. */
  static int reachable(Mesh mesh, Set<Integer> open) {
    boolean[] wet = new boolean[mesh.cells];
    for (int b = 0; b < mesh.boundaryFaces; b++) {
      if (open.contains(mesh.bPatch[b])) {
        wet[mesh.bCell[b]] = true;
      }
    }
    boolean grown = true;
    while (grown) {
      grown = false;
      for (int f = 0; f < mesh.faces; f++) {
        if (wet[mesh.owner[f]] != wet[mesh.neighbour[f]]) {
          wet[mesh.owner[f]] = true;
          wet[mesh.neighbour[f]] = true;
          grown = true;
        }
      }
    }
    int count = 0;
    for (boolean w : wet) {
      count += w ? 1 : 0;
    }
    return count;
  }

  /** Open length by grid face of one direction, domain sides included. */
  static double[] openLengths(Mesh mesh, boolean vertical) {
    int nx = mesh.lines.nx();
    int ny = mesh.lines.ny();
    double[] open = new double[vertical ? (nx + 1) * ny : nx * (ny + 1)];
    for (int f = 0; f < mesh.faces; f++) {
      if (mesh.vertical[f] == vertical) {
        open[mesh.gridFace[f]] += mesh.area[f];
      }
    }
    for (int b = 0; b < mesh.boundaryFaces; b++) {
      if (mesh.bPatch[b] < Patch.FIRST_SOLID && (mesh.bPatch[b] <= Patch.RIGHT) == vertical) {
        open[mesh.bGridFace[b]] += Math.abs(mesh.bnx[b]) + Math.abs(mesh.bny[b]);
      }
    }
    return open;
  }

  /** Distance from a point to the boundary of a ring. */
  static double distance(Ring ring, double x, double y) {
    return polygon(ring).getBoundary().distance(FACTORY.createPoint(new Coordinate(x, y)));
  }

  static double extent(GridLines lines) {
    double[] x = lines.x();
    double[] y = lines.y();
    return Math.max(
        Math.max(Math.abs(x[0]), Math.abs(x[x.length - 1])),
        Math.max(Math.abs(y[0]), Math.abs(y[y.length - 1])));
  }

  /** The fluid that touches open sides, by polygon overlay alone. */
  static Geometry fluid(GridLines lines, List<Ring> solids, Set<Integer> open) {
    double x0 = lines.x()[0];
    double x1 = lines.x()[lines.nx()];
    double y0 = lines.y()[0];
    double y1 = lines.y()[lines.ny()];
    Geometry left = polygon(Shapes.box(x0, y0, x1, y1));
    for (Ring solid : solids) {
      Geometry cut = GeometryFixer.fix(polygon(onLines(solid, lines)));
      left = polygons(OverlayNGRobust.overlay(left, cut, OverlayNG.DIFFERENCE));
    }
    List<Geometry> sides = new ArrayList<>();
    double[][] ends = {{x0, y0, x0, y1}, {x1, y0, x1, y1}, {x0, y0, x1, y0}, {x0, y1, x1, y1}};
    for (int side : open) {
      double[] e = ends[side];
      sides.add(
          FACTORY.createLineString(
              new Coordinate[] {new Coordinate(e[0], e[1]), new Coordinate(e[2], e[3])}));
    }
    List<Geometry> kept = new ArrayList<>();
    for (int g = 0; g < left.getNumGeometries(); g++) {
      Geometry part = left.getGeometryN(g);
      boolean touches = sides.stream().anyMatch(s -> part.intersection(s).getLength() > 1e-9);
      if (part.getDimension() == 2 && touches) {
        kept.add(part);
      }
    }
    return FACTORY.buildGeometry(kept);
  }

  private static Geometry polygons(Geometry all) {
    List<Geometry> kept = new ArrayList<>();
    for (int g = 0; g < all.getNumGeometries(); g++) {
      if (all.getGeometryN(g).getDimension() == 2) {
        kept.add(all.getGeometryN(g));
      }
    }
    return FACTORY.buildGeometry(kept);
  }

  /** The solid with coordinates that all but lie on a grid line moved onto it. */
  private static Ring onLines(Ring ring, GridLines lines) {
    double[] x = ring.x().clone();
    double[] y = ring.y().clone();
    for (int k = 0; k < x.length; k++) {
      for (double line : lines.x()) {
        x[k] = Math.abs(x[k] - line) < MeshBuilder.tolerance(lines) ? line : x[k];
      }
      for (double line : lines.y()) {
        y[k] = Math.abs(y[k] - line) < MeshBuilder.tolerance(lines) ? line : y[k];
      }
    }
    return new Ring(x, y);
  }

  static Geometry polygon(Ring ring) {
    Coordinate[] c = new Coordinate[ring.size() + 1];
    for (int k = 0; k < c.length; k++) {
      c[k] = new Coordinate(ring.x()[k % ring.size()], ring.y()[k % ring.size()]);
    }
    return FACTORY.createPolygon(c);
  }
}
