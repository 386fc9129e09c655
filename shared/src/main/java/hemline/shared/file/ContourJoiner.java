package hemline.shared.file;

import hemline.shared.geometry.Outline;
import hemline.shared.geometry.Vertex;
import hemline.shared.problem.InputException;
import hemline.shared.problem.Notice;
import hemline.shared.problem.NoticeKind;
import hemline.shared.problem.Problem;
import hemline.shared.units.NumberText;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** Joins the loose runs of a drawing end to end into closed outlines. */
final class ContourJoiner {
  /** Distance at which two ends are one point, m. */
  static final double TOLERANCE = 10e-6;

  private static final int MOST_REPORTED = 5;

  /** Two for each quarter of a square, whose diagonal is shorter than the tolerance. */
  private static final int MOST_IN_SQUARE = 8;

  /** Half of the squares around one; the other half meet it from their side. */
  private static final int[][] NEIGHBOURS = {{1, -1}, {1, 0}, {1, 1}, {0, 1}};

  /** A square of the plane, as wide as the tolerance. */
  private record Square(long i, long j) {
    static Square of(Vertex v) {
      return new Square((long) Math.floor(v.x() / TOLERANCE), (long) Math.floor(v.y() / TOLERANCE));
    }
  }

  private final String file;
  private final List<Contour> open = new ArrayList<>();
  private final List<Outline> outlines = new ArrayList<>();
  private final List<Notice> notices;
  private final List<Problem> problems = new ArrayList<>();

  private ContourJoiner(String file, List<Notice> notices) {
    this.file = file;
    this.notices = notices;
  }

  /**
   * Joins runs.
   *
   * @param notices taken over and added to
   * @throws InputException if a run stays open, a point has more than two edges, or there is
   *     nothing
   */
  static ImportedOutlines join(List<Contour> contours, String file, List<Notice> notices)
      throws InputException {
    ContourJoiner joiner = new ContourJoiner(file, notices);
    joiner.sort(contours);
    joiner.joinOpen();
    if (joiner.problems.isEmpty() && joiner.outlines.isEmpty()) {
      joiner.problems.add(
          new Problem(
              "drawing.empty",
              file,
              "there is no outline in this drawing; draw a closed outline of lines and arcs"));
    }
    if (!joiner.problems.isEmpty()) {
      throw new InputException(joiner.problems);
    }
    return new ImportedOutlines(Alignment.align(joiner.outlines), notices);
  }

  private void sort(List<Contour> contours) {
    Set<List<Vertex>> seen = new HashSet<>();
    int twins = 0;
    for (Contour c : contours) {
      List<Vertex> shape = withoutRepeats(c.vertices(), c.closed());
      Contour clean = new Contour(shape, c.closed(), c.origin());
      boolean twin =
          !seen.add(shape) || (!c.closed() && seen.contains(clean.reversed().vertices()));
      if (shape.size() < 2) {
        continue;
      }
      if (twin) {
        twins++;
      } else if (c.closed()) {
        outlines.add(new Outline(shape));
      } else if (shape.size() > 2 && distance(clean.first(), clean.last()) <= TOLERANCE) {
        outlines.add(new Outline(shape.subList(0, shape.size() - 1)));
      } else {
        open.add(clean);
      }
    }
    if (twins > 0) {
      notices.add(NoticeKind.DRAWING_TWINS.of(twins));
    }
  }

  /** Drops edges without length and bulges too flat to matter. */
  private static List<Vertex> withoutRepeats(List<Vertex> vertices, boolean closed) {
    double size = 0;
    for (Vertex v : vertices) {
      size = Math.max(size, distance(v, vertices.get(0)));
    }
    double least = Math.max(1e-6 * size, 1e-12);
    List<Vertex> out = new ArrayList<>();
    for (Vertex v : vertices) {
      Vertex flat = Math.abs(v.bulge()) < 1e-6 ? new Vertex(v.x(), v.y(), 0) : v;
      if (!out.isEmpty() && distance(out.get(out.size() - 1), flat) <= least) {
        // the later vertex owns the edge that goes on
        out.remove(out.size() - 1);
      }
      out.add(flat);
    }
    if (closed && out.size() > 1 && distance(out.get(out.size() - 1), out.get(0)) <= least) {
      out.remove(out.size() - 1);
    }
    return out;
  }

