package hemline.solver.plenum;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import hemline.shared.file.LipFile;
import hemline.shared.file.MachineFile;
import hemline.shared.problem.InputException;
import hemline.shared.problem.Notice;
import hemline.shared.profile.LipProfile;
import hemline.shared.result.Estimate;
import hemline.shared.result.GridLeak;
import hemline.shared.result.LeakGrids;
import hemline.shared.result.LeakOrigin;
import hemline.shared.result.LeakPoint;
import hemline.shared.result.MachineFigure;
import hemline.shared.result.Regime;
import hemline.shared.result.SolveStatus;
import hemline.shared.section.SealSection;
import hemline.shared.section.SectionConditions;
import hemline.shared.vehicle.Machine;
import hemline.solver.flow.CancelToken;
import hemline.solver.flow.Closure;
import hemline.solver.flow.ProgressListener;
import hemline.solver.grid.MeshLevel;
import hemline.solver.refine.FamilySolver;
import hemline.solver.study.LeakKey;
import hemline.solver.study.LeakStudy;
import hemline.solver.study.ResultStore;
import hemline.solver.study.RunOptions;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

class MachineStudyTest {
  private static final Path MACHINES = Path.of("..", "profiles", "machines");
  private static final RunOptions COARSE = new RunOptions(MeshLevel.COARSE, Closure.AUTO, false, 1);

  /** Leak points by a formula, for the sections that a machine and its lips ask for. */
  private static MachineBalance balance(
      Machine machine, List<LipProfile> lips, Function<SealSection, LeakPoint> formula) {
    Map<String, LeakPoint> points = new HashMap<>();
    for (SealSection s : new LeakLattice(machine).sections()) {
      points.put(LeakKey.of(s, COARSE).text(), formula.apply(s));
    }
    for (LipProfile lip : lips) {
      Machine other = machine.withFloor(machine.floor().withLip(lip));
      for (SealSection s : new LeakLattice(other).sections()) {
        points.put(LeakKey.of(s, COARSE).text(), formula.apply(s));
      }
    }
    ResultStore<LeakPoint> store =
        new ResultStore<LeakPoint>() {
          @Override
          public @Nullable LeakPoint find(LeakOrigin asked) {
            return points.get(asked.text());
          }

          @Override
          public void keep(LeakOrigin asked, LeakPoint point) {
            throw new AssertionError("everything is known");
          }
        };
    return new MachineStudy(new LeakStudy(new FamilySolver(), store))
        .of(machine, lips, 1.5, COARSE, new CancelToken(), ProgressListener.NONE);
  }

  private static LeakPoint point(SealSection s, double c, SolveStatus status) {
    return new LeakPoint(
        s.profile().name(),
        new SectionConditions(s.gap(), s.suction(), s.ground().speed(), s.ground().spanwiseSpeed()),
        status,
        Regime.TURBULENT,
        new Estimate(c, 0.01, 0, 0, 0, Estimate.Trend.MONOTONE),
        new Estimate(-0.01, 0.001, 0, 0, 0, Estimate.Trend.MONOTONE),
        List.of(),
        LeakGrids.NONE);
  }

  private static Machine crawler() throws InputException {
    return MachineFile.read(MACHINES.resolve("silo-wall-crawler.json"));
  }

  private static LipProfile lip(String name) throws InputException {
    return LipFile.load(Path.of("..", "profiles", name + ".json")).profile();
  }

