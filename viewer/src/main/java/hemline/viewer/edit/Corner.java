package hemline.viewer.edit;

/**
 * A vertex of a lip drawing, and the edge that leaves it.
 *
 * @param part 0 for the body, k for the detached part k - 1
 * @param index of the vertex in that part
 */
public record Corner(int part, int index) {}
