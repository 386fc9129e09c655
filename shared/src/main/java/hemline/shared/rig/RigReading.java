package hemline.shared.rig;

/**
 * One line of readings; not a number where a value was not read.
 *
 * @param kind what was done
 * @param line of the file
 * @param gap m
 * @param suction Pa
 * @param flow volume flow as ambient air, m³/s
 * @param fanSpeed 1/s
 * @param time s
 * @param air around the rig
 */
public record RigReading(
    Kind kind,
    int line,
    double gap,
    double suction,
    double flow,
    double fanSpeed,
    double time,
    AirState air) {

  /**
   * State of the ambient air.
   *
   * @param temperature K
   * @param barometer absolute pressure, Pa
   */
  public record AirState(double temperature, double barometer) {}

  /** What a line of readings tells. */
  public enum Kind {
    /** The lip over a gap, everything steady. */
    LIP,
    /** The lip taped shut, everything steady: leaks of the box alone. */
    TAPED,
    /** Blower shut off: the suction decays through the gap, or, without one, with the lip taped. */
    DECAY
  }
}
