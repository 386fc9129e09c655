package hemline.solver.turbulence;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import hemline.solver.field.FlowState;
import hemline.solver.grid.Patch;
import hemline.solver.scheme.Boundary;
import hemline.solver.scheme.VelocityGradients;
import java.util.Arrays;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;

/** What every flow model owes, whatever the flow it is given. */
class ClosureContractTest {
  private static final double NU = 1e-5;

  /** Every member passes these, on a channel between a wall and a frictionless side. */
  abstract static class Contract {
    abstract EddyViscosity closure(ClosureMeshes m, double[] wallDistance);

    static ClosureMeshes channel() {
      double[] x = new double[5];
      double[] y = new double[13];
      for (int i = 0; i < x.length; i++) {
        x[i] = 0.01 * i;
      }
      for (int j = 0; j < y.length; j++) {
        y[j] = 0.001 * j;
      }
      ClosureMeshes m = ClosureMeshes.of(x, y, Boundary.SLIP);
      for (int b = 0; b < m.mesh.boundaryFaces; b++) {
        if (m.mesh.bPatch[b] == Patch.BOTTOM) {
          m.boundary.kind[b] = Boundary.WALL;
        } else if (m.mesh.bPatch[b] == Patch.LEFT || m.mesh.bPatch[b] == Patch.RIGHT) {
          m.boundary.kind[b] = Boundary.OPEN;
        }
      }
      return m;
    }

    /** Flow along the wall as u = speed (y / h)^(1/7) through all faces. */
    static void flow(ClosureMeshes m, double speed) {
      for (int c = 0; c < m.mesh.cells; c++) {
        m.state.u[c] = profile(speed, m.mesh.cy[c]);
      }
      for (int f = 0; f < m.mesh.faces; f++) {
        m.state.flux[f] = m.mesh.vertical[f] ? profile(speed, m.mesh.fy[f]) * m.mesh.area[f] : 0;
      }
      for (int b = 0; b < m.mesh.boundaryFaces; b++) {
        m.state.boundaryFlux[b] = profile(speed, m.mesh.by[b]) * m.mesh.bnx[b];
      }
    }

    private static double profile(double speed, double y) {
      return speed * Math.pow(Math.max(0, y) / 0.012, 1.0 / 7);
    }

    static void pass(ClosureMeshes m, EddyViscosity closure, int passes) {
      VelocityGradients g = new VelocityGradients(m.geometry, m.boundary, false);
      for (int k = 0; k < passes; k++) {
        g.update(m.state);
        closure.update(m.state, g, 0.6);
      }
    }

    private EddyViscosity closure(ClosureMeshes m) {
      return closure(m, m.mesh.cy.clone());
    }

    private static double[][] quantities(FlowState s) {
      return new double[][] {s.k, s.omega, s.nuTilde, s.eddyViscosity};
    }

    /** Random states, however wild, never lead to a negative or infinite quantity. */
    @Test
    void staysPositive() {
      SplittableRandom random = new SplittableRandom(71);
      for (int n = 0; n < 20; n++) {
        ClosureMeshes m = channel();
        EddyViscosity closure = closure(m);
        closure.initialise(m.state);
        for (int c = 0; c < m.mesh.cells; c++) {
          m.state.u[c] = 40 * (random.nextDouble() - 0.5);
          m.state.v[c] = 40 * (random.nextDouble() - 0.5);
          double size = Math.pow(10, 6 * random.nextDouble() - 3);
          m.state.k[c] *= size;
          m.state.omega[c] *= Math.pow(10, 4 * random.nextDouble() - 2);
          m.state.nuTilde[c] *= size;
        }
        for (int f = 0; f < m.mesh.faces; f++) {
          m.state.flux[f] = 0.01 * (random.nextDouble() - 0.5);
        }
        pass(m, closure, 5);
        for (double[] quantity : quantities(m.state)) {
          assertThat(Arrays.stream(quantity).allMatch(v -> v >= 0 && v < 1e12))
              .as("case %d", n)
              .isTrue();
        }
        for (double v : closure.wallViscosity()) {
          assertThat(v).as("case %d", n).isPositive().isFinite();
        }
      }
    }

