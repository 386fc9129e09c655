package hemline.shared.geometry;

import java.util.List;

/**
 * Closed outline of straight edges and circular arcs, metres, closed implicitly.
 *
 * <p>The solid is inside. The order of the vertices may run either way; {@link #flatten} always
 * answers counter-clockwise.
 */
public record Outline(List<Vertex> vertices) {

  /** Sagitta of a flattened arc over its radius: 500 chords to a full circle. */
  public static final double SAGITTA = 2e-5;

  public Outline {
    vertices = List.copyOf(vertices);
  }

  /**
   * Polygon of this outline, counter-clockwise, with arcs as chords.
   *
   * <p>Arcs are split at their horizontal and vertical extremes, so that the lowest point of a
   * round nose is exact.
   */
  public Ring flatten() {
    return OutlineFlattening.flatten(this);
  }
}
