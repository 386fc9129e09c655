package hemline.solver.improve;

import hemline.shared.geometry.Rounding;
import hemline.shared.geometry.Vertex;
import hemline.shared.profile.LipDrawing;
import java.util.ArrayList;
import java.util.List;

/**
 * Corners of a lip that is alike from ambient and from the plenum and stays so: what moves on one
 * side moves on the other, corners in the middle move up and down alone.
 */
public final class MirroredSpace implements LipSpace {
  /** Corners this close to their mirror image are it, m. */
  private static final double SAME = 1e-6;

  private final LipDrawing start;
  private final double axis;
  private final List<Move> moves = new ArrayList<>();
  private final List<NamedLength> lengths = new ArrayList<>();

  /** A coordinate of a corner that moves with that of another. */
  private record Move(int corner, int other, boolean upwards) {}

  /**
   * Corners of a lip, each with its mirror image.
   *
   * @param start for which {@link #fault} found nothing wrong
   * @param corners numbers of vertices of the outline; one of a pair stands for both
   * @param reach how far a corner moves to either side at most, m
   */
  public MirroredSpace(LipDrawing start, List<Integer> corners, double reach) {
    this.start = start;
    this.axis = axis(start);
    for (int corner : corners) {
      int other = image(start, corner);
      int first = Math.min(corner, other);
      if (moves.stream().noneMatch(m -> m.corner() == first)) {
        if (other != corner) {
          add(first, false, reach);
        }
        add(first, true, reach);
      }
    }
  }

  private void add(int corner, boolean upwards, double reach) {
    Vertex v = start.body().at(corner);
    double at = upwards ? v.y() : v.x();
    moves.add(new Move(corner, image(start, corner), upwards));
    lengths.add(new NamedLength((upwards ? "y" : "x") + corner, at - reach, at + reach));
  }

  /**
   * What keeps a lip from being alike on both sides.
   *
   * @return a corner without its like; empty for none
   */
  public static String fault(LipDrawing lip) {
    int n = lip.body().vertices().size();
    for (int k = 0; k < n; k++) {
      int other = image(lip, k);
      if (other < 0
          || image(lip, (k + 1) % n) != Math.floorMod(other - 1, n)
          || Math.abs(lip.body().at(k).bulge() - lip.body().at(other - 1).bulge()) > SAME
          || Math.abs(rounding(lip, k) - rounding(lip, other)) > SAME) {
        return "corner " + k + " has no like on the other side";
      }
    }
    return lip.detached().isEmpty() ? "" : "it has parts that hang free";
  }

  private static double axis(LipDrawing lip) {
    double left = lip.body().vertices().stream().mapToDouble(Vertex::x).min().orElse(0);
    double right = lip.body().vertices().stream().mapToDouble(Vertex::x).max().orElse(0);
    return 0.5 * (left + right);
  }

  /** The corner opposite; -1 for none. */
  private static int image(LipDrawing lip, int corner) {
    List<Vertex> all = lip.body().vertices();
    double x = 2 * axis(lip) - all.get(corner).x();
    for (int k = 0; k < all.size(); k++) {
      if (Math.hypot(all.get(k).x() - x, all.get(k).y() - all.get(corner).y()) < SAME) {
        return k;
      }
    }
    return -1;
  }

  /** Radius of a rounded corner, the negative length of a chamfer, 0 for a sharp one. */
  private static double rounding(LipDrawing lip, int corner) {
    return lip.body().roundings().stream()
        .filter(r -> r.vertex() == corner)
        .mapToDouble(r -> r.kind() == Rounding.Kind.ROUND ? r.size() : -r.size())
        .sum();
  }

  @Override
  public List<NamedLength> lengths() {
    return lengths;
  }

  @Override
  public LipDrawing drawing(double[] values) {
    List<Vertex> v = new ArrayList<>(start.body().vertices());
    for (int i = 0; i < values.length; i++) {
      Move m = moves.get(i);
      move(v, m.corner(), m.upwards(), values[i]);
      if (m.other() != m.corner()) {
        move(v, m.other(), m.upwards(), m.upwards() ? values[i] : 2 * axis - values[i]);
      }
    }
    return CornerSpace.with(start, v);
  }

  private static void move(List<Vertex> all, int corner, boolean upwards, double to) {
    Vertex v = all.get(corner);
    all.set(corner, new Vertex(upwards ? v.x() : to, upwards ? to : v.y(), v.bulge()));
  }
}