    /** A state that a closure has come to rest at is kept by it, and by a fresh one. */
    @Test
    void keepsASettledState() {
      ClosureMeshes m = channel();
      flow(m, 20);
      EddyViscosity closure = closure(m);
      closure.initialise(m.state);
      pass(m, closure, 600);
      double[] settled = m.state.eddyViscosity.clone();
      pass(m, closure, 1);
      assertClose(m.state.eddyViscosity, settled, 1e-6);
      EddyViscosity fresh = closure(m);
      fresh.initialise(m.state);
      assertClose(m.state.eddyViscosity, settled, 1e-6);
      pass(m, fresh, 3);
      assertClose(m.state.eddyViscosity, settled, 1e-6);
    }

    private static void assertClose(double[] now, double[] before, double share) {
      double most = Arrays.stream(before).max().orElseThrow();
      for (int c = 0; c < now.length; c++) {
        assertThat(now[c]).isCloseTo(before[c], within(share * Math.max(most, NU)));
      }
    }

    /** From another start it comes to rest at the same state. */
    @Test
    void theStartDoesNotMatter() {
      ClosureMeshes cold = channel();
      ClosureMeshes warm = channel();
      flow(cold, 20);
      flow(warm, 20);
      Arrays.fill(warm.state.eddyViscosity, 40 * NU);
      EddyViscosity a = closure(cold);
      EddyViscosity b = closure(warm);
      a.initialise(cold.state);
      b.initialise(warm.state);
      pass(cold, a, 600);
      pass(warm, b, 600);
      assertClose(warm.state.eddyViscosity, cold.state.eddyViscosity, 1e-5);
    }

    /** So slow that the sublayer reaches over the whole channel: molecular friction at the wall. */
    @Test
    void slowFlowIsMolecularAtTheWall() {
      ClosureMeshes m = channel();
      flow(m, 1e-4);
      EddyViscosity closure = closure(m);
      closure.initialise(m.state);
      pass(m, closure, 50);
      for (int b = 0; b < m.mesh.boundaryFaces; b++) {
        if (m.boundary.kind[b] == Boundary.WALL) {
          assertThat(closure.wallViscosity()[b]).isCloseTo(NU, within(1e-9 * NU));
        }
      }
    }

    /** Flow and fluxes belong to others. */
    @Test
    void leavesTheFlowAlone() {
      ClosureMeshes m = channel();
      flow(m, 20);
      EddyViscosity closure = closure(m);
      closure.initialise(m.state);
      FlowState before = new FlowState(m.mesh.cells, m.mesh.faces, m.mesh.boundaryFaces);
      before.set(m.state);
      pass(m, closure, 3);
      assertThat(m.state.u).containsExactly(before.u);
      assertThat(m.state.v).containsExactly(before.v);
      assertThat(m.state.p).containsExactly(before.p);
      assertThat(m.state.flux).containsExactly(before.flux);
      assertThat(m.state.boundaryFlux).containsExactly(before.boundaryFlux);
    }
  }

  @Nested
  class LaminarFlow extends Contract {
    @Override
    EddyViscosity closure(ClosureMeshes m, double[] wallDistance) {
      return new Laminar(m.mesh.boundaryFaces, m.mesh.faces, NU);
    }
  }

  @Nested
  class OneEquation extends Contract {
    @Override
    EddyViscosity closure(ClosureMeshes m, double[] wallDistance) {
      return new SpalartAllmaras(m.geometry, m.boundary, NU, wallDistance, 4 * NU, false);
    }
  }

  @Nested
  class TwoEquations extends Contract {
    @Override
    EddyViscosity closure(ClosureMeshes m, double[] wallDistance) {
      return new KOmegaSst(m.geometry, m.boundary, NU, wallDistance, 0.4, 10 * NU, 10, false);
    }
  }
}
