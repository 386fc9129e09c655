package hemline.solver.plenum;

import hemline.shared.result.Estimate;
import org.jspecify.annotations.Nullable;

/**
 * How far the machine is from being drawn down to the ground.
 *
 * @param stiffness in heave at the centre of pressure, tyres and frame together, N/m
 * @param ending what lies at the end of the margin
 * @param edge that would touch first, or does; -1 when the machine cannot be drawn down
 * @param force additional load at the centre of pressure that it bears before, N; null when it has
 *     no operating point to begin with
 * @param forceAtGravity the same at the centre of gravity, N; null as above
 * @param forceAtCorner the same at the corner of the floor that bears least, N; null as above
 * @param corner number of that corner; -1 when there is none
 * @param gap by which the smallest gap closes until then, m; null as above
 * @param requiredStiffness smallest heave stiffness (all springs softer by the same factor) at
 *     which it still stands clear, N/m; null when any stiffness will do
 * @param factor stiffness over the smallest, null as above
 */
public record RideHeight(
    double stiffness,
    MarginEnd ending,
    int edge,
    @Nullable Estimate force,
    @Nullable Estimate forceAtGravity,
    @Nullable Estimate forceAtCorner,
    int corner,
    @Nullable Estimate gap,
    @Nullable Estimate requiredStiffness,
    @Nullable Estimate factor) {

  /** What ends the margin. */
  public enum MarginEnd {
    /** No equilibrium remains: suction grows faster than the springs push back. */
    FOLD("fold"),
    /** A lip touches while suction and springs still balance. */
    CONTACT("contact"),
    /** It is drawn down already: there is no state clear of the ground. */
    DOWN("drawn down");

    private final String key;

    MarginEnd(String key) {
      this.key = key;
    }

    /** Name in files. */
    public String key() {
      return key;
    }
  }
}
