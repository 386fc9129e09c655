package hemline.solver.rig;

/**
 * One draw of all errors of a rig, by their names.
 *
 * @param values in the order of {@link ErrorList}
 */
record Errors(double[] values) {
  /** Errors that all points share. */
  enum Shared {
    GAP_ZERO,
    GAP_SHARE,
    SUCTION_ZERO,
    SUCTION_SHARE,
    FLOW_ZERO,
    FLOW_SHARE,
    FAN_SPEED_ZERO,
    FAN_SPEED_SHARE,
    FAN_CURVE,
    LIP_LENGTH_ZERO,
    LIP_LENGTH_SHARE,
    TEMPERATURE,
    BAROMETER,
    /** Share of the expansion that is in doubt. */
    EXPANSION,
    /** Exponent of the box leak over the suction, about its usual value. */
    BOX_EXPONENT,
    BOX_VOLUME_ZERO,
    BOX_VOLUME_SHARE,
    /** Polytropic exponent of the air in a box whose suction decays. */
    POLYTROPIC,
    TIME_SHARE,
    /** Slope of a decay, as a share. */
    DECAY,
    /** Exponent by which a blower's pressure falls with its flow, about 2. */
    BLOWER_EXPONENT
  }

  /** Errors of one point alone. */
  enum Own {
    GAP,
    SUCTION,
    FLOW,
    /** From reading to reading, as a share of the discharge. */
    SCATTER
  }

  private static final int SHARED = Shared.values().length;
  private static final int OWN = Own.values().length;

  double of(Shared error) {
    return values[error.ordinal()];
  }

  /**
   * An error of one point.
   *
   * @param place of the point, from 0, points with the lip taped behind those of the lip
   */
  double of(int place, Own error) {
    return values[SHARED + OWN * place + error.ordinal()];
  }

  /** No error at all. */
  static Errors none(int places) {
    return new Errors(new double[SHARED + OWN * places]);
  }
}