  private void joinOpen() {
    int[] node = nodes();
    int nodes = Arrays.stream(node).max().orElse(-1) + 1;
    List<List<Integer>> ends = new ArrayList<>();
    for (int i = 0; i < nodes; i++) {
      ends.add(new ArrayList<>());
    }
    for (int e = 0; e < node.length; e++) {
      ends.get(node[e]).add(e);
    }
    for (List<Integer> at : ends) {
      if (at.size() > 2 && problems.size() < MOST_REPORTED) {
        Vertex v = end(at.get(0));
        problems.add(
            new Problem(
                "drawing.branch",
                file,
                at.size()
                    + " edges meet at "
                    + NumberText.point(v.x(), v.y())
                    + " ("
                    + origins(at)
                    + "); an outline has two at each point: remove the others"));
      }
    }
    if (!problems.isEmpty()) {
      return;
    }
    boolean[] used = new boolean[open.size()];
    // chains with a loose end first, so that what is left are closed loops
    for (List<Integer> at : ends) {
      if (at.size() == 1 && !used[at.get(0) / 2]) {
        reportOpen(walk(at.get(0), node, ends, used));
      }
    }
    for (int i = 0; i < open.size(); i++) {
      if (!used[i]) {
        List<Vertex> loop = walk(2 * i, node, ends, used);
        loop.remove(loop.size() - 1);
        outlines.add(new Outline(loop));
      }
    }
  }

  /** Vertices of a chain that begins at an end: 2 i is the first, 2 i + 1 the last of run i. */
  private List<Vertex> walk(int start, int[] node, List<List<Integer>> ends, boolean[] used) {
    List<Vertex> chain = new ArrayList<>();
    int end = start;
    while (true) {
      int run = end / 2;
      used[run] = true;
      Contour c = end % 2 == 0 ? open.get(run) : open.get(run).reversed();
      if (!chain.isEmpty()) {
        chain.remove(chain.size() - 1);
      }
      chain.addAll(c.vertices());
      int far = end ^ 1;
      int next = -1;
      for (int other : ends.get(node[far])) {
        if (other != far && !used[other / 2]) {
          next = other;
        }
      }
      if (next < 0) {
        return chain;
      }
      end = next;
    }
  }

  /**
   * Number of the point each end belongs to; ends within the tolerance are one point.
   *
   * <p>Ends are sorted into squares as wide as the tolerance, so that only ends of neighbouring
   * squares are compared. A square with more than {@link #MOST_IN_SQUARE} ends holds three within
   * the tolerance of each other, by the pigeonhole principle on its quarters; that is a fault
   * whatever the others do, so all its ends count as one point.
   */
  private int[] nodes() {
    int n = 2 * open.size();
    int[] parent = new int[n];
    Map<Square, int[]> squares = new LinkedHashMap<>();
    for (int e = 0; e < n; e++) {
      parent[e] = e;
      int[] held = squares.computeIfAbsent(Square.of(end(e)), s -> new int[MOST_IN_SQUARE + 1]);
      if (held[0] < MOST_IN_SQUARE) {
        held[++held[0]] = e;
      } else {
        for (int k = 1; k <= MOST_IN_SQUARE; k++) {
          parent[root(parent, held[k])] = root(parent, e);
        }
      }
    }
    squares.forEach(
        (square, held) -> {
          for (int k = 1; k < held[0]; k++) {
            joinNear(parent, held[k], held, k + 1);
          }
          for (int[] step : NEIGHBOURS) {
            int[] other = squares.get(new Square(square.i() + step[0], square.j() + step[1]));
            for (int k = 1; other != null && k <= held[0]; k++) {
              joinNear(parent, held[k], other, 1);
            }
          }
        });
    int[] number = new int[n];
    Arrays.fill(number, -1);
    int[] node = new int[n];
    int count = 0;
    for (int i = 0; i < n; i++) {
      int r = root(parent, i);
      if (number[r] < 0) {
        number[r] = count++;
      }
      node[i] = number[r];
    }
    return node;
  }

  /** Joins an end with those of a square, from a place on, that lie within the tolerance. */
  private void joinNear(int[] parent, int e, int[] held, int from) {
    for (int k = from; k <= held[0]; k++) {
      if (distance(end(e), end(held[k])) <= TOLERANCE) {
        parent[root(parent, held[k])] = root(parent, e);
      }
    }
  }

  private static int root(int[] parent, int i) {
    int r = i;
    while (parent[r] != r) {
      parent[r] = parent[parent[r]];
      r = parent[r];
    }
    return r;
  }

  private Vertex end(int e) {
    return e % 2 == 0 ? open.get(e / 2).first() : open.get(e / 2).last();
  }

  private void reportOpen(List<Vertex> chain) {
    if (problems.size() >= MOST_REPORTED) {
      return;
    }
    Vertex a = chain.get(0);
    Vertex b = chain.get(chain.size() - 1);
    problems.add(
        new Problem(
            "drawing.open",
            file,
            "an outline is open: its ends at "
                + NumberText.point(a.x(), a.y())
                + " and "
                + NumberText.point(b.x(), b.y())
                + " are "
                + NumberText.millimetres(distance(a, b))
                + " apart; close it, ends within "
                + NumberText.millimetres(TOLERANCE)
                + " are joined"));
  }

  private String origins(List<Integer> ends) {
    return String.join(", ", ends.stream().limit(4).map(e -> open.get(e / 2).origin()).toList());
  }

  private static double distance(Vertex a, Vertex b) {
    return Math.hypot(b.x() - a.x(), b.y() - a.y());
  }
}
