package hemline.solver.plenum;

import hemline.shared.profile.LipProfile;
import hemline.shared.result.Estimate;
import hemline.shared.result.Figure;
import hemline.shared.result.GridRun;
import hemline.shared.result.LeakPoint;
import hemline.shared.result.SectionResult;
import hemline.shared.section.SealSection;
import hemline.shared.vehicle.Machine;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/**
 * Downforce of a machine at rest with a lip all round, from the few sections next to its static gap
 * and half its fan's peak pressure: enough to tell lips apart in a search, not to tell a downforce.
 */
public final class LipDownforce {
  private final Machine machine;

  /** Downforces of a machine; its own lips do not count. */
  public LipDownforce(Machine machine) {
    this.machine = machine.atTravelSpeed(0);
  }

  /** The machine at rest with a lip all round. */
  public Machine with(LipProfile lip) {
    return machine.withFloor(machine.floor().withLip(lip));
  }

  /** The sections that a lip is judged by. */
  public List<SealSection> sections(LipProfile lip) {
    return LeakLattice.sparse(with(lip)).sections();
  }

  /**
   * Downforce, N, by the leaks and lip forces on the finest grids.
   *
   * @param results of {@link #sections}
   * @return not a number where a flow is missing or the machine does not settle
   */
  public double of(LipProfile lip, List<SectionResult> results) {
    LeakLattice lattice = LeakLattice.sparse(with(lip));
    List<SealSection> sections = lattice.sections();
    List<LeakPoint> points = new ArrayList<>();
    for (int k = 0; k < sections.size() && k < results.size(); k++) {
      LeakPoint point = point(sections.get(k), results.get(k));
      if (point.usable()) {
        points.add(point);
      }
    }
    if (points.size() < sections.size()) {
      return Double.NaN;
    }
    Map<String, LeakLaw> laws = lattice.laws(points);
    PlenumState state = new PlenumBalance(with(lip), laws).settled(Stand.REST);
    return state == null ? Double.NaN : state.parts().sum();
  }

  private static LeakPoint point(SealSection section, SectionResult result) {
    GridRun finest = result.finest();
    Map<Figure, Double> figures = finest == null ? Map.of() : finest.figures().scalars();
    double leak = figures.getOrDefault(Figure.LEAK_FLOW, Double.NaN);
    double force = figures.getOrDefault(Figure.LIP_FORCE_Y, 0.0);
    return LeakPoint.of(
        section,
        result.status(),
        result.regime(),
        leak > 0 ? Estimate.exact(leak) : null,
        Estimate.exact(force),
        List.of());
  }
}
