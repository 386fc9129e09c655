package hemline.solver.turbulence;

import hemline.solver.field.FlowState;
import hemline.solver.scheme.TimeDifference;
import hemline.solver.scheme.VelocityGradients;
import org.jspecify.annotations.Nullable;

/** A flow model: fills the state's eddy viscosity and the effective viscosity at walls. */
public abstract class EddyViscosity {
  private final double[] wallViscosity;
  private final double[] faceRatio;
  private @Nullable TimeDifference time;

  /**
   * Starts with the molecular viscosity at every boundary face.
   *
   * @param boundaryFaces number of them
   * @param faces number of faces between cells
   * @param viscosity kinematic, m²/s
   */
  protected EddyViscosity(int boundaryFaces, int faces, double viscosity) {
    faceRatio = new double[faces];
    java.util.Arrays.fill(faceRatio, 1);
    wallViscosity = new double[boundaryFaces];
    java.util.Arrays.fill(wallViscosity, viscosity);
  }

  /** Adds a difference in time to the closure's equations from now on. */
  public final void inTime(TimeDifference difference) {
    time = difference;
  }

  /** The difference in time, null when the flow is taken as steady. */
  protected final @Nullable TimeDifference time() {
    return time;
  }

  /**
   * Kinematic viscosity by boundary face that, times velocity difference over distance, gives the
   * wall shear stress over density.
   */
  public final double[] wallViscosity() {
    return wallViscosity;
  }

  /**
   * By face, the viscosity that acts between its two cells over the mean of theirs; 1 where it
   * varies no more than evenly.
   */
  public final double[] faceRatio() {
    return faceRatio;
  }

  /**
   * Sets start values where the state has none.
   *
   * @param state modified: closure arrays and eddy viscosity
   */
  public abstract void initialise(FlowState state);

  /**
   * Advances the closure by one relaxed step.
   *
   * @param state modified: closure arrays and eddy viscosity
   * @param gradients of the state's velocity; not modified
   * @param factor relaxation of the closure's equations, 0 to 1
   */
  public abstract void update(FlowState state, VelocityGradients gradients, double factor);
}
