package hemline.solver.rig;

/**
 * What is usually wrong at a rig; each leaves its own pattern over gap and suction.
 *
 * <p>The size of a fault is what the readings have to be corrected by.
 */
public enum Fault {
  /** Air that comes in elsewhere, though not with the lip taped; size: effective area, m². */
  EXTRA_AREA("extraArea", "a leak of the box that the taped reading does not hold", "m2"),
  /** The gap is wider than the shims say: bowed lip, ground not flat; size: m. */
  GAP_OFFSET("gapOffset", "a gap other than that of the shims (bowed lip, ground not flat)", "m"),
  /** The gauge shows too much by a constant; size: Pa. */
  GAUGE_ZERO("gaugeZero", "the zero of the suction gauge", "Pa"),
  /** The flow is shown too large by a share; size: that share. */
  FLOW_SCALE("flowScale", "the scale of the flow reading", "1"),
  /**
   * Suction lost in the hose: it grows as the square of the flow; size: share of the suction that
   * is lost at the point of the largest flow.
   */
  HOSE(
      "hose",
      "suction lost in the hose (the tap does not stand in the box, or the hose chokes)",
      "1");

  private final String key;
  private final String words;
  private final String unit;

  Fault(String key, String words, String unit) {
    this.key = key;
    this.words = words;
    this.unit = unit;
  }

  /** Name in files. */
  public String key() {
    return key;
  }

  /** For people. */
  public String words() {
    return words;
  }

  /** SI unit of its size as written in files. */
  public String unit() {
    return unit;
  }

  /** True where a negative size has no meaning. */
  boolean oneSided() {
    return this == EXTRA_AREA || this == HOSE;
  }
}
