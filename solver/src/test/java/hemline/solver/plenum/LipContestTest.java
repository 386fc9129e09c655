package hemline.solver.plenum;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.data.Percentage.withPercentage;

import hemline.shared.result.Estimate;
import hemline.shared.result.GridLeak;
import hemline.shared.result.LeakGrids;
import hemline.shared.result.LeakPoint;
import hemline.shared.result.Regime;
import hemline.shared.result.SolveStatus;
import hemline.shared.section.SealSection;
import hemline.shared.section.SectionConditions;
import hemline.shared.vehicle.Machine;
import java.util.List;
import java.util.Objects;
import java.util.function.Function;
import org.junit.jupiter.api.Test;

/**
 * Ratios of downforce in closed form: on a rigid round machine with leaks of one coefficient C the
 * downforce is A p₀ / (1 + a (C h L)² 2 / ρ).
 */
class LipContestTest {
  private static final double P0 = 900;
  private static final double A = 6e4;
  private static final double SEAL = 2 * Math.PI * Machines.RADIUS;

  /** The outer edge of a lip 8 mm wide. */
  private static final double LONGEST = SEAL + 2 * Math.PI * 8e-3;

  private final Machine machine = Machines.round(Machines.quadratic(P0, A), Machines.RIGID);
  private final LeakLattice lattice = new LeakLattice(machine);
  private int[] cells = {400, 900, 1600};

  /** Coarse grids without a flow. */
  private int lost;

  private double force(double c, double length) {
    double k = c * Machines.GAP * length * Math.sqrt(2 / machine.duty().air().air().density());
    return Math.PI * Machines.RADIUS * Machines.RADIUS * P0 / (1 + A * k * k);
  }

  private LipContest.Entry entry(String name, Function<SealSection, LeakPoint> answer) {
    return new LipContest.Entry(name, lattice, lattice.sections().stream().map(answer).toList());
  }

  /** Coefficients on three grids with a spread, and one of the other flow model, 0 for none. */
  private LipContest.Entry entry(String name, double[] c, double spread, double other) {
    return entry(
        name,
        s ->
            new LeakPoint(
                "lip",
                new SectionConditions(s.gap(), s.suction(), 0, 0),
                SolveStatus.CONVERGED,
                Regime.TURBULENT,
                new Estimate(c[2], 0.02, 0, 0, 0, Estimate.Trend.MONOTONE),
                Estimate.exact(0),
                List.of(),
                new LeakGrids(
                    List.of(
                            new GridLeak(0, 400, c[0], spread, 0),
                            new GridLeak(1, cells[1], c[1], spread, 0),
                            new GridLeak(2, cells[2], c[2], spread, 0))
                        .subList(lost, 3),
                    other > 0 ? List.of(new GridLeak(0, 400, other, 0, 0)) : List.of())));
  }

  private LipContest.Entry entry(String name, double c) {
    return entry(name, new double[] {c, c, c}, 0, 0);
  }

  private LipContest contest() {
    return new LipContest(machine, entry("", 0.7));
  }

  /** The seal's outer edge leaks more of both: the better lip gains by it. */
  @Test
  void theRatioHoldsWhatBothShare() {
    Estimate r = Objects.requireNonNull(contest().ratio(entry("a", 0.6), entry("b", 0.8)));
    double value = force(0.6, SEAL) / force(0.8, SEAL);
    assertThat(r.value()).isCloseTo(value, withPercentage(0.01));
    assertThat(r.numerical()).isCloseTo(0, within(1e-9));
    assertThat(r.iteration()).isZero();
    assertThat(r.modelLow()).isCloseTo(0, within(1e-9));
    double longest = force(0.6, LONGEST) / force(0.8, LONGEST);
    assertThat(r.modelHigh()).isCloseTo(longest - value, withPercentage(0.1));
    Estimate turned = Objects.requireNonNull(contest().ratio(entry("b", 0.8), entry("a", 0.6)));
    assertThat(turned.modelLow()).isCloseTo(1 / value - 1 / longest, withPercentage(0.1));
    assertThat(turned.modelHigh()).isCloseTo(0, within(1e-9));
  }

