package hemline.shared.section;

/** What moves the fluid through a section. */
public sealed interface Drive {
  /** Ambient total pressure minus plenum pressure, Pa; of either sign. */
  record Suction(double value) implements Drive {}

  /** Static pressure upstream minus downstream between the stations of a duct, Pa. */
  record PressureDrop(double value) implements Drive {}

  /** Volume flow per metre of span, m²/s. */
  record LeakFlow(double value) implements Drive {}
}
