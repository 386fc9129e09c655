package hemline.solver.plenum;

import hemline.shared.result.Estimate;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Whether the machine stays where it is on ground of some tilt.
 *
 * @param place level, slope, wall or ceiling
 * @param angle of the ground to the horizontal, rad
 * @param heading worst of nose up, nose down and sideways
 * @param holds true when every margin is above 1 at its low end
 * @param limitedBy the smallest margin: slip, tip, axle lift or peel-off; "no balance" when the
 *     machine does not settle clear of the ground, "nothing" when nothing pulls
 * @param margin the smallest margin: what holds over what pulls; null when nothing pulls
 * @param slip grip before slip over pull along the ground; null when nothing pulls
 * @param sliding grip once the tyres slip over that pull; null as above
 * @param tip restoring over tipping moment about the lowest wheels; null as above
 * @param axleLift pull at which an axle (or the wheels of one side) would lift, over the pull, to
 *     which weight belongs that pulls away; null when none is unloaded
 * @param peelOff downforce over the part of the weight that pulls away; null when none does
 * @param axleLoads N
 */
public record Hold(
    String place,
    double angle,
    String heading,
    boolean holds,
    String limitedBy,
    @Nullable Estimate margin,
    @Nullable Estimate slip,
    @Nullable Estimate sliding,
    @Nullable Estimate tip,
    @Nullable Estimate axleLift,
    @Nullable Estimate peelOff,
    List<Estimate> axleLoads) {
  public Hold {
    axleLoads = List.copyOf(axleLoads);
  }

  /** True when it would also stop sliding once it slips, or nothing pulls. */
  public boolean holdsSliding() {
    return sliding == null || sliding.low() >= 1;
  }
}
