package hemline.solver.turbulence;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import hemline.shared.geometry.Ring;
import hemline.solver.grid.Mesh;
import hemline.solver.grid.WallDistance;
import hemline.solver.scheme.Boundary;
import hemline.solver.scheme.VelocityGradients;
import java.util.Arrays;
import java.util.HashSet;
import java.util.Set;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Where the wall law is read beside a wall at a slant: a ramp y = (x - 1) · 3/4 that cuts
 * rectangles of 1 × 0.8, so that its normal is (3, -4) / 5 into the solid and the law is read at
 * 0.95 √((0.6 · 1)² + (0.8 · 0.8)²) = 0.8334 from the wall.
 */
class SlantedWallsTest {
  private static final double READ = 0.95 * 0.8772684879784524;
  private static final double NX = 0.6;
  private static final double NY = -0.8;
  private static final double NU = 1e-4;
  private ClosureMeshes m;

  @BeforeEach
  void mesh() {
    double[] x = new double[9];
    double[] y = new double[11];
    for (int i = 0; i < x.length; i++) {
      x[i] = i;
    }
    for (int j = 0; j < y.length; j++) {
      y[j] = 0.8 * j;
    }
    Ring ramp = new Ring(new double[] {1, 9, 9}, new double[] {0, -1, 6});
    m = ClosureMeshes.of(x, y, Boundary.SLIP, ramp);
    for (int b = 0; b < m.mesh.boundaryFaces; b++) {
      if (onRamp(b)) {
        m.boundary.kind[b] = Boundary.WALL;
      }
    }
  }

  private boolean onRamp(int b) {
    return Math.abs(m.geometry.bux[b] - NX) < 1e-9 && Math.abs(m.geometry.buy[b] - NY) < 1e-9;
  }

  private int faces() {
    int count = 0;
    for (int b = 0; b < m.mesh.boundaryFaces; b++) {
      count += onRamp(b) ? 1 : 0;
    }
    return count;
  }

  /** Cell whose rectangle holds a place, found by looking at all of them. */
  private int cellAt(double x, double y) {
    return m.mesh.cellAt[(int) Math.floor(y / 0.8) * 8 + (int) Math.floor(x)];
  }

  @Test
  void readsAtAShareOfTheRectanglesExtent() {
    SlantedWalls walls = new SlantedWalls(m.geometry, m.boundary);
    assertThat(faces()).isGreaterThan(7);
    int moved = 0;
    for (int b = 0; b < m.mesh.boundaryFaces; b++) {
      assertThat(walls.isSlanted(b)).isEqualTo(onRamp(b));
      double x = m.mesh.bx[b] - READ * NX;
      double y = m.mesh.by[b] - READ * NY;
      if (onRamp(b) && y < 8) {
        assertThat(walls.distance[b]).isCloseTo(READ, within(1e-12));
        assertThat(walls.cell[b]).isEqualTo(cellAt(x, y));
        assertThat(walls.isMoved(b)).isTrue();
        moved++;
      } else {
        assertThat(walls.distance[b]).isEqualTo(m.geometry.bDistance[b]);
        assertThat(walls.cell[b]).isEqualTo(m.mesh.bCell[b]);
        assertThat(walls.isMoved(b)).isFalse();
      }
    }
    assertThat(moved).isGreaterThan(6);
  }

  /** A square has the same extent whatever the slant; a rectangle less across than along. */
  @Test
  void extentOfRectangles() {
    ClosureMeshes squares =
        ClosureMeshes.of(
            new double[] {0, 1, 2, 3},
            new double[] {0, 1, 2, 3},
            Boundary.WALL,
            new Ring(new double[] {-1, 4, 4}, new double[] {-0.8, -2, 2.2}));
    SlantedWalls walls = new SlantedWalls(squares.geometry, squares.boundary);
    for (int b = 0; b < squares.mesh.boundaryFaces; b++) {
      assertThat(walls.extent(b, squares.mesh.bCell[b])).isCloseTo(1, within(1e-12));
    }
    SlantedWalls ramp = new SlantedWalls(m.geometry, m.boundary);
    for (int b = 0; b < m.mesh.boundaryFaces; b++) {
      double expected = onRamp(b) ? READ / 0.95 : Math.abs(m.geometry.bux[b]) > 0.5 ? 1 : 0.8;
      assertThat(ramp.extent(b, m.mesh.bCell[b])).isCloseTo(expected, within(1e-12));
    }
  }

