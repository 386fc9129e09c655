package hemline.solver.refine;

import static hemline.solver.refine.MadeUpGrids.failed;
import static hemline.solver.refine.MadeUpGrids.family;
import static hemline.solver.refine.MadeUpGrids.figures;
import static hemline.solver.refine.MadeUpGrids.leak;
import static hemline.solver.refine.MadeUpGrids.run;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import hemline.shared.fluid.FluidState;
import hemline.shared.problem.Notice;
import hemline.shared.problem.NoticeKind;
import hemline.shared.result.Estimate;
import hemline.shared.result.Figure;
import hemline.shared.result.GridRun;
import hemline.shared.result.RawFigures;
import hemline.shared.result.RawFigures.Vortex;
import hemline.shared.result.Regime;
import hemline.shared.result.SectionResult;
import hemline.shared.result.SolveStatus;
import hemline.shared.section.Drive;
import hemline.shared.section.DuctSection;
import hemline.shared.section.DuctSection.Inlet;
import hemline.shared.section.DuctSection.Wall;
import hemline.shared.section.GroundMotion;
import hemline.shared.section.SealSection;
import hemline.solver.flow.Closure;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

class EstimatesTest {
  private static final FluidState AIR = new FluidState(1.225, 1.46e-5);
  private static final SealSection LIP = MadeUpGrids.lip(2e-3, 600, new GroundMotion(3, 1), AIR);

  private static SectionResult result(GridFamily family, GridFamily... others) {
    return Estimates.result(LIP, 0, family, List.of(others), List.of(), false);
  }

  private static List<String> codes(SectionResult result) {
    return result.notices().stream().map(Notice::code).toList();
  }

  private static Notice notice(SectionResult result, NoticeKind kind) {
    return result.notices().stream().filter(n -> n.kind() == kind).findFirst().orElseThrow();
  }

  private static RawFigures figuresWith(
      Map<Figure, Double> scalars, List<Double> shares, Vortex... vortices) {
    return new RawFigures(scalars, shares, List.of(), List.of(vortices));
  }

  @Test
  void aSettledFamilyGivesExtrapolatedValuesWithBands() {
    SectionResult r =
        result(family(Closure.SST, leak(0, 0.0492), leak(1, 0.0485), leak(2, 0.0482)));

    Estimate q = r.figures().get(Figure.LEAK_FLOW);
    assertThat(q).isNotNull();
    assertThat(q.value()).isBetween(0.0471, 0.0481);
    assertThat(q.numerical()).isCloseTo(1.25 * (0.0482 - q.value()), within(1e-12));
    assertThat(q.trend()).isEqualTo(Estimate.Trend.MONOTONE);
    assertThat(r.status()).isEqualTo(SolveStatus.CONVERGED);
    assertThat(r.regime()).isEqualTo(Regime.TURBULENT);
    assertThat(r.closure()).isEqualTo("sst");
    assertThat(r.name()).isEqualTo("flat");
    assertThat(r.conditions().gap()).isEqualTo(2e-3);
    assertThat(r.conditions().suction()).isEqualTo(600);
    assertThat(r.conditions().groundSpeed()).isEqualTo(3);
    assertThat(r.conditions().spanwiseSpeed()).isEqualTo(1);
    assertThat(r.grids()).hasSize(3);
    assertThat(r.notices()).isEmpty();
  }

  @Test
  void theSpreadOfTheLeakIsTheIterationPart() {
    Map<Figure, Double> scalars =
        Map.of(
            Figure.LEAK_FLOW, 0.05,
            Figure.LIP_FORCE_X, 1.2,
            Figure.LIP_FORCE_Y, 0.0,
            Figure.PRESSURE_DROP, 600.0);
    GridRun[] runs = new GridRun[3];
    for (int k = 0; k < 3; k++) {
      runs[k] = run(k, SolveStatus.UNSTEADY, figuresWith(scalars, List.of()), 0.001);
    }
    SectionResult r = result(family(Closure.SST, runs));

    assertThat(r.status()).isEqualTo(SolveStatus.UNSTEADY);
    assertThat(r.figures().get(Figure.LEAK_FLOW).iteration()).isCloseTo(0.001, within(1e-15));
    assertThat(r.figures().get(Figure.LIP_FORCE_X).iteration())
        .isCloseTo(2 * 0.02 * 1.2, within(1e-12));
    double dynamic = 0.5 * 1.225 * 25 * 25 * 2e-3;
    assertThat(r.figures().get(Figure.LIP_FORCE_Y).iteration())
        .isCloseTo(2 * 0.02 * dynamic, within(1e-12));
    assertThat(r.figures().get(Figure.PRESSURE_DROP).iteration()).isZero();
    assertThat(codes(r)).containsExactly("flow.unsteady");
    Notice told = notice(r, NoticeKind.FLOW_UNSTEADY);
    assertThat(told.names()).containsExactly("wandering");
    assertThat(told.numbers())
        .satisfies(n -> assertThat(n.get(1) / n.get(2)).isCloseTo(0.02, within(1e-12)));
  }

