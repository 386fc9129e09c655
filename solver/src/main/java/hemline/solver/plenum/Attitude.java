package hemline.solver.plenum;

import java.util.List;

/**
 * How the ground under a machine is tilted and where the machine points on it.
 *
 * @param tilt of the ground to the horizontal, rad: π/2 a wall, π a ceiling
 * @param downhill direction down the ground seen in the machine, rad: 0 to the nose, π/2 to the
 *     left
 */
record Attitude(double tilt, double downhill) {
  private static final double LEVEL = 1e-9;
  private static final List<String> SQUARE =
      List.of("nose down", "right side up", "nose up", "left side up");

  /** Nose up on ground of some tilt. */
  static Attitude noseUp(double tilt) {
    return new Attitude(tilt, Math.PI);
  }

  /** True when weight pulls along the ground. */
  boolean pulls() {
    return Math.abs(Math.sin(tilt)) > LEVEL;
  }

  double x() {
    return exact(Math.cos(downhill));
  }

  double y() {
    return exact(Math.sin(downhill));
  }

  private static double exact(double c) {
    return Math.abs(c) < 1e-12 ? 0 : c;
  }

  /** From uphill to the nose, counter-clockwise seen from above the machine, rad, −π to π. */
  double noseFromUphill() {
    double a = Math.IEEEremainder(Math.PI - downhill, 2 * Math.PI);
    return Math.abs(a + Math.PI) < LEVEL ? Math.PI : a;
  }

  /** Heading in words. */
  String heading() {
    if (!pulls()) {
      return "any";
    }
    double quarters = downhill / (0.5 * Math.PI);
    if (Math.abs(quarters - Math.rint(quarters)) < 1e-6) {
      return SQUARE.get(Math.floorMod((int) Math.rint(quarters), 4));
    }
    double nose = Math.toDegrees(noseFromUphill());
    return "nose "
        + Math.round(Math.abs(nose))
        + "\u00b0 "
        + (nose > 0 ? "left" : "right")
        + " of uphill";
  }
}
