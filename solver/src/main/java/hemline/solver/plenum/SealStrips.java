package hemline.solver.plenum;

import hemline.shared.vehicle.FloorOutline;
import hemline.shared.vehicle.Machine;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/**
 * The seal cut into short strips of one gap each: the points of Gauss's rule on every straight
 * piece of the outline, and the corners.
 *
 * <p>Corners: where the seal turns by φ, air also comes in from the corner itself, as if the seal
 * were longer by one gap for each right angle of turn. That allowance is a guess, so its band runs
 * from none to two gaps.
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

  SealStrips(Machine machine, Map<String, LeakLaw> laws) {
    FloorOutline floor = machine.floor();
    List<double[]> rows = new ArrayList<>();
    List<LeakLaw> lawOf = new ArrayList<>();
    List<FloorOutline.Piece> pieces = floor.pieces();
    for (int k = 0; k < pieces.size(); k++) {
      FloorOutline.Piece p = pieces.get(k);
      LeakLaw l = lawOf(machine, laws, p.edge());
      double h = floor.edges().get(p.edge()).gap();
      boolean arc = floor.vertices().get(p.edge()).bulge() != 0;
      double[] place = arc ? MIDDLE : PLACE;
      double[] weight = arc ? WHOLE : WEIGHT;
      for (int g = 0; g < place.length; g++) {
        double t = place[g];
        rows.add(
            new double[] {
              p.edge(),
              p.x0() + t * (p.x1() - p.x0()),
              p.y0() + t * (p.y1() - p.y0()),
              weight[g] * p.length(),
              0,
              h,
              p.outwardX()
            });
        lawOf.add(l);
      }
      FloorOutline.Piece next = pieces.get((k + 1) % pieces.size());
      double turned =
          Math.atan2(
              p.outwardX() * next.outwardY() - p.outwardY() * next.outwardX(),
              p.outwardX() * next.outwardX() + p.outwardY() * next.outwardY());
      if (turned > LEAST_TURN) {
        double mean = 0.5 * (h + floor.edges().get(next.edge()).gap());
        rows.add(
            new double[] {
              p.edge(),
              p.x1(),
              p.y1(),
              0,
              turned / (0.5 * Math.PI),
              mean,
              0.5 * (p.outwardX() + next.outwardX())
            });
        lawOf.add(l);
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
    law = lawOf.toArray(LeakLaw[]::new);
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

  /** Length of seal of a strip at a gap, m: a corner counts by its allowance. */
  double lengthAt(int i, double h, Side side) {
    if (turn[i] == 0) {
      return length[i];
    }
    double gaps =
        switch (side) {
          case LOW -> 0;
          case VALUE -> 1;
          case HIGH -> 2;
        };
    return gaps * turn[i] * h;
  }
}
