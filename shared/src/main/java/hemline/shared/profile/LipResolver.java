package hemline.shared.profile;

import hemline.shared.geometry.Arc;
import hemline.shared.geometry.Box;
import hemline.shared.geometry.CornerResolver;
import hemline.shared.geometry.DrawnOutline;
import hemline.shared.geometry.Outline;
import hemline.shared.geometry.OutlineChecks;
import hemline.shared.geometry.Polygons;
import hemline.shared.geometry.ThinParts;
import hemline.shared.geometry.Vertex;
import hemline.shared.problem.InputException;
import hemline.shared.problem.PlainText;
import hemline.shared.problem.Problem;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Checks a lip drawing and turns it into a profile.
 *
 * <p>The profile has its roundings as arcs, runs counter-clockwise, stands with its lowest point at
 * y = 0 and has its ambient edge (smallest x) at x = 0.
 */
public final class LipResolver {
  /** Most detached parts of a lip. */
  public static final int MOST_PARTS = 50;

  private LipResolver() {}

  /** Checks a drawing and resolves it; nothing is thrown for a bad drawing. */
  public static LipFindings check(LipDrawing drawing) {
    return check(drawing, true);
  }

  /**
   * Checks all but thin walls and narrow slots, which take some ms to find: what a hand that drags
   * can wait for. The profile is that of {@link #check}, unless that finds slivers.
   */
  public static LipFindings checkShape(LipDrawing drawing) {
    return check(drawing, false);
  }

  private static LipFindings check(LipDrawing drawing, boolean thinParts) {
    List<Problem> problems = new ArrayList<>();
    if (drawing.detached().size() > MOST_PARTS) {
      return LipFindings.of(
          List.of(
              new Problem(
                  "lip.detached",
                  "detached",
                  "the lip has "
                      + drawing.detached().size()
                      + " detached parts; at most "
                      + MOST_PARTS
                      + " are possible")));
    }
    String wrong = PlainText.faultOfName(drawing.name());
    if (!wrong.isEmpty()) {
      problems.add(new Problem("lip.name", "name", "the name " + wrong));
    }
    List<Outline> bodies = new ArrayList<>();
    Integer mountEdge = addBody(drawing.body(), drawing.mountEdge(), "outline", bodies, problems);
    for (int i = 0; i < drawing.detached().size(); i++) {
      addBody(drawing.detached().get(i), 0, "detached[" + i + "]", bodies, problems);
    }
    if (!problems.isEmpty() || mountEdge == null) {
      return LipFindings.of(problems);
    }
    problems.addAll(LipChecks.problems(drawing, bodies, mountEdge));
    if (problems.isEmpty() && thinParts) {
      problems.addAll(LipChecks.slivers(drawing, bodies));
    }
    if (!problems.isEmpty()) {
      return LipFindings.of(problems);
    }
    List<ThinParts.Part> walls = thinParts ? LipChecks.thinWalls(bodies) : List.of();
    List<ThinParts.Part> slots = thinParts ? LipChecks.narrowSlots(bodies) : List.of();
    return new LipFindings(
        List.of(),
        LipChecks.notices(drawing, walls, slots),
        walls,
        slots,
        place(drawing, bodies, mountEdge));
  }

  /**
   * The profile of a drawing.
   *
   * @throws InputException with every problem of the drawing
   */
  public static LipProfile resolve(LipDrawing drawing) throws InputException {
    return check(drawing).orThrow();
  }

  /** Adds a body counter-clockwise; answers the index of an edge of the drawing in it. */
  private static @Nullable Integer addBody(
      DrawnOutline drawn,
      int drawnEdge,
      String place,
      List<Outline> bodies,
      List<Problem> problems) {
    List<Problem> own = new ArrayList<>(OutlineChecks.check(drawn, place));
    CornerResolver.Resolved resolved =
        own.isEmpty() ? CornerResolver.resolve(drawn, place, own) : null;
    int n = drawn.vertices().size();
    if (resolved != null && (drawnEdge < 0 || drawnEdge >= n)) {
      own.add(
          new Problem(
              "lip.mountEdge",
              "mountEdge",
              "there is no edge "
                  + drawnEdge
                  + "; edges are numbered 0 to "
                  + (n - 1)
                  + ", edge i running from corner i to the next"));
    }
    problems.addAll(own);
    if (resolved == null || !own.isEmpty()) {
      return null;
    }
    Outline outline = resolved.outline();
    int edge = resolved.edge().get(drawnEdge);
    if (Polygons.signedArea(outline.vertices()) < 0) {
      int m = outline.vertices().size();
      outline = Polygons.reversed(outline);
      edge = edge < 0 ? -1 : Math.floorMod(m - 2 - edge, m);
    }
    bodies.add(outline);
    return edge;
  }

  private static LipProfile place(LipDrawing drawing, List<Outline> bodies, int mountEdge) {
    Box box = Box.around(bodies);
    double low = box.bottom();
    Outline body = bodies.get(0);
    int shifted = mountEdge + lowPointsBefore(body, mountEdge, low);
    List<Outline> placed = new ArrayList<>();
    for (Outline b : bodies) {
      placed.add(Polygons.moved(splitAtLowest(b, low), -box.left(), -low));
    }
    return new LipProfile(
        drawing.name(),
        drawing.family(),
        drawing.notes(),
        placed.get(0),
        shifted,
        placed.subList(1, placed.size()));
  }

  /** A vertex at the bottom of each arc that reaches the lowest level, so that it is exact. */
  private static Outline splitAtLowest(Outline outline, double low) {
    List<Vertex> out = new ArrayList<>();
    List<Vertex> v = outline.vertices();
    for (int i = 0; i < v.size(); i++) {
      Vertex a = v.get(i);
      Vertex b = v.get((i + 1) % v.size());
      if (!bottomsOut(a, b, low)) {
        out.add(a);
        continue;
      }
      Arc arc = Arc.of(a, b);
      double turn = 2 * Math.PI;
      double down = -0.5 * Math.PI;
      double first =
          arc.sweep() > 0
              ? ((down - arc.start()) % turn + turn) % turn
              : -(((arc.start() - down) % turn + turn) % turn);
      out.add(new Vertex(a.x(), a.y(), Math.tan(0.25 * first)));
      out.add(new Vertex(arc.xc(), low, Math.tan(0.25 * (arc.sweep() - first))));
    }
    return new Outline(out);
  }

  private static int lowPointsBefore(Outline outline, int edge, double low) {
    List<Vertex> v = outline.vertices();
    int count = 0;
    for (int i = 0; i < edge; i++) {
      count += bottomsOut(v.get(i), v.get((i + 1) % v.size()), low) ? 1 : 0;
    }
    return count;
  }

  private static boolean bottomsOut(Vertex a, Vertex b, double low) {
    if (a.bulge() == 0) {
      return false;
    }
    Arc arc = Arc.of(a, b);
    return arc.passes(-0.5 * Math.PI) && arc.yc() - arc.radius() <= low + 1e-9 * arc.radius();
  }
}
