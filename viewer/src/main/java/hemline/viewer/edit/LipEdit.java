package hemline.viewer.edit;

import hemline.shared.geometry.Arc;
import hemline.shared.geometry.DrawnOutline;
import hemline.shared.geometry.Rounding;
import hemline.shared.geometry.Vertex;
import hemline.shared.profile.LipDrawing;
import hemline.shared.profile.MountEdge;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;

/**
 * Changes of single vertices, edges and corners of a lip drawing; each answers a new drawing and
 * leaves the given one as it is.
 *
 * <p>A change may leave a drawing that is no lip, with edges that cross: its checks tell.
 */
public final class LipEdit {
  /** An edge whose middle is lifted by less than this share of its length is straight. */
  private static final double STRAIGHT = 0.01;

  private LipEdit() {}

  /** Moves vertices by a distance, m; they come to lie on whole nanometres. */
  public static LipDrawing move(
      LipDrawing drawing, Collection<Corner> corners, double dx, double dy) {
    LipDrawing out = drawing;
    for (Corner corner : corners) {
      Vertex v = Parts.vertex(drawing, corner);
      out = place(out, corner, tidy(v.x() + dx), tidy(v.y() + dy));
    }
    return out;
  }

  /** Without the dust of many small steps. */
  private static double tidy(double metres) {
    return Math.rint(metres * 1e9) / 1e9 + 0.0;
  }

  /** Puts a vertex at a point, m. */
  public static LipDrawing place(LipDrawing drawing, Corner corner, double x, double y) {
    DrawnOutline outline = Parts.of(drawing, corner.part());
    List<Vertex> v = new ArrayList<>(outline.vertices());
    v.set(corner.index(), new Vertex(x, y, v.get(corner.index()).bulge()));
    return Parts.with(drawing, corner.part(), new DrawnOutline(v, outline.roundings()));
  }

  /**
   * Adds a vertex to an edge; an arc is divided into two arcs of the same circle.
   *
   * @param edge the edge that leaves this corner
   * @param x where, m; taken to the nearest point of an arc
   * @param y where, m
   */
  public static LipDrawing insert(LipDrawing drawing, Corner edge, double x, double y) {
    DrawnOutline outline = Parts.of(drawing, edge.part());
    List<Vertex> v = new ArrayList<>(outline.vertices());
    int i = edge.index();
    Vertex a = v.get(i);
    Vertex b = outline.at(i + 1);
    if (a.bulge() == 0) {
      v.add(i + 1, new Vertex(x, y));
    } else {
      Arc arc = Arc.of(a, b);
      double angle = Math.atan2(y - arc.yc(), x - arc.xc());
      double turned = arc.passes(angle) ? ahead(arc, angle) : 0.5 * arc.sweep();
      double at = arc.start() + turned;
      v.set(i, new Vertex(a.x(), a.y(), Math.tan(0.25 * turned)));
      v.add(
          i + 1,
          new Vertex(
              arc.xc() + arc.radius() * Math.cos(at),
              arc.yc() + arc.radius() * Math.sin(at),
              Math.tan(0.25 * (arc.sweep() - turned))));
    }
    List<Rounding> roundings =
        outline.roundings().stream()
            .map(r -> r.vertex() > i ? new Rounding(r.vertex() + 1, r.kind(), r.size()) : r)
            .toList();
    LipDrawing out = Parts.with(drawing, edge.part(), new DrawnOutline(v, roundings));
    boolean later = edge.part() == 0 && i < drawing.mountEdge();
    return later ? Parts.with(out, out.body(), drawing.mountEdge() + 1, out.detached()) : out;
  }

  private static double ahead(Arc arc, double angle) {
    double turn = 2 * Math.PI;
    double along = (arc.sweep() > 0 ? angle - arc.start() : arc.start() - angle) % turn;
    double positive = along < 0 ? along + turn : along;
    return arc.sweep() > 0 ? positive : -positive;
  }

  /**
   * Takes several vertices away, as {@link #delete(LipDrawing, Corner)} does one; a detached part
   * of which all vertices are among them goes as a whole.
   */
  public static LipDrawing delete(LipDrawing drawing, Collection<Corner> corners) {
    LipDrawing out = drawing;
    for (int part = Parts.count(drawing) - 1; part >= 0; part--) {
      int number = part;
      List<Integer> indices =
          corners.stream()
              .filter(c -> c.part() == number)
              .map(Corner::index)
              .sorted(Comparator.reverseOrder())
              .toList();
      if (part > 0 && indices.size() > Parts.of(drawing, part).vertices().size() - 3) {
        out = deletePart(out, part);
      } else {
        // from the back, so that earlier indices stay true
        for (int index : indices) {
          out = delete(out, new Corner(part, index));
        }
      }
    }
    return out;
  }

