package hemline.solver.plenum;

import hemline.shared.profile.LipProfile;
import hemline.shared.result.LeakPoint;
import hemline.shared.section.GroundMotion;
import hemline.shared.section.SealSection;
import hemline.shared.vehicle.Machine;
import hemline.shared.vehicle.SealEdge;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * The sections that a machine needs solved, and the leak laws made of their answers.
 *
 * <p>Gaps and suctions stand on fixed ladders, so that other gaps, fan speeds and machines ask for
 * mostly the same sections: gaps of 1 mm times powers of √3, suctions of 100 Pa times powers of 3.
 * At rest they span half to one and a half times the static gaps, and a quarter of the fan's peak
 * pressure to all of it, and in steps of 3 further down to the contact allowance; for moving ground
 * they are the two gaps and suctions next to the static gap and half the peak, under edges that
 * face forwards, sideways and rearwards. Directions in between are interpolated.
 */
final class LeakLattice {
  private static final double GAP_STEP = Math.sqrt(3);
  private static final double GAP_BASE = 1e-3;
  private static final double SUCTION_STEP = 3;
  private static final double SUCTION_BASE = 100;

  /** Gaps over the static ones that are asked for. */
  private static final double LEAST_GAP = 0.5;

  private static final double MOST_GAP = 1.5;

  /** Suction over the fan's peak from which on it is asked for. */
  private static final double LEAST_SUCTION = 0.25;

  private static final double THINNER = 3;

  /** A bound this close beyond a step of the ladder needs no further step. */
  private static final double NEAR = 1.05;

  /** Digits of a step, so that it is the same number whichever way it is reached. */
  private static final int DIGITS = 4;

  private final Machine machine;
  private final List<SealSection> sections = new ArrayList<>();
  private final Map<String, Block> still = new LinkedHashMap<>();
  private final Map<String, Block> few = new LinkedHashMap<>();
  private final Map<String, List<Block>> moving = new LinkedHashMap<>();

  /**
   * Part of the sections that makes one table.
   *
   * @param from index of its first section
   */
  private record Block(int from, List<Double> gaps, List<Double> suctions) {
    int size() {
      return gaps.size() * suctions.size();
    }
  }

  LeakLattice(Machine machine) {
    this(machine, true);
  }

  /**
   * The sections next to the static gap and half the fan's peak alone, at rest, for searches.
   *
   * @param machine with one lip all round
   */
  static LeakLattice sparse(Machine machine) {
    return new LeakLattice(machine.atTravelSpeed(0), false);
  }

  private LeakLattice(Machine machine, boolean wide) {
    this.machine = machine;
    double peak = machine.fan().running(machine.duty().air().air().density()).peakPressure();
    Map<String, LipProfile> lips = new LinkedHashMap<>();
    Map<String, double[]> range = new LinkedHashMap<>();
    for (SealEdge edge : machine.floor().edges()) {
      lips.put(edge.lip().name(), edge.lip());
      double[] r =
          range.computeIfAbsent(edge.lip().name(), n -> new double[] {edge.gap(), edge.gap()});
      r[0] = Math.min(r[0], edge.gap());
      r[1] = Math.max(r[1], edge.gap());
    }
    List<Double> suctions = ladder(LEAST_SUCTION * peak, peak, SUCTION_BASE, SUCTION_STEP);
    double v = machine.duty().travelSpeed();
    lips.forEach(
        (name, lip) -> {
          double[] r = range.getOrDefault(name, new double[] {1e-3, 1e-3});
          List<Double> fewGaps = ladder(r[0], r[1] * NEAR, GAP_BASE, GAP_STEP);
          List<Double> fewSuctions =
              ladder(0.5 * peak, 0.5 * peak * NEAR, SUCTION_BASE, SUCTION_STEP);
          if (!wide) {
            still.put(name, block(lip, fewGaps, fewSuctions, GroundMotion.STILL));
            return;
          }
          List<Double> gaps = ladder(LEAST_GAP * r[0], MOST_GAP * r[1], GAP_BASE, GAP_STEP);
          gaps = thinned(gaps, machine.duty().terms().contactAllowance());
          still.put(name, block(lip, gaps, suctions, GroundMotion.STILL));
          if (v > 0) {
            few.put(name, block(lip, fewGaps, fewSuctions, GroundMotion.STILL));
            moving.put(
                name,
                List.of(
                    block(lip, fewGaps, fewSuctions, new GroundMotion(-v, 0)),
                    block(lip, fewGaps, fewSuctions, new GroundMotion(0, v)),
                    block(lip, fewGaps, fewSuctions, new GroundMotion(v, 0))));
          }
        });
  }

