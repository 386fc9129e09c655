package hemline.solver.plenum;

import hemline.shared.fluid.Air;
import hemline.shared.vehicle.Load;
import hemline.shared.vehicle.Machine;
import hemline.shared.vehicle.SupportPolygon;
import hemline.shared.vehicle.WheelLoads;
import hemline.shared.vehicle.WheelStand;
import java.util.List;

/**
 * Wheels and frame of a machine under load: how far the floor sinks from where it stands at rest on
 * level ground with the fan off, and what each wheel carries.
 *
 * <p>Wheels press and do not pull. Where no such balance exists, because the machine tips or is
 * pulled off, the plane that keeps every wheel to the ground goes on in its place; the margins then
 * tell that it lets go.
 */
final class Wheels {
  static final double GRAVITY = Air.GRAVITY;

  private final Machine machine;
  private final WheelStand stand;
  private final List<WheelLoads.Wheel> wheels;
  private final double[] weight;
  private final double[] atRest;
  private final double middle;

  Wheels(Machine machine) {
    this.machine = machine;
    stand = new WheelStand(machine.running().axles());
    wheels = WheelLoads.wheels(machine.running().axles());
    Load load = machine.load();
    double n = load.mass() * GRAVITY;
    weight = new double[] {n, n * load.x(), n * load.y()};
    atRest = plane(weight);
    middle = machine.running().axles().stream().mapToDouble(a -> a.x()).average().orElse(0);
  }

  List<WheelLoads.Wheel> all() {
    return wheels;
  }

  SupportPolygon polygon() {
    return stand.polygon();
  }

  /** Weight on level ground: {N, Σ N x, Σ N y}. */
  double[] weight() {
    return weight.clone();
  }

  private double[] plane(double[] load) {
    double[] s = stand.plane(load);
    return s == null ? stand.bonded(load) : s;
  }

  /**
   * Sink {z, a, b} of the floor, m, under a load beside the weight on level ground.
   *
   * @param load {N, Σ N x, Σ N y}
   * @param softness compliance of tyres and frame over that of the file
   */
  double[] sink(double[] load, double softness) {
    double[] s =
        plane(new double[] {load[0] + weight[0], load[1] + weight[1], load[2] + weight[2]});
    double heave = load[0] / machine.running().heaveStiffness();
    double pitch = (load[1] - middle * load[0]) / machine.running().pitchStiffness();
    return new double[] {
      softness * (s[0] - atRest[0] + heave - pitch * middle),
      softness * (s[1] - atRest[1] + pitch),
      softness * (s[2] - atRest[2])
    };
  }

  /**
   * Loads of the wheels under all that presses, N; 0 where one hangs free. Where the machine tips
   * or is pulled off, the wheels that stay down share what presses.
   */
  double[] pressed(double[] load) {
    double[] s = stand.plane(load);
    if (s != null) {
      return stand.pressed(s);
    }
    double[] n = stand.pressed(stand.bonded(load));
    double sum = 0;
    for (double one : n) {
      sum += one;
    }
    for (int i = 0; i < n.length; i++) {
      n[i] *= sum > 0 ? Math.max(0, load[0]) / sum : 0;
    }
    return n;
  }

  /** The same; where the machine tips or is pulled off, as if every wheel were held, N. */
  double[] loads(double[] load) {
    double[] s = stand.plane(load);
    return s == null ? bonded(load) : stand.pressed(s);
  }

  /** Loads of the wheels if all were held to the ground, N; negative where one would pull. */
  double[] bonded(double[] load) {
    double[] s = stand.bonded(load);
    return wheels.stream()
        .mapToDouble(w -> w.stiffness() * (s[0] + s[1] * w.x() + s[2] * w.y()))
        .toArray();
  }

  double[] byAxle(double[] wheel) {
    double[] out = new double[machine.running().axles().size()];
    for (int i = 0; i < wheel.length; i++) {
      out[wheels.get(i).axle()] += wheel[i];
    }
    return out;
  }

  /** Loads of the wheels left and right; those in the middle count half on each. */
  double[] bySide(double[] wheel) {
    double[] out = new double[2];
    for (int i = 0; i < wheel.length; i++) {
      double left = wheels.get(i).y() > 0 ? 1 : wheels.get(i).y() < 0 ? 0 : 0.5;
      out[0] += left * wheel[i];
      out[1] += (1 - left) * wheel[i];
    }
    return out;
  }
}
