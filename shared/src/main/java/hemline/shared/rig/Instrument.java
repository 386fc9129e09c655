package hemline.shared.rig;

import hemline.shared.units.QuantityKind;

/** What is read at a rig: one column of its file each. */
public enum Instrument {
  /** Clearance under the lip, set by shims, m. */
  GAP("gap", "mm", QuantityKind.LENGTH),
  /** Ambient minus box pressure, Pa. */
  SUCTION("suction", "Pa", QuantityKind.PRESSURE),
  /** Volume flow as ambient air, m³/s. */
  FLOW("flow", "L/s", QuantityKind.VOLUME_FLOW),
  /** Speed of the fan whose curve gives the flow, 1/s. */
  FAN_SPEED("fan speed", "rpm", QuantityKind.TURNING_SPEED),
  /** Time of a reading while the suction decays, s. */
  TIME("time", "s", QuantityKind.TIME),
  /** Length of the lip, m. */
  LIP_LENGTH("lip length", "mm", QuantityKind.LENGTH),
  /** Temperature of the ambient air, K. */
  TEMPERATURE("temperature", "degC", QuantityKind.TEMPERATURE),
  /** Absolute pressure of the ambient air, Pa. */
  BAROMETER("barometer", "hPa", QuantityKind.PRESSURE),
  /** Volume of air in the box, m³. */
  BOX_VOLUME("box volume", "L", QuantityKind.VOLUME),
  /** Speed at which the fan's curve was measured, 1/s. */
  CURVE_SPEED("curve speed", "rpm", QuantityKind.TURNING_SPEED),
  /** Density of the air in which the fan's curve was measured, kg/m³. */
  CURVE_DENSITY("curve density", "kg/m3", QuantityKind.DENSITY);

  private final String title;
  private final String unit;
  private final QuantityKind kind;

  Instrument(String title, String unit, QuantityKind kind) {
    this.title = title;
    this.unit = unit;
    this.kind = kind;
  }

  /** Name of the column. */
  public String title() {
    return title;
  }

  /** Usual unit of the column. */
  public String unit() {
    return unit;
  }

  public QuantityKind kind() {
    return kind;
  }
}
