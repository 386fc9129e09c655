package hemline.solver.improve;

import hemline.shared.profile.LipProfile;
import hemline.shared.result.Figure;
import hemline.shared.result.GridRun;
import hemline.shared.result.SectionResult;
import hemline.shared.result.SolveStatus;
import hemline.shared.section.SealSection;
import hemline.solver.study.GapDistribution;
import hemline.solver.study.GroundSpeeds;
import java.util.List;

/**
 * The leak, summed over gaps and speeds of the ground.
 *
 * @param ground gaps, and how much of the seal lies over each
 * @param speeds of the ground, and how much of the time it has each
 * @param conditions suction, motion along the seal, fluid; its profile, gap and speed do not count
 */
public record LeakGoal(GapDistribution ground, GroundSpeeds speeds, SealSection conditions)
    implements Goal {
  @Override
  public List<SealSection> sections(LipProfile lip) {
    return speeds.sections(lip, ground, conditions);
  }

  /** m²/s. */
  @Override
  public double value(LipProfile lip, List<SectionResult> results) {
    List<Double> weights = speeds.weights(ground);
    double sum = 0;
    for (int k = 0; k < results.size(); k++) {
      GridRun finest = results.get(k).finest();
      Double q =
          finest == null || results.get(k).status() == SolveStatus.FAILED
              ? null
              : finest.figures().scalars().get(Figure.LEAK_FLOW);
      sum += weights.get(k) * (q == null || !(q > 0) ? Double.NaN : q);
    }
    return results.isEmpty() ? Double.NaN : sum;
  }
}