  @Test
  void sharesSumToOne() {
    GridRun[] runs = new GridRun[3];
    List<List<Double>> shares =
        List.of(List.of(0.5, 0.3, 0.2), List.of(0.52, 0.3, 0.18), List.of(0.53, 0.3, 0.1699));
    for (int k = 0; k < 3; k++) {
      runs[k] =
          run(
              k,
              SolveStatus.CONVERGED,
              figuresWith(Map.of(Figure.LEAK_FLOW, 0.05), shares.get(k)),
              0);
    }
    SectionResult r = result(family(Closure.SST, runs));
    assertThat(r.figures().stageShares()).hasSize(3);
    assertThat(r.figures().stageShares().stream().mapToDouble(Estimate::value).sum())
        .isCloseTo(1, within(1e-14));
    assertThat(r.figures().stageShares().get(0).numerical()).isPositive();
  }

  @Test
  void vorticesAreFoundAgainByTheirCentres() {
    Vortex[][] vortices = {
      {new Vortex(0.06, 1.02, 1), new Vortex(0.085, 3.05, 1)},
      {new Vortex(0.095, 3.01, 1), new Vortex(0.065, 1.01, 1)},
      {new Vortex(0.1, 3, 1), new Vortex(0.07, 1, 1), new Vortex(0.01, 3, 0.2)}
    };
    GridRun[] runs = new GridRun[3];
    for (int k = 0; k < 3; k++) {
      runs[k] =
          run(
              k,
              SolveStatus.CONVERGED,
              figuresWith(Map.of(Figure.LEAK_FLOW, 0.05), List.of(), vortices[k]),
              0);
    }
    SectionResult r = result(family(Closure.SST, runs));

    assertThat(r.figures().trappedVortices()).hasSize(3);
    assertThat(r.figures().trappedVortices().get(0).strength().value())
        .isCloseTo(0.115, within(1e-12));
    assertThat(r.figures().trappedVortices().get(0).strength().trend())
        .isEqualTo(Estimate.Trend.MONOTONE);
    assertThat(r.figures().trappedVortices().get(1).strength().numerical()).isBetween(0.005, 0.04);
    Estimate onlyFine = r.figures().trappedVortices().get(2).strength();
    assertThat(onlyFine.low()).isCloseTo(0, within(1e-15));
  }

  @Test
  void otherModelsWidenTheBandOnTheirSide() {
    SectionResult r =
        result(
            family(Closure.SST, leak(0, 0.05), leak(1, 0.05), leak(2, 0.05)),
            family(Closure.LAMINAR, leak(0, 0.046), leak(1, 0.047), leak(2, 0.048)),
            family(Closure.SA, leak(0, 0.053), leak(1, 0.053), failed(2)));
    Estimate q = r.figures().get(Figure.LEAK_FLOW);
    double reynolds = 0.05 / AIR.kinematicViscosity();
    double fade = TransitionFade.weight(Closure.SST, Closure.LAMINAR, reynolds);
    double residual = ModelResidual.ATTACHED.flow(Closure.SST) * 0.05;
    assertThat(fade).isBetween(0.05, 0.15);
    assertThat(q.modelLow()).isCloseTo(Math.max(residual, fade * 0.002), within(1e-12));
    assertThat(q.modelHigh()).isCloseTo(0.003, within(1e-12));
    assertThat(q.low()).isCloseTo(0.05 - q.modelLow(), within(1e-12));
    assertThat(q.high()).isCloseTo(0.053, within(1e-12));
  }

