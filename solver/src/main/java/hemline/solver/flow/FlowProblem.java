package hemline.solver.flow;

import hemline.solver.field.FlowState;
import hemline.solver.scheme.Boundary;
import hemline.solver.scheme.FaceGeometry;

/**
 * A flow to be solved on one mesh: geometry, boundaries, fluid, closure, drive and scales.
 *
 * @param geometry of the mesh
 * @param boundary conditions by boundary face
 * @param viscosity kinematic, m²/s
 * @param closure never AUTO
 * @param wallDistance of cells, m; not used when laminar
 * @param bodyForceX driving force per mass along x, m/s²
 * @param spanwise true when the third velocity component is solved
 * @param secondOrderShare share of the second-order correction in the convection of each interior
 *     face, 0 to 1
 * @param judged cells whose momentum residual counts
 * @param inflowTurbulence what enters with the fluid
 * @param drive adjusts outlet pressure or inlet flow while iterating
 * @param scales for residuals and limits
 */
public record FlowProblem(
    FaceGeometry geometry,
    Boundary boundary,
    double viscosity,
    Closure closure,
    double[] wallDistance,
    double bodyForceX,
    boolean spanwise,
    double[] secondOrderShare,
    boolean[] judged,
    InflowTurbulence inflowTurbulence,
    Drive drive,
    Scales scales) {

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
    return with(other, secondOrderShare);
  }

  /** The same flow with another viscosity and upwind convection. */
  FlowProblem upwind(double otherViscosity) {
    return with(otherViscosity, new double[secondOrderShare.length]);
  }

  private FlowProblem with(double otherViscosity, double[] otherShare) {
    return new FlowProblem(
        geometry,
        boundary,
        otherViscosity,
        closure,
        wallDistance,
        bodyForceX,
        spanwise,
        otherShare,
        judged,
        inflowTurbulence,
        drive,
        scales);
  }
}