  /** Steps of a ladder that span a range. */
  static List<Double> ladder(double low, double high, double base, double step) {
    double ln = Math.log(step);
    int first = (int) Math.floor(Math.log(low * NEAR / base) / ln);
    int last = (int) Math.ceil(Math.log(high / NEAR / base) / ln);
    List<Double> steps = new ArrayList<>();
    for (int k = first; k <= Math.max(last, first + 1); k++) {
      steps.add(
          new BigDecimal(base * Math.pow(step, k)).round(new MathContext(DIGITS)).doubleValue());
    }
    return steps;
  }

  /** Gaps with thinner ones before them, three times as thin each, down to an allowance. */
  static List<Double> thinned(List<Double> gaps, double allowance) {
    List<Double> all = new ArrayList<>(gaps);
    for (double h = gaps.get(0) / THINNER;
        all.get(0) > NEAR * NEAR * NEAR * allowance;
        h /= THINNER) {
      all.add(0, new BigDecimal(h).round(new MathContext(DIGITS)).doubleValue());
    }
    return all;
  }

  private Block block(
      LipProfile lip, List<Double> gaps, List<Double> suctions, GroundMotion motion) {
    Block block = new Block(sections.size(), gaps, suctions);
    for (double gap : gaps) {
      for (double suction : suctions) {
        sections.add(
            new SealSection(lip, gap, suction, motion, machine.duty().air().air(), List.of()));
      }
    }
    return block;
  }

  /** All sections, some of them more than once. */
  List<SealSection> sections() {
    return List.copyOf(sections);
  }

  /**
   * Leak laws by the name of the lip.
   *
   * @param points in the order of the sections, all usable
   */
  Map<String, LeakLaw> laws(List<LeakPoint> points) {
    Map<String, LeakLaw> laws = new LinkedHashMap<>();
    still.forEach(
        (name, block) -> {
          List<Block> m = moving.get(name);
          Block at = few.get(name);
          laws.put(
              name,
              m == null || at == null
                  ? new LeakLaw(table(block, points))
                  : new LeakLaw(
                      table(block, points),
                      new LeakLaw.Moving(
                          table(at, points),
                          table(m.get(0), points),
                          table(m.get(1), points),
                          table(m.get(2), points))));
        });
    return laws;
  }

  /**
   * Leak laws for ground at rest by the name of the lip.
   *
   * @param points in the order of the sections, all usable
   * @param smooth false for straight lines between the points
   */
  Map<String, LeakLaw> lawsAtRest(List<LeakPoint> points, boolean smooth) {
    Map<String, LeakLaw> laws = new LinkedHashMap<>();
    still.forEach(
        (name, block) ->
            laws.put(
                name,
                new LeakLaw(
                    new LeakTable(
                        block.gaps(),
                        block.suctions(),
                        points.subList(block.from(), block.from() + block.size()),
                        smooth))));
    return laws;
  }

  /** True for sections at rest. */
  static boolean atRest(LeakPoint p) {
    return p.conditions().groundSpeed() == 0 && p.conditions().spanwiseSpeed() == 0;
  }

  private static LeakTable table(Block block, List<LeakPoint> points) {
    return new LeakTable(
        block.gaps(), block.suctions(), points.subList(block.from(), block.from() + block.size()));
  }
}
