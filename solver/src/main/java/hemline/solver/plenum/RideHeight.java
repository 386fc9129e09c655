package hemline.solver.plenum;

import hemline.shared.result.Estimate;
import org.jspecify.annotations.Nullable;

/**
 * How far the machine is from being drawn down to the ground.
 *
 * @param heave stiffness against it
 * @param ending what lies at the end of the margin
 * @param edge that would touch first, or does; -1 when the machine cannot be drawn down
 * @param bears additional load that it bears before
 * @param gap by which the smallest gap closes until then, m; null when it has no operating point to
 *     begin with
 */
public record RideHeight(
    Heave heave, MarginEnd ending, int edge, Bears bears, @Nullable Estimate gap) {

  /**
   * Heave stiffness.
   *
   * @param stiffness at the centre of pressure, tyres and frame together, N/m
   * @param required smallest (all springs softer by the same factor) at which it still stands
   *     clear, N/m; null when any stiffness will do
   * @param factor stiffness over the smallest; null as above
   */
  public record Heave(double stiffness, @Nullable Estimate required, @Nullable Estimate factor) {}

  /**
   * Load that the machine bears before it is drawn down; null when it has no operating point to
   * begin with.
   *
   * @param force at the centre of pressure, N
   * @param atGravity the same at the centre of gravity, N
   * @param atCorner the same at the corner of the floor that bears least, N
   * @param corner number of that corner; -1 when there is none
   */
  public record Bears(
      @Nullable Estimate force,
      @Nullable Estimate atGravity,
      @Nullable Estimate atCorner,
      int corner) {}

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
