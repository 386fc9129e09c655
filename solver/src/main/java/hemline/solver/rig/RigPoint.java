package hemline.solver.rig;

import hemline.shared.rig.RigReading;
import java.util.ArrayList;
import java.util.List;

/**
 * Readings of one gap and about one suction: repeats of each other.
 *
 * @param gap as set, m
 * @param suction mean as read, Pa
 * @param readings at least one
 */
public record RigPoint(double gap, double suction, List<RigReading> readings) {
  /** Suctions this close, as a share, count as the same. */
  private static final double SAME_SUCTION = 0.05;

  public RigPoint {
    readings = List.copyOf(readings);
  }

  /**
   * Gathers readings into points: those of one gap whose suction differs from the first one of the
   * point by less than a twentieth. Points stand in the order of their first readings.
   */
  static List<RigPoint> of(List<RigReading> readings) {
    List<List<RigReading>> groups = new ArrayList<>();
    for (RigReading r : readings) {
      List<RigReading> home = null;
      for (List<RigReading> group : groups) {
        RigReading first = group.get(0);
        boolean sameGap = Double.compare(r.gap(), first.gap()) == 0;
        boolean near = Math.abs(r.suction() - first.suction()) < SAME_SUCTION * first.suction();
        if (home == null && sameGap && near) {
          home = group;
        }
      }
      if (home == null) {
        home = new ArrayList<>();
        groups.add(home);
      }
      home.add(r);
    }
    return groups.stream()
        .map(
            g ->
                new RigPoint(
                    g.get(0).gap(),
                    g.stream().mapToDouble(RigReading::suction).average().orElseThrow(),
                    g))
        .toList();
  }
}
