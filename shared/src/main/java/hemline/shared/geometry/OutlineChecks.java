package hemline.shared.geometry;

import hemline.shared.problem.Problem;
import hemline.shared.units.NumberText;
import java.util.ArrayList;
import java.util.List;

/**
 * What can be wrong with one drawn outline by itself, as problems that name vertex and cure.
 *
 * <p>Vertices and edges are numbered from 0; edge i runs from vertex i to vertex i + 1. Arcs are
 * judged as the chords that the mesh sees.
 */
public final class OutlineChecks {
  /** Most vertices of an outline. */
  public static final int MOST_VERTICES = 2000;

  private static final double LARGEST_COORDINATE = 1e4;
  private static final double SMALLEST_BULGE = 1e-6;
  private static final double LARGEST_BULGE = 100;

  /** Shortest edge over the size of the outline. */
  private static final double SHORTEST_EDGE = 1e-7;

  private OutlineChecks() {}

  /**
   * All problems of an outline; empty if it is closed, simple and its roundings fit.
   *
   * @param place name of the outline in messages, such as a key of a file
   */
  public static List<Problem> check(DrawnOutline drawn, String place) {
    List<Problem> problems = new ArrayList<>();
    checkNumbers(drawn, place, problems);
    if (!problems.isEmpty()) {
      return problems;
    }
    checkLengths(drawn, place, problems);
    if (!problems.isEmpty()) {
      return problems;
    }
    problems.addAll(Crossings.find(drawn.vertices(), place));
    if (problems.isEmpty() && !drawn.roundings().isEmpty()) {
      CornerResolver.Resolved resolved = CornerResolver.resolve(drawn, place, problems);
      if (resolved != null) {
        checkRounded(resolved.outline(), place, problems);
      }
    }
    return problems;
  }

  /**
   * A place where two edges of an outline cross, touch or lie on each other.
   *
   * @param edge number of the first edge
   * @param other number of the second edge
   * @param x m
   * @param y m
   */
  public record Meeting(int edge, int other, double x, double y) {}

  /** Places where the outline meets itself, the first few; none if its numbers are not sound. */
  public static List<Meeting> meetings(DrawnOutline drawn) {
    List<Problem> problems = new ArrayList<>();
    checkNumbers(drawn, "outline", problems);
    if (problems.isEmpty()) {
      checkLengths(drawn, "outline", problems);
    }
    return problems.isEmpty() ? Crossings.meetings(drawn.vertices()) : List.of();
  }

  private static void checkNumbers(DrawnOutline drawn, String place, List<Problem> problems) {
    int n = drawn.vertices().size();
    boolean anyArc = drawn.vertices().stream().anyMatch(v -> v.bulge() != 0);
    if (n < 2 || (n == 2 && !anyArc)) {
      problems.add(
          new Problem(
              "outline.vertices",
              place,
              "an outline needs at least three corners, or two where an edge is an arc; this one"
                  + " has "
                  + n));
    }
    if (n > MOST_VERTICES) {
      problems.add(
          new Problem(
              "outline.vertices",
              place,
              "the outline has "
                  + n
                  + " corners; at most "
                  + MOST_VERTICES
                  + " are possible: draw curves as arcs"));
    }
    for (int i = 0; i < n; i++) {
      Vertex v = drawn.at(i);
      if (!Double.isFinite(v.x()) || !Double.isFinite(v.y()) || !Double.isFinite(v.bulge())) {
        problems.add(
            new Problem(
                "outline.number", place, "corner " + i + " has a number that is not finite"));
      } else if (Math.max(Math.abs(v.x()), Math.abs(v.y())) > LARGEST_COORDINATE) {
        problems.add(
            new Problem(
                "outline.size",
                place,
                "corner " + i + " is more than 10 km from the origin; check the length unit"));
      } else if (v.bulge() != 0
          && (Math.abs(v.bulge()) < SMALLEST_BULGE || Math.abs(v.bulge()) > LARGEST_BULGE)) {
        problems.add(
            new Problem(
                "outline.bulge",
                place,
                "corner "
                    + i
                    + " has the bulge "
                    + v.bulge()
                    + "; a bulge lies between 0.000001 and 100, is 1 for a half circle and 0 for a"
                    + " straight edge"));
      }
    }
  }

  private static void checkLengths(DrawnOutline drawn, String place, List<Problem> problems) {
    int n = drawn.vertices().size();
    double size = 0;
    for (Vertex v : drawn.vertices()) {
      size = Math.max(size, distance(v, drawn.at(0)));
    }
    if (size == 0) {
      problems.add(
          new Problem("outline.zeroEdge", place, "all corners are at one point; draw an outline"));
      return;
    }
    for (int i = 0; i < n; i++) {
      if (distance(drawn.at(i), drawn.at(i + 1)) <= SHORTEST_EDGE * size) {
        int j = (i + 1) % n;
        String text =
            j == 0
                ? "the last corner repeats the first; remove it, the outline closes by itself"
                : "the edge from corner "
                    + i
                    + " to "
                    + j
                    + " has no length; remove one of the two";
        problems.add(
            new Problem("outline.zeroEdge", place, text + " (" + where(drawn.at(i)) + ")"));
      }
    }
  }

  private static void checkRounded(Outline outline, String place, List<Problem> problems) {
    for (Problem p : Crossings.find(outline.vertices(), place)) {
      problems.add(
          new Problem(
              "outline.rounding",
              place,
              "with its roundings the outline meets itself; make the roundings smaller ("
                  + p.text()
                  + ")"));
      return;
    }
  }

  private static double distance(Vertex a, Vertex b) {
    return Math.hypot(b.x() - a.x(), b.y() - a.y());
  }

  private static String where(Vertex v) {
    return "at " + NumberText.point(v.x(), v.y());
  }
}