  /** Iteration of each apart: the change of each downforce, added like independent errors. */
  @Test
  void iterationOfBothLips() {
    LipContest.Entry a = entry("a", new double[] {0.6, 0.6, 0.6}, 0.02, 0);
    LipContest.Entry b = entry("b", new double[] {0.8, 0.8, 0.8}, 0.01, 0);
    Estimate r = Objects.requireNonNull(contest().ratio(a, b));
    double ratio = force(0.6, SEAL) / force(0.8, SEAL);
    double first = 1 - force(0.62, SEAL) / force(0.6, SEAL);
    double second = 1 - force(0.81, SEAL) / force(0.8, SEAL);
    assertThat(r.iteration()).isCloseTo(ratio * Math.hypot(first, second), withPercentage(0.2));
  }

  /** The other flow model moves the ratio on the coarsest grid, by as much as is added. */
  @Test
  void theOtherFlowModel() {
    double value = force(0.6, SEAL) / force(0.8, SEAL);
    double longest = force(0.6, LONGEST) / force(0.8, LONGEST) - value;
    double[][] others = {{0.5, 0.8}, {0.7, 0.8}};
    for (double[] c : others) {
      Estimate r =
          Objects.requireNonNull(
              contest()
                  .ratio(
                      entry("a", new double[] {0.6, 0.6, 0.6}, 0, c[0]),
                      entry("b", new double[] {0.8, 0.8, 0.8}, 0, c[1])));
      double moved = force(c[0], SEAL) / force(c[1], SEAL) - value;
      assertThat(r.modelHigh())
          .isCloseTo(Math.hypot(longest, Math.max(0, moved)), withPercentage(0.2));
      assertThat(r.modelLow()).isCloseTo(Math.max(0, -moved), within(1e-4));
    }
    // where one of them has none it says nothing
    Estimate alone =
        Objects.requireNonNull(
            contest().ratio(entry("a", new double[] {0.6, 0.6, 0.6}, 0, 0.5), entry("b", 0.8)));
    assertThat(alone.modelHigh()).isCloseTo(longest, withPercentage(0.1));
    assertThat(alone.modelLow()).isCloseTo(0, within(1e-9));
  }

  /** Errors that fall with the cell size, 1 : 2/3 : 1/2, are taken out of the ratio. */
  @Test
  void theRatioConvergesOfItself() {
    double[] rising = {0.62, 0.6 + 0.04 / 3, 0.61};
    Estimate r = Objects.requireNonNull(contest().ratio(entry("a", rising, 0, 0), entry("b", 0.8)));
    double exact = force(0.6, SEAL) / force(0.8, SEAL);
    double finest = force(0.61, SEAL) / force(0.8, SEAL);
    assertThat(r.value()).isCloseTo(exact, within(0.1 * (exact - finest)));
    assertThat(r.numerical()).isCloseTo(1.25 * (r.value() - finest), withPercentage(1));
    assertThat(r.trend()).isEqualTo(Estimate.Trend.MONOTONE);
  }

  /** The same with cells halved twice: then 1 : 1/2 : 1/4 is what falls with their size. */
  @Test
  void cellsAreCounted() {
    cells = new int[] {400, 1600, 6400};
    double[] falling = {0.62, 0.61, 0.605};
    Estimate r =
        Objects.requireNonNull(contest().ratio(entry("a", falling, 0, 0), entry("b", 0.8)));
    double exact = force(0.6, SEAL) / force(0.8, SEAL);
    double finest = force(0.605, SEAL) / force(0.8, SEAL);
    assertThat(r.value()).isCloseTo(exact, within(0.05 * (exact - finest)));
    assertThat(r.numerical()).isCloseTo(1.25 * (r.value() - finest), withPercentage(1));
  }

  /** Where only the finest grids have both lips, their own bands say more than a single ratio. */
  @Test
  void oneCommonGridLeavesTheBandsOfBoth() {
    LipContest.Entry b = entry("b", 0.8);
    lost = 2;
    Estimate r = Objects.requireNonNull(contest().ratio(entry("a", 0.6), b));
    assertThat(r.value()).isCloseTo(force(0.6, SEAL) / force(0.8, SEAL), withPercentage(0.01));
    assertThat(r.numerical()).isZero();
    assertThat(r.low()).isCloseTo(force(0.62, LONGEST) / force(0.78, SEAL), withPercentage(0.05));
    assertThat(r.high()).isCloseTo(force(0.58, SEAL) / force(0.82, LONGEST), withPercentage(0.05));
  }