  /** A frictionless ramp is no wall; one along grid lines is read at its cells' centroids. */
  @Test
  void onlySlantedWallsCount() {
    Arrays.fill(m.boundary.kind, Boundary.SLIP);
    SlantedWalls none = new SlantedWalls(m.geometry, m.boundary);
    assertThat(none.distance).containsExactly(m.geometry.bDistance);
    assertThat(none.facesNear(m.everywhere(1))).isEmpty();
    ClosureMeshes box = ClosureMeshes.unit(3, 3, Boundary.WALL);
    SlantedWalls upright = new SlantedWalls(box.geometry, box.boundary);
    assertThat(upright.distance).containsOnly(0.5);
    assertThat(upright.cell).containsExactly(box.mesh.bCell);
  }

  /** A place outside of the grid, or in a solid, is not read. */
  @Test
  void readsNothingWhereThereIsNoFluid() {
    ClosureMeshes corner =
        ClosureMeshes.of(
            new double[] {0, 1},
            new double[] {0, 1},
            Boundary.WALL,
            new Ring(new double[] {0, 2, 2}, new double[] {-0.2, -0.2, 1.8}));
    SlantedWalls walls = new SlantedWalls(corner.geometry, corner.boundary);
    boolean seen = false;
    for (int b = 0; b < corner.mesh.boundaryFaces; b++) {
      if (walls.isSlanted(b)) {
        // 0.95 from the middle of the hypotenuse: beyond the left side
        seen = true;
        assertThat(walls.isMoved(b)).isFalse();
        assertThat(walls.cell[b]).isEqualTo(corner.mesh.bCell[b]);
      }
    }
    assertThat(seen).isTrue();
  }

  @Test
  void cellsAreAtLeastAsFarAsTheLawIsRead() {
    SlantedWalls walls = new SlantedWalls(m.geometry, m.boundary);
    double[] near = walls.readDistances(m.everywhere(0.1));
    double[] far = walls.readDistances(m.everywhere(5));
    assertThat(far).containsOnly(5);
    Set<Integer> cut = new HashSet<>();
    for (int b = 0; b < m.mesh.boundaryFaces; b++) {
      if (walls.isMoved(b)) {
        cut.add(m.mesh.bCell[b]);
      }
    }
    for (int c = 0; c < m.mesh.cells; c++) {
      assertThat(near[c]).isCloseTo(cut.contains(c) ? READ : 0.1, within(1e-12));
    }
  }

  /**
   * Second order beside cells that have the ramp nearer than the floor before it and the wall on
   * the left.
   */
  @Test
  void facesWhoseNearestWallIsTheRamp() {
    Mesh mesh = m.mesh;
    for (int b = 0; b < mesh.boundaryFaces; b++) {
      if (mesh.bx[b] == 0 || mesh.by[b] == 0 && mesh.bx[b] < 1) {
        m.boundary.kind[b] = Boundary.WALL;
      }
    }
    double[] distance = WallDistance.of(mesh, m.boundary.walls());
    SlantedWalls walls = new SlantedWalls(m.geometry, m.boundary);
    Set<Integer> expected = new HashSet<>();
    for (int f = 0; f < mesh.faces; f++) {
      if (nearRamp(mesh.owner[f]) || nearRamp(mesh.neighbour[f])) {
        expected.add(f);
      }
    }
    assertThat(walls.facesNear(distance))
        .containsExactlyInAnyOrder(expected.toArray(Integer[]::new));
    assertThat(expected.size()).isBetween(20, mesh.faces - 20);
  }