  @Test
  void balancesTheCrawler() throws InputException {
    MachineBalance b = balance(crawler(), List.of(), s -> point(s, 0.7, SolveStatus.CONVERGED));
    assertThat(b.complete()).isTrue();
    SettledFigures rest = Objects.requireNonNull(b.operation().rest());
    assertThat(rest.get(MachineFigure.DOWNFORCE).value())
        .isCloseTo(
            rest.get(MachineFigure.FLOOR_FORCE).value()
                + rest.get(MachineFigure.LIP_FORCE).value()
                + rest.get(MachineFigure.FAN_THRUST).value()
                + rest.get(MachineFigure.VALVE_FORCE).value(),
            within(1e-6));
    assertThat(rest.get(MachineFigure.FLOOR_FORCE).value())
        .isCloseTo(
            rest.get(MachineFigure.SUCTION).value() * b.machine().floor().area(), within(1e-9));
    // lips of 0.01 ± 0.001 m: that band is in theirs, and in the downforce
    Estimate lips = rest.get(MachineFigure.LIP_FORCE);
    assertThat(0.5 * (lips.high() - lips.low())).isGreaterThan(0.1 * lips.value());
    assertThat(rest.get(MachineFigure.DOWNFORCE).high() - rest.get(MachineFigure.DOWNFORCE).low())
        .isGreaterThan(lips.high() - lips.low());
    assertThat(rest.edgeLeaks().stream().mapToDouble(Estimate::value).sum())
        .isCloseTo(
            b.operation().points().stream()
                .filter(OperatingPoint::settled)
                .mapToDouble(p -> p.flows().leak().value())
                .sum(),
            within(1e-9));
    double axles = rest.axleLoads().stream().mapToDouble(Estimate::value).sum();
    assertThat(axles)
        .isCloseTo(rest.get(MachineFigure.DOWNFORCE).value() + 4.6 * Wheels.GRAVITY, within(1e-6));
    assertThat(
            rest.get(MachineFigure.RUN_TIME).value()
                * rest.get(MachineFigure.ELECTRICAL_POWER).value())
        .isCloseTo(0.8 * 90 * 3600, within(1e-6));
    assertThat(b.holding().holds()).hasSize(5);
    assertThat(b.driving().steps()).filteredOn(c -> c.kind() == StepCrossing.Kind.DIP).hasSize(8);
    assertThat(b.changes().trades().get(0).kind()).isEqualTo(Trade.Kind.AS_IT_IS);
    assertThat(Objects.requireNonNull(b.changes().trades().get(0).downforce()).value())
        .isCloseTo(rest.get(MachineFigure.DOWNFORCE).value(), within(1e-9));
    assertThat(b.operation().points()).anyMatch(OperatingPoint::settled);
    assertThat(b.leakPoints()).doesNotHaveDuplicates().hasSizeLessThanOrEqualTo(30);
  }

  /** A lip that leaks less holds more on the same fan. */
  @Test
  void ranksLipsByDownforce() throws InputException {
    List<LipProfile> lips = List.of(lip("round-nose"), lip("labyrinth-three-teeth"));
    MachineBalance b =
        balance(
            crawler(),
            lips,
            s ->
                point(
                    s,
                    s.profile().name().equals(lips.get(1).name()) ? 0.55 : 0.85,
                    SolveStatus.CONVERGED));
    assertThat(b.changes().lips())
        .extracting(RankedLip::name)
        .containsExactly(lips.get(1).name(), lips.get(0).name());
    assertThat(Objects.requireNonNull(b.changes().lips().get(0).trade().downforce()).low())
        .isGreaterThan(
            Objects.requireNonNull(b.changes().lips().get(1).trade().downforce()).high());
  }

  /** A point whose coefficient on grids 2 : 3 : 4 is off by an error common to all lips. */
  private static LeakPoint onGrids(SealSection s, double c, double error) {
    List<GridLeak> grids = new ArrayList<>();
    for (int k = 0; k < 3; k++) {
      double size = 2.0 / (2 + k);
      grids.add(
          new GridLeak(k, 800 * (2 + k) * (2 + k) / 4, c * (1 + error * size), 1e-6 * c, -0.01));
    }
    LeakPoint p = point(s, c, SolveStatus.CONVERGED);
    return new LeakPoint(
        p.lip(),
        p.conditions(),
        p.status(),
        p.regime(),
        new Estimate(c, 0.05 * c, 0, 0, 0, Estimate.Trend.MONOTONE),
        p.lift(),
        List.of(),
        new LeakGrids(grids, List.of()));
  }

