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

  /** The same drive and frame on other axles. */
  public Running withAxles(List<Axle> other) {
    return new Running(
        other, peakFriction, slidingFriction, heaveStiffness, pitchStiffness, drivePower, topSpeed);
  }

  /** The same drive and axles with both stiffnesses of the frame times a factor. */
  public Running stiffer(double factor) {
    return new Running(
        axles,
        peakFriction,
        slidingFriction,
        factor * heaveStiffness,
        factor * pitchStiffness,
        drivePower,
        topSpeed);
  }

  /** The same wheels with both frictions times a factor. */
  public Running gripping(double factor) {
    return new Running(
        axles,
        factor * peakFriction,
        factor * slidingFriction,
        heaveStiffness,
        pitchStiffness,
        drivePower,
        topSpeed);
  }
}
