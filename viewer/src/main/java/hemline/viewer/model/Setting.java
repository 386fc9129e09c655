package hemline.viewer.model;

import hemline.shared.fluid.Air;
import hemline.shared.profile.LipProfile;
import hemline.shared.section.GroundMotion;
import hemline.shared.section.SealSection;
import java.util.List;

/**
 * Conditions a lip works under, SI units.
 *
 * @param gap between lip and ground, m, positive
 * @param suction Pa
 * @param groundSpeed towards the plenum, m/s
 * @param spanwiseSpeed along the seal, m/s
 */
public record Setting(double gap, double suction, double groundSpeed, double spanwiseSpeed) {
  /** The demonstration: silo-wall inspection crawler, 2 mm gap and 600 Pa; invented figures. */
  public static final Setting USUAL = new Setting(2e-3, 600, 0, 0);

  public Setting {
    if (!(gap > 0) || !Double.isFinite(gap + suction + groundSpeed + spanwiseSpeed)) {
      throw new IllegalArgumentException("a setting needs a positive gap and finite numbers");
    }
  }

  public Setting withGap(double other) {
    return new Setting(other, suction, groundSpeed, spanwiseSpeed);
  }

  public Setting withSuction(double other) {
    return new Setting(gap, other, groundSpeed, spanwiseSpeed);
  }

  public Setting withGroundSpeed(double other) {
    return new Setting(gap, suction, other, spanwiseSpeed);
  }

  public Setting withSpanwiseSpeed(double other) {
    return new Setting(gap, suction, groundSpeed, other);
  }

  /** The ground's motion. */
  public GroundMotion ground() {
    return new GroundMotion(groundSpeed, spanwiseSpeed);
  }

  /** A lip under these conditions, in standard air. */
  public SealSection section(LipProfile profile) {
    return new SealSection(profile, gap, suction, ground(), Air.STANDARD, List.of());
  }
}
