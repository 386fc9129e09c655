package hemline.solver.improve;

import hemline.shared.profile.LipProfile;
import hemline.shared.result.SectionResult;
import hemline.shared.section.SealSection;
import hemline.shared.vehicle.Machine;
import hemline.solver.plenum.LipDownforce;
import java.util.List;

/**
 * The most downforce of a machine at rest with the lip all round.
 *
 * @param machine its own lips do not count
 */
public record DownforceGoal(Machine machine) implements Goal {
  @Override
  public List<SealSection> sections(LipProfile lip) {
    return new LipDownforce(machine).sections(lip);
  }

  /** 1 over the downforce, 1/N. */
  @Override
  public double value(LipProfile lip, List<SectionResult> results) {
    double force = new LipDownforce(machine).of(lip, results);
    return force > 0 ? 1 / force : Double.NaN;
  }
}