  /** What straight lines between the solved points make of the ratio counts as numerical. */
  @Test
  void straightLinesWidenTheBand() {
    LipContest.Entry steep =
        entry("a", s -> onGrids(s, s.suction() > 400 ? 0.66 : s.suction() > 200 ? 0.5 : 0.45));
    Estimate r = Objects.requireNonNull(contest().ratio(steep, entry("b", 0.8)));
    double[] ratio = new double[2];
    for (int k = 0; k < 2; k++) {
      PlenumBalance b = new PlenumBalance(machine, lattice.lawsAtRest(steep.points(), k == 0));
      ratio[k] = Machines.settled(b).parts().sum() / force(0.8, SEAL);
    }
    assertThat(Math.abs(ratio[0] - ratio[1])).isGreaterThan(1e-3);
    assertThat(r.value()).isCloseTo(ratio[0], withPercentage(0.01));
    assertThat(r.numerical()).isCloseTo(Math.abs(ratio[0] - ratio[1]), withPercentage(2));
  }

  private LeakPoint onGrids(SealSection s, double c) {
    return new LeakPoint(
        "lip",
        new SectionConditions(s.gap(), s.suction(), 0, 0),
        SolveStatus.CONVERGED,
        Regime.TURBULENT,
        Estimate.exact(c),
        Estimate.exact(0),
        List.of(),
        new LeakGrids(
            List.of(
                new GridLeak(0, 400, c, 0, 0),
                new GridLeak(1, 900, c, 0, 0),
                new GridLeak(2, 1600, c, 0, 0)),
            List.of()));
  }

  /** Leaks without grids: each band in full, low over high. */
  @Test
  void bandsApartWhereGridsAreNotKnown() {
    Function<SealSection, LeakPoint> leak =
        s ->
            Machines.point(
                s.gap(), s.suction(), new Estimate(0.6, 0.02, 0, 0, 0, Estimate.Trend.MONOTONE));
    LipContest.Entry a = entry("a", leak);
    LipContest.Entry b = entry("b", 0.8);
    Estimate r = Objects.requireNonNull(contest().ratio(a, b));
    double value = force(0.6, SEAL) / force(0.8, SEAL);
    assertThat(r.value()).isCloseTo(value, withPercentage(0.01));
    // own band of b: C ± 0.02 as told, more seal at the high end of the leak
    double least = force(0.62, LONGEST) / force(0.78, SEAL);
    double most = force(0.58, SEAL) / force(0.82, LONGEST);
    assertThat(r.low()).isCloseTo(least, withPercentage(0.05));
    assertThat(r.high()).isCloseTo(most, withPercentage(0.05));
  }

  /** The same leaks on all grids are the same lip. */
  @Test
  void theSameLeaksGiveOne() {
    assertThat(contest().ratio(entry("a", 0.6), entry("b", 0.6))).isEqualTo(Estimate.exact(1));
  }

  /** Ranks 1, 2, 2, 4: one ahead, two that tie, one with which the machine does not settle. */
  @Test
  void ranksAndTies() {
    List<RankedLip> ranked =
        contest()
            .ranked(
                List.of(
                    entry("none", 500),
                    entry("late", 0.8),
                    entry("early", 0.8),
                    entry("best", 0.6)));
    assertThat(ranked).extracting(RankedLip::name).containsExactly("best", "early", "late", "none");
    assertThat(ranked).extracting(RankedLip::rank).containsExactly(1, 2, 2, 4);
    assertThat(ranked.get(0).tiedWith()).isEmpty();
    assertThat(ranked.get(1).tiedWith()).containsExactly("late");
    assertThat(ranked.get(2).tiedWith()).containsExactly("early");
    assertThat(ranked.get(3).tiedWith()).isEmpty();
    assertThat(Objects.requireNonNull(ranked.get(0).relative()).value())
        .isCloseTo(force(0.6, SEAL) / force(0.7, SEAL), withPercentage(0.01));
    assertThat(ranked.get(3).relative()).isNull();
    assertThat(ranked.get(3).trade().downforce()).isNull();
  }

  /** Of lips that tie, the one with more downforce comes first whatever its name. */
  @Test
  void tiesAreOrderedByDownforce() {
    LipContest.Entry unsure = entry("a", new double[] {0.6, 0.8, 0.7}, 0, 0);
    List<RankedLip> ranked = contest().ranked(List.of(unsure, entry("b", 0.69)));
    assertThat(ranked).extracting(RankedLip::rank).containsExactly(1, 1);
    assertThat(ranked).extracting(RankedLip::name).containsExactly("b", "a");
    assertThat(ranked.get(0).tiedWith()).containsExactly("a");
  }
}
