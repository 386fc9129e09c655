package hemline.solver.scheme;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import hemline.solver.field.FlowState;
import hemline.solver.grid.Mesh;
import hemline.solver.grid.Patch;
import org.junit.jupiter.api.Test;

class VelocityGradientsTest {
  private final Mesh mesh = SchemeMeshes.plain();
  private final FaceGeometry geometry = new FaceGeometry(mesh);
  private final Boundary boundary = new Boundary(mesh);
  private final FlowState s = new FlowState(mesh.cells, mesh.faces, mesh.boundaryFaces);

  private void kind(int patch, byte kind) {
    for (int b = 0; b < mesh.boundaryFaces; b++) {
      if (mesh.bPatch[b] == patch) {
        boundary.kind[b] = kind;
      }
    }
  }

  /** A velocity that is linear in place, with walls that follow it: gradients are exact. */
  @Test
  void linearVelocitiesAreExact() {
    for (int c = 0; c < mesh.cells; c++) {
      s.u[c] = 1 + 2 * mesh.cx[c] + 3 * mesh.cy[c];
      s.v[c] = -1 + 5 * mesh.cx[c] - 2 * mesh.cy[c];
      s.w[c] = 4 * mesh.cx[c] + 7 * mesh.cy[c];
    }
    for (int b = 0; b < mesh.boundaryFaces; b++) {
      boundary.u[b] = 1 + 2 * mesh.bx[b] + 3 * mesh.by[b];
      boundary.v[b] = -1 + 5 * mesh.bx[b] - 2 * mesh.by[b];
      boundary.w[b] = 4 * mesh.bx[b] + 7 * mesh.by[b];
    }
    VelocityGradients g = new VelocityGradients(geometry, boundary, true);
    g.update(s);
    double[][] all = {g.ux, g.uy, g.vx, g.vy, g.wx, g.wy};
    double[] exact = {2, 3, 5, -2, 4, 7};
    for (int k = 0; k < 6; k++) {
      for (double value : all[k]) {
        assertThat(value).isCloseTo(exact[k], within(1e-7));
      }
    }
    VelocityGradients plane = new VelocityGradients(geometry, boundary, false);
    plane.update(s);
    assertThat(plane.wx).containsOnly(0);
    assertThat(plane.uy[5]).isEqualTo(g.uy[5]);
  }

  /** Each kind of boundary has its own velocity there. */
  @Test
  void velocityAtEachKindOfBoundary() {
    kind(Patch.LEFT, Boundary.VELOCITY);
    kind(Patch.RIGHT, Boundary.OUTLET);
    kind(Patch.BOTTOM, Boundary.SLIP);
    kind(Patch.TOP, Boundary.OPEN);
    s.inletFlow = 2;
    java.util.Arrays.fill(s.u, 3);
    java.util.Arrays.fill(s.v, 0.5);
    java.util.Arrays.fill(s.w, -1);
    for (int b = 0; b < mesh.boundaryFaces; b++) {
      boundary.u[b] = 0.25;
      boundary.uPerFlow[b] = 10;
      boundary.v[b] = 0.125;
      boundary.w[b] = 0.75;
      // air leaves through the left half of the top and enters through the right
      s.boundaryFlux[b] = mesh.bx[b] < 0.5 ? 0.02 : -0.03;
    }
    VelocityGradients g = new VelocityGradients(geometry, boundary, true);
    g.update(s);
    for (int b = 0; b < mesh.boundaryFaces; b++) {
      double[] expected =
          switch (mesh.bPatch[b]) {
            case Patch.LEFT -> new double[] {0.25 + 20, 0.125, 0.75};
            case Patch.RIGHT -> new double[] {3, 0.5, -1};
            case Patch.BOTTOM -> new double[] {3, 0, -1};
            default ->
                mesh.bx[b] < 0.5
                    ? new double[] {3, 0.5, -1}
                    : new double[] {0, -0.03 / geometry.bArea[b], 0.75};
          };
      assertThat(new double[] {g.bu[b], g.bv[b], g.bw[b]})
          .as("patch %d", mesh.bPatch[b])
          .containsExactly(expected, within(1e-14));
    }
  }

  /** Only openings have a pressure given from outside. */
  @Test
  void openings() {
    byte[] kinds = {
      Boundary.WALL, Boundary.SLIP, Boundary.VELOCITY, Boundary.OPEN, Boundary.OUTLET, Boundary.NONE
    };
    for (int k = 0; k < kinds.length; k++) {
      boundary.kind[0] = kinds[k];
      assertThat(boundary.isOpen(0)).isEqualTo(k == 3 || k == 4);
    }
  }
}
