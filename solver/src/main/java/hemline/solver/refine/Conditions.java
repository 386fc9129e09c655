package hemline.solver.refine;

import hemline.shared.fluid.FluidState;
import hemline.shared.section.DuctSection;
import hemline.shared.section.SealSection;
import hemline.solver.flow.Closure;

/**
 * What an answer needs to know of its section.
 *
 * @param name lip or duct
 * @param kind what drives it
 * @param gap reference gap, m
 * @param drive suction or asked pressure drop, Pa, or asked leak flow, m²/s; 0 for a cavity
 * @param groundSpeed m/s
 * @param spanwiseSpeed m/s
 * @param fluid the fluid
 * @param leastWidth least half-width of the numerical part of the leak in turbulent flow, of its
 *     value; 0 where grids alone decide
 */
public record Conditions(
    String name,
    Kind kind,
    double gap,
    double drive,
    double groundSpeed,
    double spanwiseSpeed,
    FluidState fluid,
    double leastWidth) {

  /** What drives the section. */
  public enum Kind {
    /** A lip under suction. */
    SUCTION,
    /** A duct under a pressure drop. */
    PRESSURE_DROP,
    /** A duct that carries a given flow. */
    LEAK_FLOW,
    /** A closed cavity. */
    CAVITY
  }

  public static Conditions of(SealSection section) {
    return new Conditions(
        section.profile().name(),
        Kind.SUCTION,
        section.gap(),
        section.suction(),
        section.ground().speed(),
        section.ground().spanwiseSpeed(),
        section.fluid(),
        GridClass.leastWidth(section));
  }

  public static Conditions of(DuctSection section) {
    Kind kind = Kind.CAVITY;
    double drive = 0;
    if (section.drive() instanceof DuctSection.Drive.LeakFlow flow) {
      kind = Kind.LEAK_FLOW;
      drive = flow.value();
    } else if (section.drive() instanceof DuctSection.Drive.PressureDrop drop) {
      kind = Kind.PRESSURE_DROP;
      drive = drop.value();
    }
    return new Conditions(
        section.name(),
        kind,
        section.referenceGap(),
        drive,
        section.ground().speed(),
        section.ground().spanwiseSpeed(),
        section.fluid(),
        0);
  }

  /** {@link #leastWidth} under a flow model. */
  double leastWidth(Closure closure) {
    return closure == Closure.LAMINAR ? 0 : leastWidth;
  }

  /** Leak flow to judge the flow by before any is computed: a jet of coefficient 0.7, m²/s. */
  double expectedLeak() {
    return switch (kind) {
      case LEAK_FLOW -> drive;
      case CAVITY -> 0;
      case SUCTION, PRESSURE_DROP ->
          0.7 * gap * Math.signum(drive) * Math.sqrt(2 * Math.abs(drive) / fluid.density());
    };
  }
}
