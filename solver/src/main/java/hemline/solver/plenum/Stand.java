package hemline.solver.plenum;

import hemline.shared.vehicle.Machine;
import hemline.shared.vehicle.WheelLoads;
import org.jspecify.annotations.Nullable;

/**
 * How a machine stands when its balance is asked.
 *
 * @param moving true at the travel speed, false at rest
 * @param side of the band of all leaks
 * @param extra load towards the ground beyond weight on level ground and suction: {N, Σ N x, Σ N y}
 * @param softness compliance of tyres and frame over that of the file
 * @param step edge over a dip of the ground; -1 for none
 * @param held sink {z, a, b} to keep whatever the suction; null when the springs decide
 */
record Stand(
    boolean moving,
    Side side,
    double[] extra,
    double softness,
    int step,
    double @Nullable [] held) {
  private static final double[] NONE = {0, 0, 0};

  /** At rest on level ground. */
  static final Stand REST = new Stand(false, Side.VALUE, NONE, 1, -1, null);

  Stand at(Side newSide) {
    return new Stand(moving, newSide, extra, softness, step, held);
  }

  Stand travelling(boolean newMoving) {
    return new Stand(newMoving, side, extra, softness, step, held);
  }

  Stand loaded(double[] newExtra) {
    return new Stand(moving, side, newExtra, softness, step, held);
  }

  Stand softened(double newSoftness) {
    return new Stand(moving, side, extra, newSoftness, step, held);
  }

  Stand over(int edge, double[] keep) {
    return new Stand(moving, side, extra, softness, edge, keep.clone());
  }

  /** Compliance: sink {z, a, b} of the floor under a load {N, Σ N x, Σ N y}. */
  static double[] sink(Machine machine, double[] load, double softness) {
    double[] s = WheelLoads.solve(WheelLoads.stiffness(machine.running().axles()), load);
    double heave = machine.running().heaveStiffness();
    double pitch = machine.running().pitchStiffness();
    double middle = 0;
    for (var axle : machine.running().axles()) {
      middle += axle.x() / machine.running().axles().size();
    }
    double frameHeave = load[0] / heave;
    double framePitch = (load[1] - middle * load[0]) / pitch;
    return new double[] {
      softness * (s[0] + frameHeave - framePitch * middle),
      softness * (s[1] + framePitch),
      softness * s[2]
    };
  }
}