  /**
   * The foot of the ramp, at (1, 0), ends the floor: beyond its normal there the ramp is nearer.
   */
  private boolean nearRamp(int c) {
    double x = m.mesh.cx[c];
    double y = m.mesh.cy[c];
    double toFloor = Math.min(x, x <= 1 ? y : Math.hypot(x - 1, y));
    double along = 0.8 * (x - 1) + 0.6 * y;
    double toRamp = along <= 0 ? Math.hypot(x - 1, y) : -NX * (x - 1) - NY * y;
    return toRamp <= toFloor * (1 + 1e-9);
  }

  private double speedThere;
  private WallStress stress;
  private VelocityGradients gradients;
  private double[] viscosity;

  /** A field that is linear in x and y, so that the velocity at the place read is known. */
  private void flow(double u0, double scale, boolean spanwise) {
    gradients = new VelocityGradients(m.geometry, m.boundary, spanwise);
    Arrays.fill(gradients.ux, scale * 0.03);
    Arrays.fill(gradients.uy, scale * -0.05);
    Arrays.fill(gradients.vx, scale * 0.02);
    Arrays.fill(gradients.vy, scale * 0.07);
    Arrays.fill(gradients.wx, scale * 0.04);
    Arrays.fill(gradients.wy, scale * 0.06);
    for (int c = 0; c < m.mesh.cells; c++) {
      double x = m.mesh.cx[c];
      double y = m.mesh.cy[c];
      m.state.u[c] = u0 + scale * (0.03 * x - 0.05 * y);
      m.state.v[c] = 0.4 * u0 + scale * (0.02 * x + 0.07 * y);
      m.state.w[c] = 0.3 * u0 + scale * (0.04 * x + 0.06 * y);
    }
    stress = new WallStress(m.geometry, m.boundary, NU, spanwise, WallLaw.VELOCITY);
    viscosity = new double[m.mesh.boundaryFaces];
  }

  private void speedAtPlace(int b, double u0, double scale, boolean spanwise) {
    double x = m.mesh.bx[b] - READ * NX;
    double y = m.mesh.by[b] - READ * NY;
    double u = u0 + scale * (0.03 * x - 0.05 * y) - gradients.bu[b];
    double v = 0.4 * u0 + scale * (0.02 * x + 0.07 * y) - gradients.bv[b];
    double w = spanwise ? 0.3 * u0 + scale * (0.04 * x + 0.06 * y) - gradients.bw[b] : 0;
    // along the ramp, (0.8, 0.6)
    speedThere = Math.hypot(0.8 * u + 0.6 * v, w);
  }

  /**
   * The friction is that of the speed at the place read; the cell feels u_τ² over its own speed.
   */
  @ParameterizedTest
  @ValueSource(booleans = {false, true})
  void frictionComesFromThePlaceRead(boolean spanwise) {
    flow(2, 1, spanwise);
    Arrays.fill(gradients.bu, 0.5);
    Arrays.fill(gradients.bv, -0.2);
    Arrays.fill(gradients.bw, 0.1);
    stress.update(m.state, gradients, viscosity);
    int looked = 0;
    for (int b = 0; b < m.mesh.boundaryFaces; b++) {
      if (stress.slanted.isMoved(b)) {
        speedAtPlace(b, 2, 1, spanwise);
        double yPlus = WallLaw.VELOCITY.distance(speedThere * READ / NU, 100);
        double friction = yPlus * NU / READ;
        assertThat(stress.yPlus[b]).isCloseTo(yPlus, within(1e-5 * yPlus));
        int c = m.mesh.bCell[b];
        double along = 0.8 * (m.state.u[c] - 0.5) + 0.6 * (m.state.v[c] + 0.2);
        double here = Math.hypot(along, spanwise ? m.state.w[c] - 0.1 : 0);
        double expected = friction * friction * m.geometry.bDistance[b] / here;
        assertThat(viscosity[b]).isCloseTo(expected, within(1e-4 * expected));
        looked++;
      }
    }
    assertThat(looked).isGreaterThan(6);
  }

