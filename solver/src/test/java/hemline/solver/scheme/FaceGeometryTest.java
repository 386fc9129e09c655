package hemline.solver.scheme;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import hemline.solver.grid.Mesh;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class FaceGeometryTest {
  private static double field(double x, double y) {
    return 2 - 3 * x + 4 * y;
  }

  /** Uneven rectangles need no corrections: interpolation and flux of a linear field are exact. */
  @Test
  void rectanglesAreRegular() {
    Mesh mesh = SchemeMeshes.plain();
    FaceGeometry g = new FaceGeometry(mesh);
    assertThat(g.irregular).isEmpty();
    for (int f = 0; f < mesh.faces; f++) {
      double o = field(mesh.cx[mesh.owner[f]], mesh.cy[mesh.owner[f]]);
      double n = field(mesh.cx[mesh.neighbour[f]], mesh.cy[mesh.neighbour[f]]);
      assertThat(g.ownerWeight[f] * o + (1 - g.ownerWeight[f]) * n)
          .isCloseTo(field(mesh.fx[f], mesh.fy[f]), within(1e-12));
      assertThat(g.conductance[f] * (n - o))
          .isCloseTo(mesh.area[f] * (mesh.vertical[f] ? -3 : 4), within(1e-12));
    }
  }

  /** Beside a slanted solid the corrections make both exact, but where distances are bounded. */
  @Test
  void correctionsBesideASlantedSolid() {
    Mesh mesh = SchemeMeshes.cut();
    FaceGeometry g = new FaceGeometry(mesh);
    assertThat(g.irregular).hasSizeGreaterThan(10);
    int exact = 0;
    for (int i = 0; i < g.irregular.length; i++) {
      int f = g.irregular[i];
      int o = mesh.owner[f];
      int n = mesh.neighbour[f];
      assertThat(g.dx[f]).isEqualTo(mesh.cx[n] - mesh.cx[o]);
      assertThat(g.dy[f]).isEqualTo(mesh.cy[n] - mesh.cy[o]);
      double normal = mesh.vertical[f] ? g.dx[f] : g.dy[f];
      double along = mesh.vertical[f] ? 4 : -3;
      double across = mesh.vertical[f] ? -3 : 4;
      double a = field(mesh.cx[o], mesh.cy[o]);
      double b = field(mesh.cx[n], mesh.cy[n]);
      double weight = g.ownerWeight[f];
      assertThat(weight).isBetween(0.05 - 1e-15, 0.95 + 1e-15);
      if (normal < 0.3 * Math.hypot(g.dx[f], g.dy[f]) || weight > 0.949 || weight < 0.051) {
        continue;
      }
      exact++;
      assertThat(weight * a + (1 - weight) * b + g.skew[i] * along)
          .isCloseTo(field(mesh.fx[f], mesh.fy[f]), within(1e-12));
      assertThat(g.conductance[f] * (b - a) + g.crossLength[i] * along)
          .isCloseTo(mesh.area[f] * across, within(1e-12));
    }
    assertThat(exact).isGreaterThan(10);
  }

  /** Boundary faces: length, unit normal out of the fluid, distance of the centroid along it. */
  @ParameterizedTest
  @ValueSource(booleans = {false, true})
  void boundaryFaces(boolean slanted) {
    Mesh mesh = slanted ? SchemeMeshes.cut() : SchemeMeshes.plain();
    FaceGeometry g = new FaceGeometry(mesh);
    int exact = 0;
    for (int b = 0; b < mesh.boundaryFaces; b++) {
      int c = mesh.bCell[b];
      assertThat(Math.hypot(g.bux[b], g.buy[b])).isCloseTo(1, within(1e-14));
      assertThat(g.bux[b] * g.bArea[b]).isCloseTo(mesh.bnx[b], within(1e-14));
      assertThat(g.buy[b] * g.bArea[b]).isCloseTo(mesh.bny[b], within(1e-14));
      double distance = (mesh.bx[b] - mesh.cx[c]) * g.bux[b] + (mesh.by[b] - mesh.cy[c]) * g.buy[b];
      double least = Math.min(0.05 * Math.sqrt(mesh.volume[c]), 0.5 * mesh.volume[c] / g.bArea[b]);
      assertThat(g.bDistance[b]).isCloseTo(Math.max(distance, least), within(1e-15));
      assertThat(g.bConductance[b]).isCloseTo(g.bArea[b] / g.bDistance[b], within(1e-12));
      exact += distance > least ? 1 : 0;
    }
    assertThat(exact).isGreaterThan(20);
    if (!slanted) {
      // lower left cell, 0.1 by 0.15: its two sides
      double[] at = {0.05, 0.075};
      int found = 0;
      for (int b = 0; b < mesh.boundaryFaces; b++) {
        if (mesh.bCell[b] == mesh.cellAt[0]) {
          assertThat(g.bDistance[b]).isCloseTo(g.bux[b] != 0 ? at[0] : at[1], within(1e-15));
          assertThat(g.bArea[b]).isCloseTo(g.bux[b] != 0 ? 0.15 : 0.1, within(1e-15));
          found++;
        }
      }
      assertThat(found).isEqualTo(2);
    }
  }
}
