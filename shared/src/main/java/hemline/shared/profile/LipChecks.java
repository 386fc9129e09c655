package hemline.shared.profile;

import hemline.shared.geometry.Outline;
import hemline.shared.geometry.Polygons;
import hemline.shared.geometry.ThinParts;
import hemline.shared.geometry.Vertex;
import hemline.shared.problem.Notice;
import hemline.shared.problem.NoticeKind;
import hemline.shared.problem.Problem;
import hemline.shared.units.NumberText;
import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Polygon;

/** What can be wrong with a lip as a whole, once each of its outlines is sound. */
final class LipChecks {
  /** Thinnest wall that prints well, m; common practice, no source. */
  private static final double PRINTABLE_WALL = 0.8e-3;

  /** Narrowest slot that stays open in print, m; common practice, no source. */
  private static final double PRINTABLE_SLOT = 0.4e-3;

  private static final double SMALLEST = 0.1e-3;
  private static final double LARGEST = 1;

  /** Closest distance of two bodies, and thinnest wall that the mesh can hold, m. */
  private static final double CLOSEST = 10e-6;

  /** Length over width of a thin part that is worth a notice, and of one that is an error. */
  private static final double THIN = 1.25;

  private static final double SLIVER = 10;

  private static final double LEVEL = 1e-9;
  private static final int MOST_REPORTED = 3;

  private LipChecks() {}

  static List<Problem> problems(LipDrawing drawing, List<Outline> bodies, int mountEdge) {
    List<Problem> problems = new ArrayList<>();
    List<Polygon> polygons = bodies.stream().map(b -> Polygons.polygon(b, 1)).toList();
    Envelope box = new Envelope();
    polygons.forEach(p -> box.expandToInclude(p.getEnvelopeInternal()));
    checkSize(box, problems);
    if (problems.isEmpty()) {
      checkMount(drawing, bodies.get(0), mountEdge, box, problems);
      checkApart(polygons, problems);
    }
    return problems;
  }

  /** Walls thinner than few printers hold. */
  static List<ThinParts.Part> thinWalls(List<Outline> bodies) {
    return ThinParts.thinWalls(bodies, PRINTABLE_WALL, THIN);
  }

  /** Slots narrower than stay open in print. */
  static List<ThinParts.Part> narrowSlots(List<Outline> bodies) {
    return ThinParts.narrowSlots(bodies, PRINTABLE_SLOT, THIN);
  }

  static List<Notice> notices(
      LipDrawing drawing, List<ThinParts.Part> walls, List<ThinParts.Part> slots) {
    List<Notice> notices = new ArrayList<>();
    for (ThinParts.Part part : first(walls)) {
      notices.add(nearest(drawing, part).notice(NoticeKind.LIP_THIN, PRINTABLE_WALL));
    }
    for (ThinParts.Part part : first(slots)) {
      notices.add(nearest(drawing, part).notice(NoticeKind.LIP_NARROW, PRINTABLE_SLOT));
    }
    return notices;
  }

  private static void checkSize(Envelope box, List<Problem> problems) {
    double size = Math.max(box.getWidth(), box.getHeight());
    String cure = "; a lip is between 0.1 mm and 1 m across: check the length unit";
    if (size < SMALLEST) {
      problems.add(
          new Problem(
              "lip.size",
              "outline",
              "the lip is only " + NumberText.significant(1000 * size, 3) + " mm across" + cure));
    } else if (size > LARGEST) {
      problems.add(
          new Problem(
              "lip.size",
              "outline",
              "the lip is " + NumberText.significant(size, 3) + " m across" + cure));
    }
  }

