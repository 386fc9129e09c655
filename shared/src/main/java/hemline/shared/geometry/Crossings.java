package hemline.shared.geometry;

import hemline.shared.problem.Problem;
import hemline.shared.units.NumberText;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.locationtech.jts.algorithm.LineIntersector;
import org.locationtech.jts.algorithm.RobustLineIntersector;
import org.locationtech.jts.geom.Coordinate;

/** Finds where an outline crosses, touches or runs along itself, with robust predicates. */
final class Crossings {
  private static final int MOST_REPORTED = 5;

  private final Chords chords;
  private final int edges;
  private final String place;
  private final List<Problem> problems = new ArrayList<>();
  private final List<OutlineChecks.Meeting> meetings = new ArrayList<>();
  private final Set<Long> reported = new HashSet<>();
  private final LineIntersector lines = new RobustLineIntersector();

  private Crossings(List<Vertex> vertices, String place) {
    this.chords = Chords.of(vertices);
    this.edges = vertices.size();
    this.place = place;
  }

  static List<Problem> find(List<Vertex> vertices, String place) {
    Crossings crossings = new Crossings(vertices, place);
    crossings.sweep();
    return crossings.problems;
  }

  static List<OutlineChecks.Meeting> meetings(List<Vertex> vertices) {
    Crossings crossings = new Crossings(vertices, "outline");
    crossings.sweep();
    return crossings.meetings;
  }

  /** Compares each chord with those whose extent in x begins within its own. */
  private void sweep() {
    int n = chords.size();
    Integer[] order = new Integer[n];
    double[] from = new double[n];
    double[] to = new double[n];
    for (int i = 0; i < n; i++) {
      order[i] = i;
      from[i] = Math.min(chords.from(i).x, chords.to(i).x);
      to[i] = Math.max(chords.from(i).x, chords.to(i).x);
    }
    Arrays.sort(order, (a, b) -> Double.compare(from[a], from[b]));
    for (int a = 0; a < n; a++) {
      for (int b = a + 1; b < n && from[order[b]] <= to[order[a]]; b++) {
        compare(order[a], order[b]);
        if (problems.size() >= MOST_REPORTED) {
          return;
        }
      }
    }
  }

  private void compare(int i, int j) {
    Coordinate a = chords.from(i);
    Coordinate b = chords.to(i);
    Coordinate c = chords.from(j);
    Coordinate d = chords.to(j);
    if (Math.min(a.y, b.y) > Math.max(c.y, d.y) || Math.max(a.y, b.y) < Math.min(c.y, d.y)) {
      return;
    }
    lines.computeIntersection(a, b, c, d);
    if (!lines.hasIntersection()) {
      return;
    }
    int n = chords.size();
    boolean neighbours = (i + 1) % n == j || (j + 1) % n == i;
    if (neighbours && lines.getIntersectionNum() == 1) {
      return;
    }
    int e = Math.min(chords.edge[i], chords.edge[j]);
    int f = Math.max(chords.edge[i], chords.edge[j]);
    if (reported.add((long) e * edges + f)) {
      report(e, f, neighbours);
    }
  }

  private void report(int e, int f, boolean neighbours) {
    Coordinate at = lines.getIntersection(0);
    meetings.add(new OutlineChecks.Meeting(e, f, at.x, at.y));
    String near = " near " + NumberText.point(at.x, at.y);
    if (lines.getIntersectionNum() == 2) {
      problems.add(
          new Problem(
              "outline.duplicate",
              place,
              edge(e)
                  + " and "
                  + edge(f)
                  + " lie on each other"
                  + near
                  + (neighbours
                      ? "; the outline folds back, remove the corner between them"
                      : "; draw each edge once")));
    } else if (lines.isProper()) {
      problems.add(
          new Problem(
              "outline.crossing",
              place,
              edge(e)
                  + " crosses "
                  + edge(f)
                  + near
                  + "; move one of their corners or mend the order of the corners"));
    } else {
      problems.add(
          new Problem(
              "outline.crossing",
              place,
              edge(e) + " touches " + edge(f) + near + "; move a corner so that they stand apart"));
    }
  }

  private String edge(int i) {
    return "the edge from corner " + i + " to " + (i + 1) % edges;
  }
}