  /**
   * Takes a vertex away; its neighbours are joined by a straight edge. A detached part that would
   * have fewer than three vertices goes as a whole.
   *
   * @return the drawing as it was when the body has only three vertices
   */
  public static LipDrawing delete(LipDrawing drawing, Corner corner) {
    DrawnOutline outline = Parts.of(drawing, corner.part());
    int n = outline.vertices().size();
    if (n <= 3 && corner.part() > 0) {
      return deletePart(drawing, corner.part());
    }
    if (n <= 3) {
      return drawing;
    }
    int i = corner.index();
    List<Vertex> v = new ArrayList<>(outline.vertices());
    int before = Math.floorMod(i - 1, n);
    v.set(before, new Vertex(v.get(before).x(), v.get(before).y()));
    v.remove(i);
    List<Rounding> roundings =
        outline.roundings().stream()
            .filter(r -> r.vertex() != i)
            .map(r -> r.vertex() > i ? new Rounding(r.vertex() - 1, r.kind(), r.size()) : r)
            .toList();
    DrawnOutline rest = new DrawnOutline(v, roundings);
    if (corner.part() > 0) {
      return Parts.with(drawing, corner.part(), rest);
    }
    int mount = drawing.mountEdge();
    boolean hit = i == mount || i == (mount + 1) % n;
    int kept = Math.floorMod(i < mount ? mount - 1 : mount, n - 1);
    return Parts.with(
        drawing, rest, hit ? MountEdge.findAtTop(v).orElse(kept) : kept, drawing.detached());
  }

  /**
   * Gives an edge a bulge, 0 for a straight edge; roundings at the ends of an arc go, since only
   * corners between straight edges can have one.
   */
  public static LipDrawing bend(LipDrawing drawing, Corner edge, double bulge) {
    DrawnOutline outline = Parts.of(drawing, edge.part());
    List<Vertex> v = new ArrayList<>(outline.vertices());
    int i = edge.index();
    v.set(i, new Vertex(v.get(i).x(), v.get(i).y(), bulge));
    int j = (i + 1) % v.size();
    List<Rounding> roundings =
        outline.roundings().stream()
            .filter(r -> bulge == 0 || r.vertex() != i && r.vertex() != j)
            .toList();
    return Parts.with(drawing, edge.part(), new DrawnOutline(v, roundings));
  }

  /** Bends an edge so that its middle comes as near to a point, m, as an arc over it can. */
  public static LipDrawing bendThrough(LipDrawing drawing, Corner edge, double x, double y) {
    Vertex a = Parts.vertex(drawing, edge);
    Vertex b = Parts.vertex(drawing, Parts.next(drawing, edge));
    double dx = b.x() - a.x();
    double dy = b.y() - a.y();
    double length = Math.hypot(dx, dy);
    if (length == 0) {
      return drawing;
    }
    // an arc that turns left lies on the right of its chord
    double lift = ((x - 0.5 * (a.x() + b.x())) * dy - (y - 0.5 * (a.y() + b.y())) * dx) / length;
    double bulge = 2 * lift / length;
    double limited = Math.max(-4, Math.min(4, bulge));
    return bend(drawing, edge, Math.abs(limited) < 2 * STRAIGHT ? 0 : limited);
  }

  /** Rounds or breaks a corner by a size, m; a size of zero leaves it sharp. */
  public static LipDrawing dress(
      LipDrawing drawing, Corner corner, Rounding.Kind kind, double size) {
    DrawnOutline outline = Parts.of(drawing, corner.part());
    List<Rounding> roundings = new ArrayList<>(outline.roundings());
    roundings.removeIf(r -> r.vertex() == corner.index());
    if (size > 0) {
      roundings.add(new Rounding(corner.index(), kind, size));
    }
    return Parts.with(drawing, corner.part(), new DrawnOutline(outline.vertices(), roundings));
  }

  /** Makes an edge as long as given, m, by moving its end along it. */
  public static LipDrawing length(LipDrawing drawing, Corner edge, double length) {
    Vertex a = Parts.vertex(drawing, edge);
    Corner end = Parts.next(drawing, edge);
    Vertex b = Parts.vertex(drawing, end);
    double now = Math.hypot(b.x() - a.x(), b.y() - a.y());
    if (now == 0) {
      return drawing;
    }
    double f = length / now;
    return place(drawing, end, a.x() + f * (b.x() - a.x()), a.y() + f * (b.y() - a.y()));
  }

  /** Fixes the lip to the skirt by another edge of its body. */
  public static LipDrawing mount(LipDrawing drawing, int edge) {
    return Parts.with(drawing, drawing.body(), edge, drawing.detached());
  }

  /** Adds a detached part, which the air passes on all sides. */
  public static LipDrawing addPart(LipDrawing drawing, DrawnOutline outline) {
    List<DrawnOutline> detached = new ArrayList<>(drawing.detached());
    detached.add(outline);
    return Parts.with(drawing, drawing.body(), drawing.mountEdge(), detached);
  }

  /**
   * Takes a detached part away.
   *
   * @param part its number, from 1
   */
  public static LipDrawing deletePart(LipDrawing drawing, int part) {
    List<DrawnOutline> detached = new ArrayList<>(drawing.detached());
    detached.remove(part - 1);
    return Parts.with(drawing, drawing.body(), drawing.mountEdge(), detached);
  }
}
