package hemline.shared.section;

import hemline.shared.fluid.FluidState;
import org.jspecify.annotations.Nullable;

/** One complete two-dimensional question: what is drawn, and the conditions it works under. */
public sealed interface Section permits SealSection, DuctSection {
  /** Lip or duct, for people. */
  String name();

  /** Clearance between lip and ground, or the length for a duct's coefficients, m. */
  double gap();

  /** What moves the fluid; null where only the walls do. */
  @Nullable Drive drive();

  /** Motion of the ground. */
  GroundMotion ground();

  /** The fluid. */
  FluidState fluid();

  /** Suction or pressure drop asked for, Pa; 0 where a flow or the walls are given. */
  default double askedDrop() {
    Drive drive = drive();
    return drive instanceof Drive.Suction suction
        ? suction.value()
        : drive instanceof Drive.PressureDrop drop ? drop.value() : 0;
  }
}
