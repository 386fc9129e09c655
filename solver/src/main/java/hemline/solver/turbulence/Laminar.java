package hemline.solver.turbulence;

import hemline.solver.field.FlowState;
import hemline.solver.scheme.VelocityGradients;

/** No eddies. */
public final class Laminar extends EddyViscosity {
  public Laminar(int boundaryFaces, int faces, double viscosity) {
    super(boundaryFaces, faces, viscosity);
  }

  @Override
  public void initialise(FlowState state) {
    java.util.Arrays.fill(state.eddyViscosity, 0);
  }

  @Override
  public void update(FlowState state, VelocityGradients gradients, double factor) {}
}
