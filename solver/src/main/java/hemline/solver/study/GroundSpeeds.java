package hemline.solver.study;

import hemline.shared.profile.LipProfile;
import hemline.shared.section.GroundMotion;
import hemline.shared.section.SealSection;
import java.util.ArrayList;
import java.util.List;

/**
 * Speeds of the ground across a seal and how much of its running time it spends at each.
 *
 * @param speeds m/s, positive towards the plenum, at least one, no two alike
 * @param weights share of the time at each, positive or 0, summing to 1
 */
public record GroundSpeeds(List<Double> speeds, List<Double> weights) {
  private static final double ROUND_OFF = 1e-9;

  public GroundSpeeds {
    speeds = List.copyOf(speeds);
    weights = List.copyOf(weights);
    double sum = 0;
    for (double weight : weights) {
      sum += weight >= 0 ? weight : Double.NaN;
    }
    if (speeds.isEmpty()
        || weights.size() != speeds.size()
        || speeds.stream().distinct().count() < speeds.size()
        || !(Math.abs(sum - 1) < ROUND_OFF)) {
      throw new IllegalArgumentException(
          "each speed of the ground has one weight, together 1, got " + speeds + ", " + weights);
    }
  }

  /** One speed, m/s. */
  public static GroundSpeeds of(double speed) {
    return new GroundSpeeds(List.of(speed), List.of(1.0));
  }

  /**
   * Speeds with weights, which are scaled so that they sum to 1.
   *
   * @param weights as many as speeds, not negative, not all 0
   */
  public static GroundSpeeds of(List<Double> speeds, List<Double> weights) {
    double sum = weights.stream().mapToDouble(w -> w).sum();
    return new GroundSpeeds(speeds, weights.stream().map(w -> w / sum).toList());
  }

  /**
   * A lip at all gaps, and at each of them at all speeds.
   *
   * @param conditions suction, motion along the seal, fluid and bumps
   */
  public List<SealSection> sections(
      LipProfile lip, GapDistribution ground, SealSection conditions) {
    List<SealSection> sections = new ArrayList<>();
    for (double gap : ground.gaps()) {
      for (double speed : speeds) {
        sections.add(
            new SealSection(
                lip,
                gap,
                conditions.suction(),
                new GroundMotion(speed, conditions.ground().spanwiseSpeed()),
                conditions.fluid(),
                conditions.groundBumps()));
      }
    }
    return sections;
  }

  /** Weights of these sections, together 1. */
  public List<Double> weights(GapDistribution ground) {
    List<Double> all = new ArrayList<>();
    for (double gap : ground.weights()) {
      weights.forEach(speed -> all.add(gap * speed));
    }
    return all;
  }
}