  private static void checkMount(
      LipDrawing drawing, Outline body, int mountEdge, Envelope box, List<Problem> problems) {
    int drawn = drawing.mountEdge();
    String edge =
        "edge "
            + drawn
            + " (from corner "
            + drawn
            + " to "
            + (drawn + 1) % drawing.body().vertices().size()
            + ")";
    if (mountEdge < 0) {
      problems.add(mount(edge + " is used up by the roundings at its ends; make them smaller"));
      return;
    }
    List<Vertex> v = body.vertices();
    Vertex a = v.get(mountEdge);
    Vertex b = v.get((mountEdge + 1) % v.size());
    double tolerance = LEVEL * Math.max(box.getWidth(), box.getHeight());
    if (a.bulge() != 0) {
      problems.add(mount(edge + " is an arc; the mount edge must be straight and level"));
    } else if (Math.abs(a.y() - b.y()) > tolerance) {
      problems.add(
          mount(
              edge
                  + " is not level; the mount edge must be straight and level, its ends differ by "
                  + NumberText.millimetres(Math.abs(a.y() - b.y()))));
    } else if (box.getMaxY() - a.y() > tolerance) {
      String bottom =
          a.y() - box.getMinY() <= tolerance
              ? edge + " is at the bottom, so nothing hangs down to the ground"
              : edge
                  + " has parts of the lip above it, up to "
                  + NumberText.millimetres(box.getMaxY() - a.y());
      String hint =
          MountEdge.findAtTop(drawing.body().vertices()).isPresent()
              ? "; choose the top edge, "
                  + MountEdge.findAtTop(drawing.body().vertices()).getAsInt()
              : "; draw a level edge at the top";
      problems.add(mount(bottom + hint));
    }
  }

  private static Problem mount(String text) {
    return new Problem("lip.mountEdge", "mountEdge", text);
  }

  private static void checkApart(List<Polygon> polygons, List<Problem> problems) {
    for (int i = 0; i < polygons.size(); i++) {
      for (int j = i + 1; j < polygons.size(); j++) {
        double distance = polygons.get(i).distance(polygons.get(j));
        if (distance < CLOSEST) {
          problems.add(
              new Problem(
                  "lip.overlap",
                  body(j),
                  (distance == 0 ? "overlaps or touches " : "nearly touches ")
                      + body(i)
                      + "; draw them as one outline or move them apart by at least "
                      + NumberText.millimetres(CLOSEST)));
        }
      }
    }
  }

  /** Walls and slots that the mesh cannot hold. */
  static List<Problem> slivers(LipDrawing drawing, List<Outline> bodies) {
    List<Problem> problems = new ArrayList<>();
    for (ThinParts.Part part : first(ThinParts.thinWalls(bodies, CLOSEST, SLIVER))) {
      problems.add(sliver("the wall", drawing, part));
    }
    for (ThinParts.Part part : first(ThinParts.narrowSlots(bodies, CLOSEST, SLIVER))) {
      problems.add(sliver("the slot", drawing, part));
    }
    return problems;
  }

  private static Problem sliver(String what, LipDrawing drawing, ThinParts.Part part) {
    return new Problem(
        "lip.sliver",
        "outline",
        what
            + " near "
            + nearest(drawing, part)
            + " is less than "
            + NumberText.millimetres(CLOSEST)
            + " wide; widen it or leave it out");
  }

  private static List<ThinParts.Part> first(List<ThinParts.Part> parts) {
    return parts.subList(0, Math.min(MOST_REPORTED, parts.size()));
  }

  private static String body(int i) {
    return i == 0 ? "outline" : "detached[" + (i - 1) + "]";
  }

  /** A drawn vertex; the name of its body is empty for the main one. */
  private record Corner(String body, int number, Vertex at) {
    Notice notice(NoticeKind kind, double least) {
      return kind.of(body, number, at.x(), at.y(), least);
    }

    @Override
    public String toString() {
      return (body.isEmpty() ? "" : body + " ")
          + "corner "
          + number
          + " at "
          + NumberText.point(at.x(), at.y());
    }
  }

  /** The drawn vertex nearest to a part. */
  private static Corner nearest(LipDrawing drawing, ThinParts.Part part) {
    double best = Double.POSITIVE_INFINITY;
    Corner corner = new Corner("", 0, drawing.body().vertices().get(0));
    for (int k = 0; k <= drawing.detached().size(); k++) {
      List<Vertex> v = (k == 0 ? drawing.body() : drawing.detached().get(k - 1)).vertices();
      for (int i = 0; i < v.size(); i++) {
        double distance = Math.hypot(v.get(i).x() - part.x(), v.get(i).y() - part.y());
        if (distance < best) {
          best = distance;
          corner = new Corner(k == 0 ? "" : body(k), i, v.get(i));
        }
      }
    }
    return corner;
  }
}
