package hemline.viewer.screen;

import hemline.shared.geometry.Rounding;
import hemline.shared.geometry.Vertex;
import hemline.shared.profile.LipDrawing;
import hemline.viewer.draw.Edges;
import hemline.viewer.edit.Corner;
import hemline.viewer.edit.LipEdit;
import hemline.viewer.edit.Parts;
import hemline.viewer.model.Selection;
import hemline.viewer.model.Workbench;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** Changes of the chosen corners and edges, for keys, menus and buttons alike. */
public final class BoardActions {
  /** Bulge of an edge that is bent by command: its middle leaves the chord by a fifth of it. */
  private static final double USUAL_BULGE = 0.4;

  private final Workbench bench;
  private final Selection selection;

  public BoardActions(Workbench bench, Selection selection) {
    this.bench = bench;
    this.selection = selection;
  }

  /** The one chosen corner; null when none or several are chosen. */
  @Nullable Corner corner() {
    Set<Corner> chosen = selection.get();
    return chosen.size() == 1 ? chosen.iterator().next() : null;
  }

  /** The chosen edge, by the corner it leaves; null unless just its two ends are chosen. */
  @Nullable Corner edge() {
    Set<Corner> chosen = selection.get();
    if (chosen.size() != 2) {
      return null;
    }
    LipDrawing d = bench.drawing().get();
    for (Corner corner : chosen) {
      if (chosen.contains(Parts.next(d, corner))) {
        return corner;
      }
    }
    return null;
  }

  /** Chooses an edge by both its ends. */
  void chooseEdge(Corner edge) {
    selection.set(Set.of(edge, Parts.next(bench.drawing().get(), edge)));
  }

  /** Moves the chosen corners. */
  void nudge(double dx, double dy) {
    Set<Corner> chosen = selection.get();
    bench.edit(d -> LipEdit.move(d, chosen, dx, dy));
  }

  /** Takes the chosen corners away. */
  public void delete() {
    Set<Corner> chosen = selection.get();
    bench.edit(d -> LipEdit.delete(d, chosen));
    selection.clear();
  }

  /** Takes the detached part of the chosen corner away; nothing for the body. */
  void deletePart() {
    selection.get().stream()
        .map(Corner::part)
        .filter(part -> part > 0)
        .findFirst()
        .ifPresent(part -> bench.edit(d -> LipEdit.deletePart(d, part)));
    selection.clear();
  }

  /** Chooses the corner a number of steps after the chosen one. */
  public void choose(int by) {
    List<Corner> all = Parts.corners(bench.drawing().get());
    Corner now = selection.get().stream().findFirst().orElse(null);
    int at = now == null ? (by > 0 ? -1 : 0) : all.indexOf(now);
    selection.set(Set.of(all.get(Math.floorMod(at + by, all.size()))));
  }

  /** Chooses all corners. */
  public void chooseAll() {
    selection.set(Set.copyOf(Parts.corners(bench.drawing().get())));
  }

  /** Chooses the edge that leaves the chosen corner. */
  public void chooseEdgeAfter() {
    Corner corner = corner();
    if (corner != null) {
      chooseEdge(corner);
    }
  }

  /** Adds a corner in the middle of the chosen edge, or of the one that leaves the corner. */
  public void insert() {
    Corner edge = edge() == null ? corner() : edge();
    if (edge != null) {
      double[] m = BoardFind.middle(bench.drawing().get(), edge);
      insert(edge, m[0], m[1]);
    }
  }

  /** Adds a corner to an edge at the point nearest to a place, m. */
  void insert(Corner edge, double x, double y) {
    LipDrawing d = bench.drawing().get();
    Vertex a = Parts.vertex(d, edge);
    Vertex b = Parts.vertex(d, Parts.next(d, edge));
    double[] at = a.bulge() == 0 ? Edges.foot(a, b, x, y) : new double[] {x, y};
    bench.edit(now -> LipEdit.insert(now, edge, at[0], at[1]));
    selection.set(Set.of(new Corner(edge.part(), edge.index() + 1)));
  }

  /** Makes the chosen edge an arc, or an arc straight. */
  public void bend() {
    Corner edge = edge() == null ? corner() : edge();
    if (edge != null) {
      boolean straight = Parts.vertex(bench.drawing().get(), edge).bulge() == 0;
      bench.edit(d -> LipEdit.bend(d, edge, straight ? USUAL_BULGE : 0));
    }
  }

  /** Rounds or breaks the chosen corners; a size of zero leaves them sharp. */
  public void dress(Rounding.Kind kind, double size) {
    Set<Corner> chosen = selection.get();
    bench.edit(
        d -> {
          LipDrawing out = d;
          for (Corner corner : chosen) {
            out = LipEdit.dress(out, corner, kind, size);
          }
          return out;
        });
  }

  /** Fixes the lip to the skirt by the chosen edge. */
  public void mount() {
    Corner edge = edge() == null ? corner() : edge();
    if (edge != null && edge.part() == 0) {
      bench.edit(d -> LipEdit.mount(d, edge.index()));
    }
  }
}
