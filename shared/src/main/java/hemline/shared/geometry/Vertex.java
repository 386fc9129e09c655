package hemline.shared.geometry;

/**
 * Vertex of an outline and the edge that leaves it.
 *
 * @param x m
 * @param y m
 * @param bulge tangent of a quarter of the arc's opening angle on the edge to the next vertex,
 *     positive counter-clockwise; 0 for a straight edge
 */
public record Vertex(double x, double y, double bulge) {
  public Vertex(double x, double y) {
    this(x, y, 0);
  }
}