  /**
   * Gradients see so much of the step to the wall as leaves the law's slope at the centroid; the
   * whole of it where the cell is at rest or the sublayer reaches so far.
   */
  @Test
  void gradientsSeeTheLawsSlope() {
    flow(2, 1, false);
    stress.update(m.state, gradients, viscosity);
    double[] u = m.state.u;
    double[] v = m.state.v;
    gradients.update(m.state);
    double[] shear = new double[m.mesh.boundaryFaces];
    VelocityGradients blind = new VelocityGradients(m.geometry, m.boundary, false);
    for (int b = 0; b < m.mesh.boundaryFaces; b++) {
      if (onRamp(b)) {
        int c = m.mesh.bCell[b];
        double here = Math.abs(0.8 * u[c] + 0.6 * v[c]);
        double friction = stress.frictionVelocity(b);
        double slope = friction * friction / NU * WallLaw.VELOCITY.slope(stress.yPlus[b]);
        shear[b] = Math.min(1, slope * m.geometry.bDistance[b] / here);
        assertThat(shear[b]).isBetween(1e-3, 0.9);
        blind.seeWall(b, shear[b]);
      }
    }
    blind.update(m.state);
    for (int c : m.mesh.bCell) {
      assertThat(gradients.uy[c]).isCloseTo(blind.uy[c], within(1e-4));
      assertThat(gradients.vx[c]).isCloseTo(blind.vx[c], within(1e-4));
    }
    // at rest the whole step counts again
    flow(0, 0, false);
    VelocityGradients whole = new VelocityGradients(m.geometry, m.boundary, false);
    for (int b = 0; b < m.mesh.boundaryFaces; b++) {
      if (onRamp(b)) {
        gradients.seeWall(b, 0);
      }
    }
    stress.update(m.state, gradients, viscosity);
    Arrays.fill(m.state.u, 3);
    gradients.update(m.state);
    whole.update(m.state);
    assertThat(gradients.uy).containsExactly(whole.uy);
    for (int b = 0; b < m.mesh.boundaryFaces; b++) {
      if (onRamp(b)) {
        assertThat(viscosity[b]).isEqualTo(NU);
      }
    }
  }

  /**
   * A cell much slower than the profile further out allows is a passing state: half of it counts.
   */
  @Test
  void slowCellsDoNotRaiseTheFriction() {
    flow(2, 1, false);
    for (int b = 0; b < m.mesh.boundaryFaces; b++) {
      if (onRamp(b)) {
        m.state.u[m.mesh.bCell[b]] = 0;
        m.state.v[m.mesh.bCell[b]] = 0;
      }
    }
    stress.update(m.state, gradients, viscosity);
    int looked = 0;
    for (int b = 0; b < m.mesh.boundaryFaces; b++) {
      boolean fast = m.state.u[stress.slanted.cell[b]] != 0;
      if (stress.slanted.isMoved(b) && fast) {
        speedAtPlace(b, 2, 1, false);
        double friction = stress.frictionVelocity(b);
        double expected = friction * friction * READ / (0.5 * speedThere);
        assertThat(viscosity[b]).isCloseTo(expected, within(1e-4 * expected));
        looked++;
      }
    }
    assertThat(looked).isPositive();
  }

