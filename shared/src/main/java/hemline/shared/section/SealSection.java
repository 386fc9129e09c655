package hemline.shared.section;

import hemline.shared.fluid.FluidState;
import hemline.shared.geometry.Outline;
import hemline.shared.profile.LipProfile;
import java.util.List;

/**
 * An open section: a lip at a gap over the ground, ambient air on one side, plenum on the other.
 *
 * @param profile the lip
 * @param gap smallest clearance between lip and mean ground, m, positive
 * @param suction ambient total pressure minus plenum pressure, Pa; zero and negative are legal
 * @param ground motion of the ground
 * @param fluid the air
 * @param groundBumps solid parts standing on the ground, in section coordinates: x = 0 at the lip's
 *     ambient edge, y = 0 the mean ground; may be empty
 */
public record SealSection(
    LipProfile profile,
    double gap,
    double suction,
    GroundMotion ground,
    FluidState fluid,
    List<Outline> groundBumps)
    implements Section {
  public SealSection {
    groundBumps = List.copyOf(groundBumps);
    if (!(gap > 0) || !Double.isFinite(gap)) {
      throw new IllegalArgumentException("gap must be positive, got " + gap + " m");
    }
    if (!Double.isFinite(suction)) {
      throw new IllegalArgumentException("suction must be finite, got " + suction + " Pa");
    }
  }

  @Override
  public String name() {
    return profile.name();
  }

  @Override
  public Drive drive() {
    return new Drive.Suction(suction);
  }

  public SealSection withGap(double newGap) {
    return new SealSection(profile, newGap, suction, ground, fluid, groundBumps);
  }

  public SealSection withSuction(double newSuction) {
    return new SealSection(profile, gap, newSuction, ground, fluid, groundBumps);
  }

  public SealSection withProfile(LipProfile newProfile) {
    return new SealSection(newProfile, gap, suction, ground, fluid, groundBumps);
  }
}
