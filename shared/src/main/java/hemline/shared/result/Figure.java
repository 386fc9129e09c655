package hemline.shared.result;

/** A scalar figure of a section: its name in files, symbol, SI unit and meaning. */
public enum Figure {
  LEAK_FLOW("leakFlow", "q", "m2/s", "volume flow through the gap per metre of seal"),
  DISCHARGE_COEFFICIENT(
      "dischargeCoefficient", "C_d", "1", "leak flow over gap times jet reference speed"),
  EFFECTIVE_GAP("effectiveGap", "h_e", "m", "discharge coefficient times gap"),
  PRESSURE_RECOVERY(
      "pressureRecovery",
      "C_pr",
      "1",
      "static pressure won back behind the throat over the throat's dynamic head; low is good"),
  PRESSURE_DROP(
      "pressureDrop",
      "Δp",
      "Pa",
      "static pressure difference that drives the leak: suction for a lip, between stations for a"
          + " duct"),
  LIP_FORCE_X("lipForceX", "F_x", "N/m", "fluid force on the lip along the leak"),
  LIP_FORCE_Y("lipForceY", "F_y", "N/m", "fluid force on the lip, upwards"),
  LIP_PRESSURE_FORCE_X("lipPressureForceX", "F_xp", "N/m", "pressure part of the force along x"),
  LIP_PRESSURE_FORCE_Y("lipPressureForceY", "F_yp", "N/m", "pressure part of the force along y"),
  LIP_SHEAR_FORCE_X("lipShearForceX", "F_xs", "N/m", "shear part of the force along x"),
  LIP_SHEAR_FORCE_Y("lipShearForceY", "F_ys", "N/m", "shear part of the force along y"),
  LIP_MOMENT("lipMoment", "M", "N", "moment on the lip about the mount, counter-clockwise"),
  GROUND_DRAG("groundDrag", "D_g", "N/m", "shear force on the ground under the lip along the leak"),
  GROUND_DRAG_SPANWISE(
      "groundDragSpanwise",
      "D_gz",
      "N/m",
      "shear force on the ground under the lip along the seal"),
  GROUND_POWER(
      "groundPower", "P_g", "W/m", "power the ground's motion gives to the air under the lip"),
  EXPANSIBILITY(
      "expansibility",
      "ε",
      "1",
      "leak as mass flow with the expansion of the air over that without it, in one dimension; not"
          + " applied to the other figures");

  private final String key;
  private final String symbol;
  private final String unit;
  private final String meaning;

  Figure(String key, String symbol, String unit, String meaning) {
    this.key = key;
    this.symbol = symbol;
    this.unit = unit;
    this.meaning = meaning;
  }

  /** Name in files. */
  public String key() {
    return key;
  }

  public String symbol() {
    return symbol;
  }

  /** SI unit as written in files. */
  public String unit() {
    return unit;
  }

  /** One clause that explains the figure. */
  public String meaning() {
    return meaning;
  }
}
