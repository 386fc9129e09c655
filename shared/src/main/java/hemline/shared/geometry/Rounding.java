package hemline.shared.geometry;

/**
 * A corner of a drawn outline to be rounded or chamfered.
 *
 * @param vertex index of the vertex, from 0
 * @param kind what replaces the sharp corner
 * @param size m: radius of the rounding, or length taken off each edge by the chamfer
 */
public record Rounding(int vertex, Kind kind, double size) {

  /** What replaces a sharp corner. */
  public enum Kind {
    /** An arc tangent to both edges. */
    ROUND,
    /** A straight edge that takes the same length off both edges. */
    CHAMFER
  }

  /** A rounding of a radius, m. */
  public static Rounding round(int vertex, double radius) {
    return new Rounding(vertex, Kind.ROUND, radius);
  }

  /** A chamfer that takes a length, m, off each edge. */
  public static Rounding chamfer(int vertex, double setback) {
    return new Rounding(vertex, Kind.CHAMFER, setback);
  }
}
