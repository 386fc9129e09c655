package hemline.solver.flow;

import hemline.solver.field.FlowState;
import hemline.solver.scheme.Boundary;
import hemline.solver.scheme.FaceGeometry;

/**
 * A flow to be solved on one mesh: geometry, boundaries, fluid, closure, drive and scales.
 *
 * @param geometry of the mesh
 * @param boundary conditions by boundary face
 * @param closure never AUTO
 * @param momentum terms of its equations
 * @param turbulence what a closure needs to know
 * @param drive adjusts outlet pressure or inlet flow while iterating
 * @param scales for residuals and limits
 */
public record FlowProblem(
    FaceGeometry geometry,
    Boundary boundary,
    Closure closure,
    Momentum momentum,
    Turbulence turbulence,
    Drive drive,
    Scales scales) {

  /**
   * Terms of the momentum equations.
   *
   * @param viscosity kinematic, m²/s
   * @param bodyForceX driving force per mass along x, m/s²
   * @param spanwise true when the third velocity component is solved
   * @param secondOrderShare share of the second-order correction in the convection of each interior
   *     face, 0 to 1
   * @param judged cells whose momentum residual counts
   */
  public record Momentum(
      double viscosity,
      double bodyForceX,
      boolean spanwise,
      double[] secondOrderShare,
      boolean[] judged) {}

  /**
   * What a closure needs to know.
   *
   * @param wallDistance of cells, m; not used when laminar
   * @param inflow what enters with the fluid
   */
  public record Turbulence(double[] wallDistance, InflowTurbulence inflow) {}

  /**
   * Turbulence of entering fluid.
   *
   * @param k kinetic energy, m²/s²
   * @param eddyViscosity m²/s, positive
   * @param nuTilde working variable of the one-equation closure, m²/s
   */
  public record InflowTurbulence(double k, double eddyViscosity, double nuTilde) {}

  /**
   * Typical size of the flow.
   *
   * @param length gap, m
   * @param velocity through the gap or of a wall, m/s
   * @param pressure over density, m²/s²
   */
  public record Scales(double length, double velocity, double pressure) {}

  /** Adjusts the state's outlet pressure or inlet flow between iterations. */
  public interface Drive {
    /**
     * Takes one step towards the asked operating point.
     *
     * @param state after an iteration; outletPressure and inletFlow may be changed
     * @param gain share of the miss to make good, 0 to 1
     */
    void adjust(FlowState state, double gain);

    /**
     * Figure that must settle: leak flow or pressure drop, in units of its reference value.
     *
     * @param state after an iteration
     */
    double monitor(FlowState state);

    /**
     * How far the asked operating point is missed, relative; 0 when nothing is controlled.
     *
     * @param state after an iteration
     */
    double miss(FlowState state);

    /** Size of the figure, in its unit, below which its changes are judged against this size. */
    default double least() {
      return 0;
    }
  }

  public FlowProblem {
    if (closure == Closure.AUTO) {
      throw new IllegalArgumentException("the closure of a flow problem must be decided");
    }
  }

  /** The same flow with another viscosity. */
  FlowProblem withViscosity(double other) {
    return with(other, momentum.secondOrderShare);
  }

  /** The same flow with another viscosity and upwind convection. */
  FlowProblem upwind(double otherViscosity) {
    return with(otherViscosity, new double[momentum.secondOrderShare.length]);
  }

  private FlowProblem with(double otherViscosity, double[] otherShare) {
    return new FlowProblem(
        geometry,
        boundary,
        closure,
        new Momentum(
            otherViscosity, momentum.bodyForceX, momentum.spanwise, otherShare, momentum.judged),
        turbulence,
        drive,
        scales);
  }
}