  /**
   * Lips 3 % apart in leak, each with a band of 5 % and one and the same grid error of 2 %: their
   * own bands overlap, that of the ratio tells them apart. Lips that are the same tie.
   */
  @Test
  void errorsCommonToTwoLipsCancelInTheirRanking() throws InputException {
    List<LipProfile> lips =
        List.of(lip("round-nose"), lip("labyrinth-three-teeth"), lip("knife-fin"));
    MachineBalance b =
        balance(
            crawler(),
            lips,
            s -> onGrids(s, s.profile().name().equals(lips.get(1).name()) ? 0.679 : 0.7, 0.04));
    RankedLip best = b.changes().lips().get(0);
    RankedLip second = b.changes().lips().get(1);
    assertThat(best.name()).isEqualTo(lips.get(1).name());
    assertThat(Objects.requireNonNull(best.trade().downforce()).low())
        .isLessThan(Objects.requireNonNull(second.trade().downforce()).high());
    assertThat(best.tiedWith()).isEmpty();
    assertThat(b.changes().lips()).extracting(RankedLip::rank).containsExactly(1, 2, 2);
    assertThat(second.tiedWith()).containsExactly(b.changes().lips().get(2).name());
    Estimate relative = Objects.requireNonNull(best.relative());
    assertThat(relative.low()).isGreaterThan(1).isLessThan(relative.value());
    assertThat(relative.high() - relative.low()).isLessThan(0.01);
    assertThat(Objects.requireNonNull(second.relative()).value()).isEqualTo(1);
  }

  /** Differences that the grids do not settle make a tie, whatever the finest grid says. */
  @Test
  void aRatioThatMovesFromGridToGridIsATie() throws InputException {
    List<LipProfile> lips = List.of(lip("round-nose"), lip("labyrinth-three-teeth"));
    MachineBalance b =
        balance(
            crawler(),
            lips,
            s -> onGrids(s, 0.7, s.profile().name().equals(lips.get(1).name()) ? 0.1 : -0.1));
    assertThat(b.changes().lips()).extracting(RankedLip::rank).containsExactly(1, 1);
    assertThat(b.changes().lips().get(0).tiedWith())
        .containsExactly(b.changes().lips().get(1).name());
  }

  @Test
  void standsInForSectionsThatFailed() throws InputException {
    Machine m = crawler();
    MachineBalance whole = balance(m, List.of(), s -> point(s, 0.7, SolveStatus.CONVERGED));
    MachineBalance b =
        balance(
            m,
            List.of(),
            s -> point(s, 0.7, s.suction() > 500 ? SolveStatus.FAILED : SolveStatus.CONVERGED));
    assertThat(b.notices()).extracting(Notice::code).contains("leak.failed");
    Estimate with = Objects.requireNonNull(b.operation().rest()).get(MachineFigure.SUCTION);
    Estimate without = Objects.requireNonNull(whole.operation().rest()).get(MachineFigure.SUCTION);
    assertThat(with.value()).isCloseTo(without.value(), within(1e-6));
    assertThat(with.high() - with.low()).isGreaterThan(3 * (without.high() - without.low()));
  }

  @Test
  void tellsWhenNothingIsKnown() throws InputException {
    MachineBalance b = balance(crawler(), List.of(), s -> point(s, 0, SolveStatus.FAILED));
    assertThat(b.complete()).isFalse();
    assertThat(b.notices()).hasSize(1);
  }

  /** Ground that drags air in under the front and out under the rear, taken edge by edge. */
  @Test
  void theTravelSpeedChangesTheLeaks() throws InputException {
    MachineBalance b =
        balance(
            crawler(),
            List.of(),
            s -> point(s, s.ground().spanwiseSpeed() > 0 ? 0.6 : 0.7, SolveStatus.CONVERGED));
    double rest = Objects.requireNonNull(b.operation().rest()).get(MachineFigure.SUCTION).value();
    assertThat(
            Objects.requireNonNull(b.operation().travelling()).get(MachineFigure.SUCTION).value())
        .isGreaterThan(rest + 1);
  }

  @Test
  void warnsOfLimits() throws InputException {
    Machine m = crawler();
    Machine fast = m.withFan(m.fan().atSpeed(1.24 * m.fan().speed()));
    MachineBalance b = balance(fast, List.of(), s -> point(s, 0.8, SolveStatus.CONVERGED));
    assertThat(b.notices()).extracting(Notice::code).contains("fan.speed", "power.motor");
  }
}
