package hemline.solver.grid;

import hemline.shared.geometry.Outline;
import hemline.shared.geometry.Polygons;
import hemline.shared.geometry.Vertex;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;

/**
 * An outline as grids take it: edges far shorter than any cell are joined to a point.
 *
 * <p>A step of some nanometres, as drawings bring them, would otherwise ask for two grid lines that
 * far apart. Ends of an edge shorter than the reach come to one place; level and upright edges that
 * hang on them stay level and upright, so that a step in a land makes one land. No vertex moves by
 * more than the reach along either axis, and the box around the outline stays, so that gap and
 * width are exact; the area between both outlines is at most the reach times the length of the
 * edges that moved. An outline without such edges is handed back as it is.
 */
public final class FineDetail {
  /** Reach over the gap: an eighteenth of the smallest cell that a land under the lip gets. */
  private static final double REACH = 1e-3;

  private final Outline drawn;
  private final double reach;
  private final NearValues x;
  private final NearValues y;

  /** Number of each drawn vertex in the outline that is left. */
  private final int[] place;

  private final List<Vertex> joined = new ArrayList<>();
  private final Outline outline;

  private FineDetail(Outline drawn, double reach) {
    this.drawn = drawn;
    this.reach = reach;
    List<Vertex> v = drawn.vertices();
    x = new NearValues(v.stream().mapToDouble(Vertex::x).toArray(), reach);
    y = new NearValues(v.stream().mapToDouble(Vertex::y).toArray(), reach);
    place = new int[v.size()];
    Outline left = join();
    if (left == drawn || !sound(left)) {
      joined.clear();
      for (int k = 0; k < place.length; k++) {
        place[k] = k;
      }
      outline = drawn;
    } else {
      outline = left;
    }
  }

  /**
   * Length below which an edge is fine detail, m.
   *
   * @param gap m
   */
  public static double reach(double gap) {
    return REACH * gap;
  }

  /**
   * Joins what is finer than a reach.
   *
   * @param reach m
   */
  public static FineDetail of(Outline drawn, double reach) {
    return new FineDetail(drawn, reach);
  }

  /** The outline without fine detail; the drawn one itself where there is none. */
  public Outline outline() {
    return outline;
  }

  /** Places at which edges were joined, in the frame of the outline. */
  public List<Vertex> joined() {
    return List.copyOf(joined);
  }

  /** Number in {@link #outline} of the edge that leaves a drawn vertex; the edge is no detail. */
  public int edge(int drawnEdge) {
    return place[drawnEdge];
  }

  private Outline join() {
    List<Vertex> v = drawn.vertices();
    int n = v.size();
    int[] fine = IntStream.range(0, n).filter(this::isFine).toArray();
    if (fine.length == 0) {
      return drawn;
    }
    for (int k = 0; k < n; k++) {
      int b = (k + 1) % n;
      boolean straight = v.get(k).bulge() == 0;
      if (straight && v.get(k).y() == v.get(b).y()) {
        y.join(k, b);
        y.weigh(k, Math.abs(v.get(b).x() - v.get(k).x()));
      } else if (straight && v.get(k).x() == v.get(b).x()) {
        x.join(k, b);
        x.weigh(k, Math.abs(v.get(b).y() - v.get(k).y()));
      }
    }
    IntStream.of(fine)
        .boxed()
        .sorted(Comparator.comparingDouble(this::length).thenComparing(k -> k))
        .forEach(this::joinEdge);
    return rest();
  }

  private void joinEdge(int k) {
    int b = (k + 1) % drawn.vertices().size();
    if (x.fit(k, b) && y.fit(k, b)) {
      x.join(k, b);
      y.join(k, b);
    }
  }

  private boolean isFine(int k) {
    return length(k) < reach && Math.abs(drawn.vertices().get(k).bulge()) <= 1;
  }

  private double length(int k) {
    Vertex a = drawn.vertices().get(k);
    Vertex b = drawn.vertices().get((k + 1) % drawn.vertices().size());
    return Math.hypot(b.x() - a.x(), b.y() - a.y());
  }

  /** Moved vertices without those that fell on the next, and without new ones in a level land. */
  private Outline rest() {
    List<Vertex> v = drawn.vertices();
    int n = v.size();
    double[] nx = x.settled();
    double[] ny = y.settled();
    List<Vertex> kept = new ArrayList<>();
    List<Integer> number = new ArrayList<>();
    for (int k = 0; k < n; k++) {
      int b = (k + 1) % n;
      if (nx[k] == nx[b] && ny[k] == ny[b]) {
        Vertex at = new Vertex(nx[k], ny[k]);
        if (joined.isEmpty() || !joined.get(joined.size() - 1).equals(at)) {
          joined.add(at);
        }
      } else {
        kept.add(new Vertex(nx[k], ny[k], v.get(k).bulge()));
        number.add(k);
      }
    }
    for (int k = kept.size() - 1; k >= 0 && kept.size() > 3; k--) {
      int m = kept.size();
      Vertex before = kept.get((k + m - 1) % m);
      Vertex at = kept.get(k);
      if (joined.contains(new Vertex(at.x(), at.y()))
          && runsOn(before, at, kept.get((k + 1) % m))) {
        kept.remove(k);
        number.remove(k);
      }
    }
    for (int k = 0, next = 0; k < n; k++) {
      while (next < number.size() && number.get(next) < k) {
        next++;
      }
      // of a vertex that went: the one before, whose edge took its place
      boolean stays = next < number.size() && number.get(next) == k;
      place[k] = stays ? next : Math.floorMod(next - 1, Math.max(1, number.size()));
    }
    return new Outline(kept);
  }

  private static boolean runsOn(Vertex a, Vertex b, Vertex c) {
    boolean level = a.y() == b.y() && b.y() == c.y() && (b.x() - a.x()) * (c.x() - b.x()) > 0;
    boolean upright = a.x() == b.x() && b.x() == c.x() && (b.y() - a.y()) * (c.y() - b.y()) > 0;
    return a.bulge() == 0 && b.bulge() == 0 && (level || upright);
  }

  private static boolean sound(Outline outline) {
    boolean arc = outline.vertices().stream().anyMatch(v -> v.bulge() != 0);
    return outline.vertices().size() >= (arc ? 2 : 3)
        && Polygons.polygon(outline, 1).isValid()
        && Polygons.signedArea(outline.vertices()) != 0;
  }
}
