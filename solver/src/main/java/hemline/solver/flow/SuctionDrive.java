package hemline.solver.flow;

import hemline.solver.field.FlowState;
import hemline.solver.grid.Mesh;
import hemline.solver.grid.Patch;

/**
 * Holds the suction where it is defined: on the plenum side of the skirt.
 *
 * <p>The outlet pressure follows the miss of the tap with a small gain; the monitored figure is the
 * flow out of the plenum.
 */
final class SuctionDrive implements FlowProblem.Drive {
  private final Mesh mesh;
  private final PressureTap tap;
  private final double suction;
  private final double scale;

  /**
   * Makes the drive.
   *
   * @param tap on the plenum side of the skirt
   * @param suction over density, m²/s²
   * @param scale reference pressure over density, m²/s², positive
   */
  SuctionDrive(Mesh mesh, PressureTap tap, double suction, double scale) {
    this.mesh = mesh;
    this.tap = tap;
    this.suction = suction;
    this.scale = scale;
  }

  @Override
  public void adjust(FlowState state, double gain) {
    double error = -suction - tap.read(state.p);
    double most = gain * scale;
    state.outletPressure += gain * Math.max(-most, Math.min(most, error));
  }

  @Override
  public double monitor(FlowState state) {
    double out = 0;
    for (int b = 0; b < mesh.boundaryFaces; b++) {
      if (mesh.bPatch[b] == Patch.RIGHT) {
        out += state.boundaryFlux[b];
      }
    }
    return out;
  }

  @Override
  public double miss(FlowState state) {
    return (suction + tap.read(state.p)) / scale;
  }
}
