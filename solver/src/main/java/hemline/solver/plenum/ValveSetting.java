package hemline.solver.plenum;

import hemline.shared.result.Estimate;
import org.jspecify.annotations.Nullable;

/**
 * What the relief valve must be set to.
 *
 * @param factor by which all springs may be softer before a lip touches
 * @param needed true when without the valve the factor is not reached
 * @param capSuction largest suction at which the factor holds, Pa; the valve must pin it there
 * @param flowAtCap flow that the valve must pass at that suction with the seal closed, m³/s
 * @param setting of the machine's own valve; null when it has none
 */
public record ValveSetting(
    double factor,
    boolean needed,
    Estimate capSuction,
    Estimate flowAtCap,
    @Nullable Setting setting) {

  /** True when the suction stays at or below the cap even with the seal closed and no valve. */
  public boolean idle() {
    return !needed && flowAtCap.high() == 0;
  }

  /**
   * Setting of a given valve.
   *
   * @param spring of it
   * @param seat of it
   * @param settled where the machine then settles
   * @param chatter judgement of the valve as it is set in the file
   */
  public record Setting(Spring spring, Seat seat, Settled settled, Chatter chatter) {}

  /**
   * Spring of a valve.
   *
   * @param preload to set, N
   * @param openingSuction at which it then opens, Pa
   * @param softRate spring rate up to which it would open only above the suction at which the
   *     machine settles without it, N/m; 0 when that suction is above the cap
   */
  public record Spring(double preload, double openingSuction, double softRate) {}

  /**
   * What the seat of a valve passes at the cap.
   *
   * @param fits true when it can pass the flow within its lift
   * @param lift m
   * @param largestFlow that it passes fully open, m³/s
   * @param areaNeeded seat that would pass the flow with the curtain fully open, m²
   */
  public record Seat(boolean fits, double lift, double largestFlow, double areaNeeded) {}

  /**
   * Where the machine settles with the valve set.
   *
   * @param suction Pa; null when it does not
   * @param downforce N; null as above
   */
  public record Settled(@Nullable Estimate suction, @Nullable Estimate downforce) {}

  /**
   * Whether the valve will chatter.
   *
   * @param open true when it is open where the machine settles
   * @param dampingNeeded damping ratio above which its motion dies out
   * @param damping of the valve
   * @param naturalFrequency of disc and spring, Hz
   * @param slopes flow it takes up a pascal over what seal, leaks and fan take up: far above 1 it
   *     rules the suction
   */
  public record Chatter(
      boolean open, double dampingNeeded, double damping, double naturalFrequency, double slopes) {
    /** True when it is open and its damping is too small. */
    public boolean warns() {
      return open && damping < dampingNeeded;
    }
  }
}
