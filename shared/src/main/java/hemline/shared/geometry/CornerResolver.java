package hemline.shared.geometry;

import hemline.shared.problem.Problem;
import hemline.shared.units.NumberText;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Replaces the corners to be rounded by tangent arcs or chamfers. */
public final class CornerResolver {
  private static final double SLACK = 1e-12;

  private final DrawnOutline drawn;
  private final String place;
  private final List<Problem> problems;
  private int faults;

  private CornerResolver(DrawnOutline drawn, String place, List<Problem> problems) {
    this.drawn = drawn;
    this.place = place;
    this.problems = problems;
  }

  /**
   * The outline with its corners replaced.
   *
   * @param outline roundings resolved, in the order of the drawing
   * @param edge for each edge of the drawing the index of what is left of it in the outline, -1 for
   *     nothing
   */
  public record Resolved(Outline outline, List<Integer> edge) {
    public Resolved {
      edge = List.copyOf(edge);
    }
  }

  /**
   * Resolves the roundings of an outline whose vertices are finite and distinct.
   *
   * @param place name of the outline in messages
   * @param problems takes what is wrong with the roundings
   * @return null if there is a problem
   */
  public static @Nullable Resolved resolve(
      DrawnOutline drawn, String place, List<Problem> problems) {
    return new CornerResolver(drawn, place, problems).run();
  }

  private @Nullable Resolved run() {
    int n = drawn.vertices().size();
    Rounding[] at = new Rounding[n];
    double[] setback = new double[n];
    for (Rounding r : drawn.roundings()) {
      int i = r.vertex();
      if (i < 0 || i >= n) {
        fault("there is no corner " + i + " to round; corners are numbered 0 to " + (n - 1));
      } else if (!(r.size() > 0) || !Double.isFinite(r.size())) {
        fault(
            corner(i)
                + ": the size of a rounding must be positive; leave it out for a sharp corner");
      } else if (at[i] != null) {
        fault(corner(i) + " is rounded twice; keep one of the two");
      } else if (drawn.at(i - 1).bulge() != 0 || drawn.at(i).bulge() != 0) {
        fault(corner(i) + " joins an arc; only corners between straight edges can be rounded");
      } else {
        at[i] = r;
        setback[i] = setback(r);
      }
    }
    if (faults == 0) {
      checkRoom(at, setback);
    }
    return faults == 0 ? build(at, setback) : null;
  }

  /** Length that the corner treatment takes off each edge, m. */
  private double setback(Rounding r) {
    double turn = turn(r.vertex());
    if (Math.abs(turn) < 1e-6) {
      fault(corner(r.vertex()) + " lies on a straight line; there is no corner to round");
      return 0;
    }
    if (Math.PI - Math.abs(turn) < 1e-6) {
      fault(corner(r.vertex()) + " folds back on itself; open the corner before rounding it");
      return 0;
    }
    return r.kind() == Rounding.Kind.CHAMFER ? r.size() : r.size() * Math.tan(0.5 * Math.abs(turn));
  }

  /** Change of direction at a vertex, rad, positive to the left. */
  private double turn(int i) {
    Vertex a = drawn.at(i - 1);
    Vertex b = drawn.at(i);
    Vertex c = drawn.at(i + 1);
    double ux = b.x() - a.x();
    double uy = b.y() - a.y();
    double vx = c.x() - b.x();
    double vy = c.y() - b.y();
    return Math.atan2(ux * vy - uy * vx, ux * vx + uy * vy);
  }

  private void checkRoom(@Nullable Rounding[] at, double[] setback) {
    int n = at.length;
    for (int i = 0; i < n; i++) {
      int j = (i + 1) % n;
      if (at[i] == null && at[j] == null) {
        continue;
      }
      double length = length(i);
      double taken = setback[i] + setback[j];
      if (taken > length * (1 + SLACK)) {
        int who = setback[i] >= setback[j] ? i : j;
        fault(
            corner(who)
                + ": the rounding is too large; the edge from corner "
                + i
                + " to "
                + j
                + " is "
                + NumberText.millimetres(length)
                + " long and its ends would take "
                + NumberText.millimetres(taken)
                + "; make the rounding smaller or the edge longer");
      }
    }
  }

  private double length(int i) {
    Vertex a = drawn.at(i);
    Vertex b = drawn.at(i + 1);
    return Math.hypot(b.x() - a.x(), b.y() - a.y());
  }

  private Resolved build(@Nullable Rounding[] at, double[] setback) {
    int n = at.length;
    List<Vertex> out = new ArrayList<>();
    List<Integer> edge = new ArrayList<>();
    for (int i = 0; i < n; i++) {
      Vertex v = drawn.at(i);
      Rounding r = at[i];
      Vertex leaving = v;
      if (r != null) {
        double bulge = r.kind() == Rounding.Kind.ROUND ? Math.tan(0.25 * turn(i)) : 0;
        out.add(toward(v, drawn.at(i - 1), setback[i] / length(i - 1), bulge));
        leaving = toward(v, drawn.at(i + 1), setback[i] / length(i), 0);
      }
      // two roundings that meet leave nothing of the edge between them
      double taken = setback[i] + setback[(i + 1) % n];
      boolean gone = taken >= length(i) * (1 - 1e-9);
      edge.add(gone ? -1 : out.size());
      if (!gone) {
        out.add(leaving);
      }
    }
    return new Resolved(new Outline(out), edge);
  }

  private static Vertex toward(Vertex from, Vertex to, double fraction, double bulge) {
    return new Vertex(
        from.x() + fraction * (to.x() - from.x()),
        from.y() + fraction * (to.y() - from.y()),
        bulge);
  }

  private String corner(int i) {
    Vertex v = drawn.at(i);
    return "corner " + i + " at " + NumberText.point(v.x(), v.y());
  }

  private void fault(String text) {
    faults++;
    problems.add(new Problem("outline.rounding", place, text));
  }
}
