package hemline.solver.plenum;

import hemline.shared.problem.Notice;
import hemline.shared.result.Estimate;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Whether the machine stays where it is on ground of some tilt.
 *
 * @param place where it was found
 * @param judgement what is told
 * @param margins against each way to fail
 * @param headings worst heading of each of slip, tip, axle lift and peel-off
 * @param axleLoads in the heading of the smallest margin, N
 * @param freeWheels wheels that carry nothing there, in words
 */
public record Hold(
    Place place,
    Judgement judgement,
    Margins margins,
    Headings headings,
    List<Estimate> axleLoads,
    List<String> freeWheels) {
  public Hold {
    axleLoads = List.copyOf(axleLoads);
    freeWheels = List.copyOf(freeWheels);
  }

  /**
   * Ground and heading of a hold.
   *
   * @param name level, slope, wall, ceiling or worst (the least margin over all tilts and headings)
   * @param angle of the ground to the horizontal, rad
   * @param heading in which the smallest margin was found
   * @param noseAngle the same: from uphill to the nose, counter-clockwise from above the machine,
   *     rad
   */
  public record Place(String name, double angle, String heading, double noseAngle) {}

  /**
   * What is told of a hold.
   *
   * @param verdict in a word
   * @param reasons why it is not shown; empty otherwise
   * @param limitedBy the smallest margin: slip, brakes (they yield before the wheels slip), tip,
   *     axle lift or peel-off; "no balance" when the machine does not settle clear of the ground,
   *     "ledge" when a ledge strikes the lip, "nothing" when nothing pulls
   */
  public record Judgement(HoldVerdict verdict, List<Notice> reasons, String limitedBy) {
    public Judgement {
      reasons = List.copyOf(reasons);
    }
  }

  /**
   * Margins of a hold, each null when nothing pulls that way.
   *
   * @param least the smallest margin: what holds over what pulls
   * @param total the same with the tolerances of the inputs in its band
   * @param slip friction before slip over what is needed
   * @param sliding the same once the tyres slip
   * @param tip restoring over tipping moment about an edge of the wheels' polygon
   * @param axleLift pull at which an axle (or the wheels of one side) would lift, over the pull, to
   *     which weight belongs that pulls away; null when none is unloaded
   * @param peelOff downforce over the part of the weight that pulls away; null when none does
   */
  public record Margins(
      @Nullable Estimate least,
      @Nullable Estimate total,
      @Nullable Estimate slip,
      @Nullable Estimate sliding,
      @Nullable Estimate tip,
      @Nullable Estimate axleLift,
      @Nullable Estimate peelOff) {}

  /** Worst heading of each column. */
  public record Headings(String slip, String tip, String axleLift, String peelOff) {}

  /** The same with another thing named that limits it. */
  Hold limitedBy(String other) {
    return new Hold(
        place,
        new Judgement(judgement.verdict, judgement.reasons, other),
        margins,
        headings,
        axleLoads,
        freeWheels);
  }

  /** True when it is shown to hold, at least until it slips. */
  public boolean holds() {
    return judgement.verdict == HoldVerdict.YES || judgement.verdict == HoldVerdict.UNTIL_IT_SLIPS;
  }
}
