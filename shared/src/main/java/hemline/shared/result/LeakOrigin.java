package hemline.shared.result;

/**
 * What a leak was asked for: all that its figures depend on, save the solver. Names and notes of
 * the lip do not count.
 *
 * @param lip SHA-256 of outline, detached parts and bumps of the ground, in hexadecimal digits
 * @param gap m
 * @param suction Pa
 * @param groundSpeed across the seal, positive towards the plenum, m/s
 * @param spanwiseSpeed along the seal, m/s
 * @param density of the air, kg/m³
 * @param kinematicViscosity m²/s
 * @param mesh key of the finest grid
 * @param flowModel key of the flow model
 * @param modelSpread true if a second flow model widens the bands
 */
public record LeakOrigin(
    String lip,
    double gap,
    double suction,
    double groundSpeed,
    double spanwiseSpeed,
    double density,
    double kinematicViscosity,
    String mesh,
    String flowModel,
    boolean modelSpread) {

  /** One line a part; the same for the same question and for no other. */
  public String text() {
    return "lip "
        + lip
        + "\ngap "
        + number(gap)
        + "\nsuction "
        + number(suction)
        + "\nground "
        + number(groundSpeed)
        + " "
        + number(spanwiseSpeed)
        + "\nair "
        + number(density)
        + " "
        + number(kinematicViscosity)
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
