package hemline.solver.plenum;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import hemline.shared.result.Estimate;
import hemline.shared.result.LeakGrids;
import hemline.shared.result.LeakPoint;
import hemline.shared.result.Regime;
import hemline.shared.result.SolveStatus;
import hemline.shared.section.GroundMotion;
import hemline.shared.section.SealSection;
import hemline.shared.section.SectionConditions;
import hemline.shared.vehicle.HoldTerms;
import hemline.shared.vehicle.Machine;
import hemline.shared.vehicle.Tolerances;
import java.util.List;
import java.util.Objects;
import org.junit.jupiter.api.Test;

/** Which sections a machine asks for, by hand, and which table each answer goes to. */
class LeakLatticeTest {
  /** Gap 2 mm and peak 900 Pa, so gaps from 1 to 3 mm and suctions from 225 to 900 Pa. */
  private static Machine machine(double speed) {
    return Machines.round(Machines.quadratic(900, 6e4), Machines.RIGID)
        .withTerms(new HoldTerms(false, 1, 1e-3, Tolerances.NONE))
        .atTravelSpeed(speed);
  }

  @Test
  void asksForLaddersAtRest() {
    List<SealSection> all = new LeakLattice(machine(0)).sections();
    assertThat(all)
        .extracting(SealSection::gap)
        .containsExactly(1e-3, 1e-3, 1e-3, 1.732e-3, 1.732e-3, 1.732e-3, 3e-3, 3e-3, 3e-3);
    assertThat(all.subList(0, 3))
        .extracting(SealSection::suction)
        .containsExactly(100.0, 300.0, 900.0);
    assertThat(all).allMatch(s -> s.ground().equals(GroundMotion.STILL));
    assertThat(all.get(0).profile().name()).isEqualTo("lip");
  }

  /** The smallest and the largest gap of a lip span its ladder. */
  @Test
  void spansTheGapsOfAllEdges() {
    List<SealSection> all = new LeakLattice(HoldMachines.gaps(machine(0), 2e-3, 6e-3)).sections();
    assertThat(all.stream().map(SealSection::gap).distinct())
        .containsExactly(1e-3, 1.732e-3, 3e-3, 5.196e-3, 9e-3);
    assertThat(
            new LeakLattice(HoldMachines.gaps(machine(0), 6e-3, 2e-3))
                .sections().stream().map(SealSection::gap).distinct())
        .containsExactly(1e-3, 1.732e-3, 3e-3, 5.196e-3, 9e-3);
  }

  /** Moving ground: gaps around 2 mm and suctions around 450 Pa, still, rear, along and front. */
  @Test
  void asksForFewSectionsOnMovingGround() {
    List<SealSection> all = new LeakLattice(machine(0.5)).sections();
    assertThat(all).hasSize(9 + 4 * 4);
    List<GroundMotion> motions =
        List.of(
            GroundMotion.STILL,
            new GroundMotion(-0.5, 0),
            new GroundMotion(0, 0.5),
            new GroundMotion(0.5, 0));
    for (int k = 0; k < 4; k++) {
      List<SealSection> block = all.subList(9 + 4 * k, 13 + 4 * k);
      assertThat(block).extracting(SealSection::ground).containsOnly(motions.get(k));
      assertThat(block)
          .extracting(SealSection::gap)
          .containsExactly(1.732e-3, 1.732e-3, 3e-3, 3e-3);
      assertThat(block)
          .extracting(SealSection::suction)
          .containsExactly(300.0, 900.0, 300.0, 900.0);
    }
  }

  private static LeakPoint answer(SealSection s, double c) {
    return new LeakPoint(
        "lip",
        new SectionConditions(s.gap(), s.suction(), s.ground().speed(), s.ground().spanwiseSpeed()),
        SolveStatus.CONVERGED,
        Regime.TURBULENT,
        Estimate.exact(c),
        Estimate.exact(0),
        List.of(),
        LeakGrids.NONE);
  }

  /** Each answer goes to the table of its motion. */
  @Test
  void answersGoToTheirTables() {
    LeakLattice lattice = new LeakLattice(machine(0.5));
    List<LeakPoint> points =
        lattice.sections().stream()
            .map(
                s ->
                    answer(
                        s,
                        s.ground().spanwiseSpeed() > 0
                            ? 0.66
                            : s.ground().speed() > 0 ? 0.72 : s.ground().speed() < 0 ? 0.48 : 0.6))
            .toList();
    LeakLaw law = Objects.requireNonNull(lattice.laws(points).get("lip"));
    assertThat(law.moves()).isTrue();
    double x = Math.log(2e-3);
    double y = Math.log(500);
    assertThat(law.discharge(x, y, false, 1, Side.VALUE)).isCloseTo(0.6, within(1e-12));
    assertThat(law.discharge(x, y, true, 1, Side.VALUE)).isCloseTo(0.72, within(1e-12));
    assertThat(law.discharge(x, y, true, 0, Side.VALUE)).isCloseTo(0.66, within(1e-12));
    assertThat(law.discharge(x, y, true, -1, Side.VALUE)).isCloseTo(0.48, within(1e-12));
    assertThat(law.leastGap()).isCloseTo(1e-3, within(1e-12));
    LeakLaw rest = Objects.requireNonNull(lattice.lawsAtRest(points, true).get("lip"));
    assertThat(rest.moves()).isFalse();
    assertThat(rest.discharge(x, y, true, 1, Side.VALUE)).isCloseTo(0.6, within(1e-12));
    LeakLattice still = new LeakLattice(machine(0));
    assertThat(Objects.requireNonNull(still.laws(points.subList(0, 9)).get("lip")).moves())
        .isFalse();
  }

  /** Straight lines between the points, where curves are not asked for. */
  @Test
  void straightLinesWhereAsked() {
    LeakLattice lattice = new LeakLattice(machine(0));
    List<LeakPoint> points =
        lattice.sections().stream().map(s -> answer(s, s.suction() > 400 ? 0.8 : 0.6)).toList();
    double x = Math.log(2e-3);
    double y = Math.log(300 * Math.pow(3, 0.25));
    LeakLaw straight = Objects.requireNonNull(lattice.lawsAtRest(points, false).get("lip"));
    assertThat(straight.discharge(x, y, false, 0, Side.VALUE)).isCloseTo(0.65, within(1e-9));
    LeakLaw curved = Objects.requireNonNull(lattice.lawsAtRest(points, true).get("lip"));
    assertThat(curved.discharge(x, y, false, 0, Side.VALUE)).isLessThan(0.648);
  }

  @Test
  void atRestIsWithoutAnyMotion() {
    SealSection s = new LeakLattice(machine(0)).sections().get(0);
    assertThat(LeakLattice.atRest(answer(s, 0.6))).isTrue();
    for (SealSection moving : new LeakLattice(machine(0.5)).sections().subList(13, 25)) {
      assertThat(LeakLattice.atRest(answer(moving, 0.6))).isFalse();
    }
  }
}
