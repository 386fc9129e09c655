package hemline.solver.flow;

import hemline.shared.section.DuctSection;
import hemline.solver.grid.Mesh;
import hemline.solver.grid.Patch;
import hemline.solver.scheme.Boundary;
import hemline.solver.scheme.FaceGeometry;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;

/**
 * Velocity at the left end of a duct: face means of a profile that carries the flow through what is
 * open of the end.
 *
 * <p>Where obstacles reach into the inlet each opening has a profile of its own, between walls at
 * rest where an obstacle bounds it. The openings share the flow as one pressure gradient would
 * drive it: by their heights where the profile is uniform, by the cubes of their heights where it
 * is developed (plane Poiseuille flow).
 */
final class InletProfile {
  /** Faces that end and begin within this share of the height touch. */
  private static final double TOUCH = 1e-9;

  private static final DuctSection.Wall REST = new DuctSection.Wall(0, 0, false);

  private final DuctSection duct;
  private final Mesh mesh;
  private final FaceGeometry geometry;

  /** True when a uniform profile is asked. */
  private final boolean even;

  /** An opening from y = from to y = to, m. */
  private record Opening(
      double from, double to, DuctSection.Wall below, DuctSection.Wall above, List<Integer> faces) {
    double height() {
      return to - from;
    }

    boolean uniform(boolean asked) {
      return asked || (below.frictionless() && above.frictionless());
    }

    /** Flow that the walls alone drag along, m²/s. */
    double dragged(boolean asked) {
      if (uniform(asked)) {
        return 0;
      }
      double h = height();
      return below.frictionless()
          ? above.speed() * h
          : above.frictionless() ? below.speed() * h : 0.5 * (below.speed() + above.speed()) * h;
    }

    /** Flow per unit of pressure gradient, up to a common factor. */
    double conductance(boolean asked) {
      double h = height();
      if (asked) {
        return h;
      }
      // half a channel of twice the height where one wall has no friction
      return below.frictionless() || above.frictionless() ? 4 * h * h * h : h * h * h;
    }
  }

  private InletProfile(DuctSection duct, Mesh mesh, FaceGeometry geometry) {
    this.duct = duct;
    this.mesh = mesh;
    this.geometry = geometry;
    even = duct.inflow().inlet() == DuctSection.Inlet.UNIFORM;
  }

  /**
   * Sets the velocity of the faces at the left end.
   *
   * @param boundary its faces of {@link Patch#LEFT} are set
   */
  static void set(DuctSection duct, Mesh mesh, FaceGeometry geometry, Boundary boundary) {
    InletProfile profile = new InletProfile(duct, mesh, geometry);
    List<Opening> openings = profile.openings();
    double dragged = 0;
    double conductance = 0;
    for (Opening opening : openings) {
      dragged += opening.dragged(profile.even);
      conductance += opening.conductance(profile.even);
    }
    for (Opening opening : openings) {
      double share = opening.conductance(profile.even) / conductance;
      // what the walls drag through all openings is part of the flow asked for
      double fixed = openings.size() == 1 ? 0 : opening.dragged(profile.even) - share * dragged;
      for (int b : opening.faces) {
        profile.face(boundary, b, opening, share, fixed);
      }
    }
  }

  private List<Opening> openings() {
    List<Integer> faces =
        IntStream.range(0, mesh.boundaryFaces)
            .filter(b -> mesh.bPatch[b] == Patch.LEFT)
            .boxed()
            .sorted(Comparator.comparingDouble(b -> mesh.by[b]))
            .toList();
    List<Opening> openings = new ArrayList<>();
    double touch = TOUCH * duct.channel().height();
    int first = 0;
    for (int k = 0; k < faces.size(); k++) {
      boolean last = k + 1 == faces.size();
      if (last || low(faces.get(k + 1)) - high(faces.get(k)) > touch) {
        double from = low(faces.get(first));
        double to = high(faces.get(k));
        boolean ground = from <= touch;
        boolean ceiling = to >= duct.channel().height() - touch;
        openings.add(
            new Opening(
                ground ? 0 : from,
                ceiling ? duct.channel().height() : to,
                ground ? duct.walls().lower() : REST,
                ceiling ? duct.walls().upper() : REST,
                faces.subList(first, k + 1)));
        first = k + 1;
      }
    }
    return openings;
  }

  private double low(int b) {
    return mesh.by[b] - 0.5 * geometry.bArea[b];
  }

  private double high(int b) {
    return mesh.by[b] + 0.5 * geometry.bArea[b];
  }

  /**
   * Mean over a face, η in [a, c] of its opening: a fixed part and a part per unit flow.
   *
   * @param share of the flow that the opening takes
   * @param fixed flow through the opening when the whole flow is zero, m²/s
   */
  private void face(Boundary boundary, int b, Opening opening, double share, double fixed) {
    double h = opening.height();
    double half = 0.5 * geometry.bArea[b] / h;
    double y = (mesh.by[b] - opening.from) / h;
    double a = y - half;
    double c = y + half;
    double m1 = 0.5 * (a + c);
    double m2 = (a * a + a * c + c * c) / 3;
    double ug = opening.below.speed();
    double uc = opening.above.speed();
    boolean slipGround = opening.below.frictionless();
    boolean slipCeiling = opening.above.frictionless();
    boundary.w[b] =
        slipGround
            ? opening.above.spanwiseSpeed()
            : slipCeiling
                ? opening.below.spanwiseSpeed()
                : opening.below.spanwiseSpeed() * (1 - m1) + opening.above.spanwiseSpeed() * m1;
    double shape;
    if (opening.uniform(even)) {
      shape = 1 / h;
    } else if (slipGround) {
      // u = U_c + A (1 - η²), mean U_c + 2 A / 3
      shape = 1.5 / h * (1 - m2);
      boundary.u[b] = uc - 1.5 * uc * (1 - m2);
    } else if (slipCeiling) {
      // u = U_g + A (2 η - η²), mean U_g + 2 A / 3
      shape = 1.5 / h * (2 * m1 - m2);
      boundary.u[b] = ug - 1.5 * ug * (2 * m1 - m2);
    } else {
      // u = U_g (1 - η) + U_c η + 6 (q/h - (U_g + U_c)/2) η (1 - η)
      double parabola = 6 * (m1 - m2);
      shape = parabola / h;
      boundary.u[b] = ug * (1 - m1) + uc * m1 - 0.5 * (ug + uc) * parabola;
    }
    boundary.uPerFlow[b] = share * shape;
    boundary.u[b] += fixed * shape;
  }
}