  /** Mean of the law's speed between 0.9 and 1.1 y⁺, over that distance. */
  @Test
  void slopeOfTheLaw() {
    assertThat(WallLaw.VELOCITY.slope(0.3)).isEqualTo(1);
    assertThat(WallLaw.VELOCITY.slope(100))
        .isCloseTo(
            (WallLaw.VELOCITY.velocity(110) - WallLaw.VELOCITY.velocity(90)) / 20, within(1e-12));
    // u⁺ = ln(y⁺) / 0.41 + C
    assertThat(WallLaw.VELOCITY.slope(5000))
        .isCloseTo(Math.log(1.1 / 0.9) / 0.41 / 1000, within(1e-12));
  }

  /** Fluid that leaves across the ramp carries the value at the face, not that of its cell. */
  @ParameterizedTest
  @ValueSource(booleans = {false, true})
  void closuresCarryAtSecondOrderThere(boolean oneEquation) {
    SlantedWalls walls = new SlantedWalls(m.geometry, m.boundary);
    double[] distance = WallDistance.of(m.mesh, m.boundary.walls());
    int face = faceAwayFromWalls(walls.facesNear(distance));
    for (int c = 0; c < m.mesh.cells; c++) {
      double linear = 1 + 0.05 * m.mesh.cx[c] + 0.03 * m.mesh.cy[c];
      m.state.nuTilde[c] = 1e-9 * linear;
      m.state.k[c] = 1e-6 * linear;
      m.state.omega[c] = 1e-3 * linear;
    }
    double step = 1e-6;
    double[][] with = advanced(oneEquation, distance, face, 5, step);
    double[][] without = advanced(oneEquation, distance, face, 0, step);
    int o = m.mesh.owner[face];
    int n = m.mesh.neighbour[face];
    double ahead = 0.05 * (m.mesh.cx[n] - m.mesh.cx[o]) + 0.03 * (m.mesh.cy[n] - m.mesh.cy[o]);
    double carried = 5 * (1 - m.geometry.ownerWeight[face]) * ahead;
    double[] size = oneEquation ? new double[] {1e-9} : new double[] {1e-6, 1e-3};
    for (int i = 0; i < size.length; i++) {
      double change = (with[i][o] - without[i][o]) / step / size[i];
      assertThat(change)
          .isCloseTo(-carried / m.mesh.volume[o], within(1e-3 * carried / m.mesh.volume[o]));
    }
  }

  private double[][] advanced(
      boolean oneEquation, double[] distance, int face, double flux, double step) {
    double[] nuTilde = m.state.nuTilde.clone();
    double[] k = m.state.k.clone();
    double[] omega = m.state.omega.clone();
    m.state.flux[face] = flux;
    EddyViscosity closure =
        oneEquation
            ? new SpalartAllmaras(m.geometry, m.boundary, 1e-9, distance, 4 * NU, false)
            : new KOmegaSst(m.geometry, m.boundary, 1e-9, distance, 1e-6, 1e-3, 1e-9, false);
    closure.inTime(m.step(step));
    closure.update(m.state, new VelocityGradients(m.geometry, m.boundary, false), 1);
    double[][] after =
        oneEquation
            ? new double[][] {m.state.nuTilde.clone()}
            : new double[][] {m.state.k.clone(), m.state.omega.clone()};
    System.arraycopy(nuTilde, 0, m.state.nuTilde, 0, nuTilde.length);
    System.arraycopy(k, 0, m.state.k, 0, k.length);
    System.arraycopy(omega, 0, m.state.omega, 0, omega.length);
    return after;
  }

  /**
   * An upright face between two whole cells all of whose neighbours are inside and no wall cells.
   */
  private int faceAwayFromWalls(int[] candidates) {
    for (int f : candidates) {
      if (m.mesh.vertical[f] && inside(m.mesh.owner[f]) && inside(m.mesh.neighbour[f])) {
        return f;
      }
    }
    throw new IllegalStateException("no such face");
  }

  private boolean inside(int c) {
    for (int b = 0; b < m.mesh.boundaryFaces; b++) {
      if (m.mesh.bCell[b] == c) {
        return false;
      }
    }
    return true;
  }
}
