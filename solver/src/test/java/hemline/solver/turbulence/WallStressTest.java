package hemline.solver.turbulence;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import hemline.solver.grid.Patch;
import hemline.solver.scheme.Boundary;
import hemline.solver.scheme.VelocityGradients;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Friction over level ground: the law of the wall turned round. */
class WallStressTest {
  private static final double NU = 1.5e-5;
  private static final double D = 5e-4;

  private final ClosureMeshes m =
      ClosureMeshes.of(new double[] {0, 1e-3}, new double[] {0, 2 * D, 4 * D}, Boundary.SLIP);
  private final int ground = m.face(0, Patch.BOTTOM);

  private double[] viscosity(WallStress stress, VelocityGradients g) {
    double[] answer = new double[m.mesh.boundaryFaces];
    g.update(m.state);
    stress.update(m.state, g, answer);
    return answer;
  }

  /** u_τ² = ν_w u / d and u / u_τ = u⁺(u_τ d / ν), over still and moving ground, both ways. */
  @ParameterizedTest
  @CsvSource({
    "0.004, 0, 0, 0",
    "3, 0, 0, 0",
    "-3, 0, 0, 0",
    "30, 0, 0, 0",
    "30, 5, 0, 0",
    "1, 0, 40, 10"
  })
  void followsTheLaw(double u, double ground0, double w, double span) {
    m.boundary.kind[ground] = Boundary.WALL;
    m.boundary.u[ground] = ground0;
    m.boundary.w[ground] = span;
    m.state.u[0] = u;
    m.state.w[0] = w;
    // what goes towards the wall does not rub
    m.state.v[0] = 7;
    boolean spanwise = w != 0;
    WallStress stress = new WallStress(m.geometry, m.boundary, NU, spanwise, WallLaw.VELOCITY);
    double[] answer = viscosity(stress, new VelocityGradients(m.geometry, m.boundary, spanwise));
    double speed = Math.hypot(u - ground0, w - span);
    double friction = stress.frictionVelocity(ground);
    assertThat(stress.yPlus[ground]).isCloseTo(friction * D / NU, within(1e-12));
    assertThat(speed / friction)
        .isCloseTo(WallLaw.VELOCITY.velocity(friction * D / NU), within(2e-5 * speed / friction));
    assertThat(answer[ground] * speed / D)
        .isCloseTo(friction * friction, within(2e-5 * friction * friction));
    if (u == 0.004) {
      assertThat(answer[ground]).isCloseTo(NU, within(1e-12 * NU));
    }
  }

  @Test
  void onlyWallsRubAndRestIsViscous() {
    m.state.u[0] = 3;
    WallStress stress = new WallStress(m.geometry, m.boundary, NU, false, WallLaw.VELOCITY);
    VelocityGradients g = new VelocityGradients(m.geometry, m.boundary, false);
    assertThat(viscosity(stress, g)[ground]).isZero();
    assertThat(stress.isWall(ground)).isFalse();
    m.boundary.kind[ground] = Boundary.WALL;
    m.state.u[0] = 0;
    // without spanwise flow w does not count
    m.state.w[0] = 9;
    assertThat(viscosity(stress, g)[ground]).isEqualTo(NU);
    assertThat(stress.isWall(ground)).isTrue();
    assertThat(stress.yPlus[ground]).isZero();
  }

  @Test
  void laminarFlowHasTheMolecularViscosity() {
    Laminar laminar = new Laminar(4, 0, NU);
    laminar.initialise(m.state);
    laminar.update(m.state, new VelocityGradients(m.geometry, m.boundary, false), 1);
    assertThat(laminar.wallViscosity()).containsExactly(NU, NU, NU, NU);
    assertThat(m.state.eddyViscosity).containsOnly(0);
  }
}