  @Test
  void theTransitionBandIsNamed() {
    double q = 1500 * AIR.kinematicViscosity();
    GridFamily sst = family(Closure.SST, leak(0, q), leak(1, q), leak(2, q));
    Notice told = notice(result(sst), NoticeKind.REGIME_TRANSITION);
    assertThat(told.numbers().get(0)).isCloseTo(1500, within(1e-9));
    assertThat(told.numbers().subList(1, 3)).containsExactly(500.0, 3000.0);
    GridFamily laminar = family(Closure.LAMINAR, leak(0, q), leak(1, q), leak(2, 0.95 * q));
    SectionResult both = result(sst, laminar);
    assertThat(both.regime()).isEqualTo(Regime.TRANSITIONAL);
    double way = TransitionFade.weight(Closure.SST, Closure.LAMINAR, 1500);
    assertThat(way).isBetween(0.2, 0.6);
    assertThat(notice(both, NoticeKind.REGIME_REACHED).numbers().get(3)).isEqualTo(way);
    double low = 800 * AIR.kinematicViscosity();
    SectionResult all =
        result(
            family(Closure.SST, leak(0, low), leak(1, low), leak(2, low)),
            family(Closure.LAMINAR, leak(0, low), leak(1, low), leak(2, 0.95 * low)));
    assertThat(notice(all, NoticeKind.REGIME_SPANNED).numbers()).hasSize(3);
    GridFamily nothing = family(Closure.LAMINAR, failed(0));
    assertThat(result(sst, nothing).notices())
        .contains(told, NoticeKind.MODEL_MISSING.of("laminar"));
  }

  @Test
  void aFastJetBringsTheExpansionOfTheAir() {
    SealSection strong = MadeUpGrids.lip(2e-3, 10_000, GroundMotion.STILL, AIR);
    GridFamily family = family(Closure.SST, leak(0, 0.2), leak(1, 0.2), leak(2, 0.2));
    SectionResult r = Estimates.result(strong, 0, family, List.of(), List.of(), false);
    List<Double> told = notice(r, NoticeKind.JET_MACH).numbers();
    assertThat(told.get(0)).isCloseTo(0.39, within(5e-3));
    assertThat(told.get(1)).isCloseTo(0.054, within(5e-4));
    assertThat(r.figures().get(Figure.EXPANSIBILITY).value()).isCloseTo(0.94566, within(1e-5));
    assertThat(r.figures().get(Figure.LEAK_FLOW).value()).isEqualTo(0.2);
  }

  @Test
  void groundThatOutrunsTheLeakBringsASecondFlow() {
    GridFamily family = family(Closure.SST, leak(0, 0.02), leak(1, 0.02), leak(2, 0.02));
    double jet = Math.sqrt(2 * 100 / AIR.density());
    for (double share : new double[] {-0.6, -0.4, 0.6}) {
      SealSection c = MadeUpGrids.lip(4e-3, 100, new GroundMotion(share * jet, 0), AIR);
      SectionResult r = Estimates.result(c, 0, family, List.of(), List.of(), false);
      assertThat(codes(r).contains("flow.two-branches"))
          .as("share %s", share)
          .isEqualTo(share < -0.5);
    }
  }

  @Test
  void aFailedFinestGridIsSaidAndTheBandGrows() {
    GridRun coarse = leak(0, 0.0492);
    GridRun middle = leak(1, 0.0485);
    for (GridFamily two :
        List.of(
            family(Closure.SST, coarse, middle), family(Closure.SST, coarse, middle, failed(2)))) {
      SectionResult r = result(two);
      assertThat(r.status()).isEqualTo(SolveStatus.CONVERGED);
      assertThat(r.notices()).contains(NoticeKind.GRIDS_WITHOUT_FINEST.of(2, 3));
      assertThat(r.figures().get(Figure.LEAK_FLOW).numerical())
          .isCloseTo(3 * 0.0007 / 0.5, within(1e-12));
    }
    SectionResult one = result(family(Closure.SST, failed(0), failed(1), leak(2, 0.05)));
    assertThat(one.notices()).contains(NoticeKind.GRIDS_INCOMPLETE.of(1, 3));
    assertThat(one.figures().get(Figure.LEAK_FLOW).numerical()).isCloseTo(0.01, within(1e-12));
  }

  @Test
  void nothingUsableIsAFailureWithAReason() {
    SectionResult failed = result(family(Closure.SST, failed(0), failed(1)));
    assertThat(failed.status()).isEqualTo(SolveStatus.FAILED);
    assertThat(failed.figures().scalars()).isEmpty();
    assertThat(failed.notices()).containsExactly(NoticeKind.SOLVE_NO_FLOW.of(2));
    assertThat(failed.grids()).hasSize(2);

    SectionResult stopped =
        Estimates.result(LIP, 0, family(Closure.SST), List.of(), List.of(), true);
    assertThat(stopped.status()).isEqualTo(SolveStatus.CANCELLED);
    assertThat(stopped.notices()).containsExactly(NoticeKind.SOLVE_STOPPED_EARLY.of());

    SectionResult partly =
        Estimates.result(LIP, 0, family(Closure.SST, leak(0, 0.05)), List.of(), List.of(), true);
    assertThat(partly.status()).isEqualTo(SolveStatus.CANCELLED);
    assertThat(partly.figures().scalars()).containsKey(Figure.LEAK_FLOW);
    assertThat(partly.notices()).contains(NoticeKind.SOLVE_STOPPED_PARTLY.of(1, 3));
  }

