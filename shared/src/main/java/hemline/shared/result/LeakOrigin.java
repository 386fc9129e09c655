package hemline.shared.result;

import hemline.shared.fluid.FluidState;
import hemline.shared.section.SectionConditions;

/**
 * What a leak was asked for: all that its figures depend on, save the solver. Names and notes of
 * the lip do not count.
 *
 * @param lip SHA-256 of outline, detached parts and bumps of the ground, in hexadecimal digits
 * @param conditions that it is solved under
 * @param air the fluid
 * @param mesh key of the finest grid
 * @param flowModel key of the flow model
 * @param modelSpread true if a second flow model widens the bands
 */
public record LeakOrigin(
    String lip,
    SectionConditions conditions,
    FluidState air,
    String mesh,
    String flowModel,
    boolean modelSpread) {

  /** One line a part; the same for the same question and for no other. */
  public String text() {
    return "lip "
        + lip
        + "\ngap "
        + number(conditions.gap())
        + "\nsuction "
        + number(conditions.suction())
        + "\nground "
        + number(conditions.groundSpeed())
        + " "
        + number(conditions.spanwiseSpeed())
        + "\nair "
        + number(air.density())
        + " "
        + number(air.kinematicViscosity())
        + "\nmesh "
        + mesh
        + "\nflow model "
        + flowModel
        + " "
        + modelSpread
        + "\n";
  }

  private static String number(double v) {
    return v == 0 ? "0" : Double.toString(v);
  }
}
