package hemline.shared.geometry;

import java.util.List;

/**
 * An outline as drawn: sharp vertices, arcs as bulges, and the corners that are to be rounded.
 *
 * <p>Metres, in the frame and the order of the drawing. Anything may be wrong with it; {@link
 * OutlineChecks} tells what.
 */
public record DrawnOutline(List<Vertex> vertices, List<Rounding> roundings) {
  public DrawnOutline {
    vertices = List.copyOf(vertices);
    roundings = List.copyOf(roundings);
  }

  /** An outline without roundings. */
  public DrawnOutline(List<Vertex> vertices) {
    this(vertices, List.of());
  }

  /** Vertex at an index that may run over the end. */
  public Vertex at(int index) {
    return vertices.get(Math.floorMod(index, vertices.size()));
  }
}
