package hemline.shared.vehicle;

import hemline.shared.profile.LipProfile;

/**
 * The seal along one edge of the floor.
 *
 * @param lip cross-section
 * @param gap clearance to the ground with the machine at rest on level ground and the fan off, m
 */
public record SealEdge(LipProfile lip, double gap) {
  public SealEdge {
    if (!(gap > 0)) {
      throw new IllegalArgumentException("gap must be positive, got " + gap + " m");
    }
  }
}
