package hemline.shared.vehicle;

import java.util.List;

/**
 * What the machine rolls on.
 *
 * @param axles front to rear, two or more unless one alone carries it
 * @param peakFriction grip before the tyres slip, tangential over normal force
 * @param slidingFriction grip once they slip
 * @param heaveStiffness of the frame between axles and floor, N/m; infinite when rigid
 * @param pitchStiffness of the frame between axles and floor, N m/rad; infinite when rigid
 * @param drivePower at the wheels, W
 * @param topSpeed that the wheels reach, m/s
 */
public record Running(
    List<Axle> axles,
    double peakFriction,
    double slidingFriction,
    double heaveStiffness,
    double pitchStiffness,
    double drivePower,
    double topSpeed) {
  public Running {
    axles = List.copyOf(axles);
  }
}