  @Test
  void aDuctReportsItsMeasuredPressureDrop() {
    Wall still = new Wall(0, 0, false);
    DuctSection duct =
        new DuctSection(
            "rig",
            new DuctSection.Channel(0, 10, 1),
            List.of(),
            new FluidState(1, 0.05),
            new DuctSection.Inflow(new Drive.LeakFlow(1), Inlet.DEVELOPED),
            new DuctSection.Walls(still, still, null),
            new DuctSection.Measures(null, 1),
            "auto");
    GridRun[] runs = new GridRun[3];
    for (int k = 0; k < 3; k++) {
      Map<Figure, Double> scalars =
          Map.of(Figure.LEAK_FLOW, 1.0, Figure.PRESSURE_DROP, 3.6 + 0.01 * k);
      runs[k] = run(k, SolveStatus.CONVERGED, figuresWith(scalars, List.of()), 1e-4);
    }
    SectionResult r =
        Estimates.result(duct, 0, family(Closure.LAMINAR, runs), List.of(), List.of(), false);
    assertThat(r.conditions().suction()).isEqualTo(3.62);
    assertThat(r.regime()).isEqualTo(Regime.LAMINAR);
    assertThat(r.figures().get(Figure.LEAK_FLOW)).satisfies(q -> assertThat(q.high()).isEqualTo(1));
    assertThat(r.figures().get(Figure.PRESSURE_DROP).iteration()).isCloseTo(7.24e-4, within(1e-9));
    assertThat(r.figures().scalars()).doesNotContainKey(Figure.EXPANSIBILITY);
    assertThat(r.notices().stream().map(Notice::code)).isEmpty();
  }

  @Test
  @Tag("many")
  void noInputBringsInfinityOrNotANumber() {
    long seed = Long.getLong("hemline.seed", 7L);
    SplittableRandom random = new SplittableRandom(seed);
    double[] odd = {
      0, -0.0, 1e-300, -1e-300, 1e300, Double.NaN, Double.POSITIVE_INFINITY, 0.05, -0.05, 0.0501
    };
    SolveStatus[] statuses = SolveStatus.values();
    for (int n = 0; n < 3000; n++) {
      List<GridRun> runs = new ArrayList<>();
      int places = random.nextInt(4);
      for (int k = 0; k < places; k++) {
        Map<Figure, Double> scalars =
            Map.of(
                Figure.LEAK_FLOW, odd[random.nextInt(odd.length)],
                Figure.LIP_FORCE_Y, odd[random.nextInt(odd.length)],
                Figure.PRESSURE_DROP, odd[random.nextInt(odd.length)]);
        List<Double> shares =
            List.of(odd[random.nextInt(odd.length)], odd[random.nextInt(odd.length)]);
        Vortex vortex =
            new Vortex(odd[random.nextInt(odd.length)], odd[random.nextInt(odd.length)], 0.1);
        GridRun run =
            run(
                k,
                statuses[random.nextInt(statuses.length)],
                figuresWith(scalars, shares, vortex),
                odd[random.nextInt(odd.length)]);
        runs.add(
            random.nextInt(5) == 0
                ? new GridRun(
                    random.nextInt(3), 1, run.status(), 0, 0, run.figures(), run.leakSpread())
                : run);
      }
      GridFamily family = family(Closure.SST, runs.toArray(GridRun[]::new));
      SectionResult r = result(family, family);
      List<Estimate> all = new ArrayList<>(r.figures().scalars().values());
      all.addAll(r.figures().stageShares());
      r.figures().trappedVortices().forEach(v -> all.add(v.strength()));
      assertThat(all)
          .as("seed %d, case %d", seed, n)
          .allSatisfy(
              e -> {
                assertThat(e.low()).isFinite().isLessThanOrEqualTo(e.value());
                assertThat(e.high()).isFinite().isGreaterThanOrEqualTo(e.value());
              });
      assertThat(r.conditions().suction()).isFinite();
    }
  }

  @Test
  void figuresOfARunThatIsMissingAreLeftOut() {
    SectionResult r = result(family(Closure.SST, leak(0, 0.05), leak(1, 0.05), leak(2, 0.05)));
    assertThat(r.figures().scalars()).containsOnlyKeys(Figure.LEAK_FLOW, Figure.EXPANSIBILITY);
    assertThat(figures(1).stageShares()).isEmpty();
  }
}
