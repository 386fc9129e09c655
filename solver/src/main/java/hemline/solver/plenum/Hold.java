package hemline.solver.plenum;

import hemline.shared.problem.Notice;
import hemline.shared.result.Estimate;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Whether the machine stays where it is on ground of some tilt.
 *
 * @param place level, slope, wall, ceiling or worst (the least margin over all tilts and headings)
 * @param angle of the ground to the horizontal, rad
 * @param heading in which the smallest margin was found
 * @param noseAngle the same: from uphill to the nose, counter-clockwise from above the machine, rad
 * @param verdict what is told
 * @param reasons why it is not shown; empty otherwise
 * @param limitedBy the smallest margin: slip, brakes (they yield before the wheels slip), tip, axle
 *     lift or peel-off; "no balance" when the machine does not settle clear of the ground, "ledge"
 *     when a ledge strikes the lip, "nothing" when nothing pulls
 * @param margin the smallest margin: what holds over what pulls; null when nothing pulls
 * @param total the same with the tolerances of the inputs in its band; null as above
 * @param slip friction before slip over what is needed; null when nothing pulls
 * @param sliding the same once the tyres slip; null as above
 * @param tip restoring over tipping moment about an edge of the wheels' polygon; null as above
 * @param axleLift pull at which an axle (or the wheels of one side) would lift, over the pull, to
 *     which weight belongs that pulls away; null when none is unloaded
 * @param peelOff downforce over the part of the weight that pulls away; null when none does
 * @param headings worst heading of each of slip, tip, axle lift and peel-off
 * @param axleLoads in the heading of the smallest margin, N
 * @param freeWheels wheels that carry nothing there, in words
 */
public record Hold(
    String place,
    double angle,
    String heading,
    double noseAngle,
    HoldVerdict verdict,
    List<Notice> reasons,
    String limitedBy,
    @Nullable Estimate margin,
    @Nullable Estimate total,
    @Nullable Estimate slip,
    @Nullable Estimate sliding,
    @Nullable Estimate tip,
    @Nullable Estimate axleLift,
    @Nullable Estimate peelOff,
    Headings headings,
    List<Estimate> axleLoads,
    List<String> freeWheels) {
  public Hold {
    reasons = List.copyOf(reasons);
    axleLoads = List.copyOf(axleLoads);
    freeWheels = List.copyOf(freeWheels);
  }

  /** Worst heading of each column. */
  public record Headings(String slip, String tip, String axleLift, String peelOff) {}

  /** The same with another thing named that limits it. */
  Hold limitedBy(String other) {
    return new Hold(
        place,
        angle,
        heading,
        noseAngle,
        verdict,
        reasons,
        other,
        margin,
        total,
        slip,
        sliding,
        tip,
        axleLift,
        peelOff,
        headings,
        axleLoads,
        freeWheels);
  }

  /** True when it is shown to hold, at least until it slips. */
  public boolean holds() {
    return verdict == HoldVerdict.YES || verdict == HoldVerdict.UNTIL_IT_SLIPS;
  }
}
