package hemline.solver.plenum;

import hemline.shared.geometry.Outline;
import hemline.shared.profile.LipProfile;
import hemline.shared.vehicle.FloorOutline;
import hemline.shared.vehicle.Machine;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/**
 * The seal cut into short strips of one gap each: the points of Gauss's rule on every straight
 * piece of the outline, and the corners, half of each on the edge before and half on the one after.
 *
 * <p>Corners: where the seal turns by φ, air also comes in from the corner itself, as if the seal
 * were longer by one gap for each right angle of turn. That allowance is a guess, so its band runs
 * from none to two gaps. Besides, the outer edge of a lip of width b is longer by b φ than the line
 * of the floor on which the plenum side stands, in corners and along arcs (shorter where the
 * outline turns inwards): the band reaches to that, since the line that rules the leak lies between
 * the two.
 */
final class SealStrips {
  /** Three-point rule of Gauss on 0 to 1: exact for gaps that vary along a piece. */
  private static final double[] PLACE = {0.5 - Math.sqrt(0.15), 0.5, 0.5 + Math.sqrt(0.15)};

  private static final double[] WEIGHT = {5.0 / 18, 8.0 / 18, 5.0 / 18};

  private static final double[] MIDDLE = {0.5};
  private static final double[] WHOLE = {1};

  /** Arcs are cut into pieces that turn by less; that is no corner. */
  private static final double LEAST_TURN = 1.01 * FloorOutline.FINEST_TURN;

  final int count;
  final int[] edge;
  final double[] x;
  final double[] y;

  /** Length of seal, m; 0 at corners. */
  final double[] length;

  /** Turn of the seal over a right angle; 0 on strips. */
  final double[] turn;

  final double[] gap;
  final double[] facing;
  final LeakLaw[] law;

  /** What the outer edge of the lip has more than the line of the floor, m. */
  final double[] spread;

  /** Corner of the floor; -1 on strips along edges. */
  final int[] vertex;

  SealStrips(Machine machine, Map<String, LeakLaw> laws) {
    FloorOutline floor = machine.floor();
    List<double[]> rows = new ArrayList<>();
    List<LeakLaw> lawOf = new ArrayList<>();
    List<FloorOutline.Piece> pieces = floor.pieces();
    double[] width = floor.edges().stream().mapToDouble(e -> width(e.lip())).toArray();
    for (int k = 0; k < pieces.size(); k++) {
      FloorOutline.Piece p = pieces.get(k);
      LeakLaw l = lawOf(machine, laws, p.edge());
      double h = floor.edges().get(p.edge()).gap();
      boolean arc = floor.vertices().get(p.edge()).bulge() != 0;
      double[] place = arc ? MIDDLE : PLACE;
      double[] weight = arc ? WHOLE : WEIGHT;
      double wider = arc ? width[p.edge()] * sweep(floor, pieces, p.edge()) : 0;
      for (int g = 0; g < place.length; g++) {
        double t = place[g];
        double x = p.x0() + t * (p.x1() - p.x0());
        double y = p.y0() + t * (p.y1() - p.y0());
        rows.add(
            new double[] {
              p.edge(), x, y, weight[g] * p.length(), 0, h, p.outwardX(), weight[g] * wider, -1
            });
        lawOf.add(l);
      }
      FloorOutline.Piece next = pieces.get((k + 1) % pieces.size());
      double turned =
          Math.atan2(
              p.outwardX() * next.outwardY() - p.outwardY() * next.outwardX(),
              p.outwardX() * next.outwardX() + p.outwardY() * next.outwardY());
      if (Math.abs(turned) > LEAST_TURN) {
        double facing = 0.5 * (p.outwardX() + next.outwardX());
        double turn = Math.max(0, turned) / Math.PI; // half of the corner over a right angle
        for (int e : new int[] {p.edge(), next.edge()}) {
          double gap = floor.edges().get(e).gap();
          double more = 0.5 * width[e] * turned;
          rows.add(new double[] {e, p.x1(), p.y1(), 0, turn, gap, facing, more, next.edge()});
          lawOf.add(lawOf(machine, laws, e));
        }
      }
    }
    count = rows.size();
    edge = rows.stream().mapToInt(r -> (int) r[0]).toArray();
    x = column(rows, 1);
    y = column(rows, 2);
    length = column(rows, 3);
    turn = column(rows, 4);
    gap = column(rows, 5);
    facing = column(rows, 6);
    spread = column(rows, 7);
    vertex = rows.stream().mapToInt(r -> (int) r[8]).toArray();
    law = lawOf.toArray(LeakLaw[]::new);
  }

  /** Angle by which the seal turns along each piece of an arc, rad. */
  private static double sweep(FloorOutline floor, List<FloorOutline.Piece> pieces, int edge) {
    long parts = pieces.stream().filter(p -> p.edge() == edge).count();
    return 4 * Math.atan(floor.vertices().get(edge).bulge()) / parts;
  }

  /** Extent of a lip along the leak with all its parts, m. */
  private static double width(LipProfile lip) {
    double left = Double.POSITIVE_INFINITY;
    double right = Double.NEGATIVE_INFINITY;
    List<Outline> parts = new ArrayList<>(lip.detached());
    parts.add(lip.outline());
    for (Outline part : parts) {
      for (double at : part.flatten().x()) {
        left = Math.min(left, at);
        right = Math.max(right, at);
      }
    }
    return right - left;
  }

  private static LeakLaw lawOf(Machine machine, Map<String, LeakLaw> laws, int edge) {
    String name = machine.floor().edges().get(edge).lip().name();
    LeakLaw law = laws.get(name);
    if (law == null) {
      throw new IllegalArgumentException("no leak law for the lip " + name);
    }
    return law;
  }

  private static double[] column(List<double[]> rows, int c) {
    return rows.stream().mapToDouble(r -> r[c]).toArray();
  }

  /** Length of seal of a strip at a gap on a side of its band, m. */
  double lengthAt(int i, double h, Side side) {
    return switch (side) {
      case LOW -> length[i] + Math.min(0, spread[i]);
      case VALUE -> length[i] + turn[i] * h;
      case HIGH -> length[i] + 2 * turn[i] * h + Math.max(0, spread[i]);
    };
  }
}
