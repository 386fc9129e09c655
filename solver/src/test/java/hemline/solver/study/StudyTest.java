package hemline.solver.study;

import static hemline.solver.study.MadeUpFamily.AIR;
import static hemline.solver.study.MadeUpFamily.SIZES;
import static hemline.solver.study.MadeUpFamily.jet;
import static hemline.solver.study.MadeUpFamily.lip;
import static hemline.solver.study.MadeUpFamily.section;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import hemline.shared.fluid.FluidState;
import hemline.shared.geometry.Outline;
import hemline.shared.geometry.Vertex;
import hemline.shared.problem.Notice;
import hemline.shared.problem.NoticeKind;
import hemline.shared.profile.LipProfile;
import hemline.shared.result.Estimate;
import hemline.shared.result.Figure;
import hemline.shared.result.SectionResult;
import hemline.shared.result.SolveStatus;
import hemline.shared.section.Drive;
import hemline.shared.section.DuctSection;
import hemline.shared.section.SealSection;
import hemline.solver.flow.CancelToken;
import hemline.solver.flow.Closure;
import hemline.solver.flow.ProgressListener;
import hemline.solver.grid.MeshLevel;
import hemline.solver.refine.ModelResidual;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicReference;
import java.util.concurrent.locks.LockSupport;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

@Timeout(30)
class StudyTest {
  private static final LipProfile FLAT = lip("flat");

  private static RunOptions options(Closure closure, boolean spread, int threads) {
    return new RunOptions(MeshLevel.MEDIUM, closure, spread, threads);
  }

  // ---- one section

  private static SectionAnswer run(MadeUpFamily family, double gapReynolds, RunOptions options) {
    double gap = 2e-3;
    double speed = gapReynolds * AIR.kinematicViscosity() / (0.7 * gap);
    return new SectionStudy(family)
        .run(
            section(FLAT).withGap(gap).withSuction(0.5 * AIR.density() * speed * speed),
            options,
            new CancelToken(),
            ProgressListener.NONE);
  }

  private static MadeUpFamily plain() {
    return new MadeUpFamily(
        (section, closure, place) ->
            jet(section, (closure == Closure.LAMINAR ? 0.68 : 0.7) + 0.01 * SIZES[place]));
  }

  private static List<String> closuresSolved(double gapReynolds, Closure closure, boolean spread) {
    MadeUpFamily family = plain();
    run(family, gapReynolds, options(closure, spread, 1));
    return family.solves.stream().map(s -> s.substring(s.indexOf(' ') + 1)).toList();
  }

  @Test
  void otherModelsAreSolvedWhereTheyArePlausible() {
    assertThat(closuresSolved(20_000, Closure.AUTO, false)).containsExactly("sst", "sa");
    assertThat(closuresSolved(3100, Closure.AUTO, false)).containsExactly("sst", "sa", "laminar");
    assertThat(closuresSolved(20_000, Closure.AUTO, true)).containsExactly("sst", "sa");
    assertThat(closuresSolved(20_000, Closure.SA, true)).containsExactly("sa", "sst");
    assertThat(closuresSolved(20_000, Closure.SA, false)).containsExactly("sa");
    assertThat(closuresSolved(8000, Closure.LAMINAR, true)).containsExactly("laminar", "sa");
    assertThat(closuresSolved(1500, Closure.AUTO, false)).containsExactly("sst", "sa", "laminar");
    assertThat(closuresSolved(1500, Closure.AUTO, true)).containsExactly("sst", "sa", "laminar");
    assertThat(closuresSolved(1500, Closure.SST, false)).containsExactly("sst");
    assertThat(closuresSolved(1500, Closure.LAMINAR, false)).containsExactly("laminar");
    assertThat(closuresSolved(100, Closure.LAMINAR, true)).containsExactly("laminar");
    assertThat(closuresSolved(100, Closure.SST, true)).containsExactly("sst", "sa", "laminar");
  }

  @Test
  void theTransitionBandWidensTheAnswer() {
    SectionResult r = run(plain(), 1500, options(Closure.AUTO, false, 1)).result();
    Estimate q = r.figures().get(Figure.LEAK_FLOW);
    double residual = ModelResidual.ATTACHED.flow(Closure.SST);
    assertThat(q.modelLow() / q.value()).isCloseTo(Math.max(residual, 0.02 / 0.7), within(1e-9));
    assertThat(r.closure()).isEqualTo("sst");
    assertThat(r.grids()).hasSize(3);
    assertThat(r.notices()).extracting(Notice::code).containsExactly("regime.transition");
  }

  @Test
  void comparisonsAreSolvedOnTheCoarsestGridOnly() {
    List<String> solved = Collections.synchronizedList(new ArrayList<>());
    MadeUpFamily family =
        new MadeUpFamily(
            (section, closure, place) -> {
              solved.add(closure.key() + place);
              return jet(section, 0.7);
            });
    run(family, 1500, options(Closure.AUTO, false, 1));
    assertThat(solved).containsExactly("sst0", "sst1", "sst2", "sa0", "laminar0");
    solved.clear();
    run(family, 1500, options(Closure.AUTO, true, 1));
    assertThat(solved).containsExactly("sst0", "sst1", "sst2", "sa0", "sa1", "sa2", "laminar0");
  }

  @Test
  void aBrokenComparisonCostsOnlyTheSpread() {
    MadeUpFamily family =
        new MadeUpFamily(
            (section, closure, place) -> {
              if (closure == Closure.LAMINAR) {
                throw new ArithmeticException("no flow");
              }
              return jet(section, 0.7);
            });
    SectionAnswer answer = run(family, 1500, options(Closure.AUTO, false, 1));
    assertThat(answer.result().status()).isEqualTo(SolveStatus.CONVERGED);
    assertThat(answer.result().notices()).extracting(Notice::code).contains("model.missing");
    assertThat(answer.field()).isNotNull();
  }

  @Test
  void aDuctUsesItsOwnModelUnlessAsked() {
    DuctSection duct =
        new DuctSection(
            "rig",
            new DuctSection.Channel(-10, 40, 8),
            List.of(),
            new FluidState(1, 0.05),
            new DuctSection.Inflow(new Drive.LeakFlow(1), DuctSection.Inlet.DEVELOPED),
            new DuctSection.Walls(
                new DuctSection.Wall(0, 0, false), new DuctSection.Wall(0, 0, false), null),
            new DuctSection.Measures(null, 1),
            "sst");
    MadeUpFamily family = plain();
    SectionStudy study = new SectionStudy(family);
    SectionAnswer answer =
        study.run(duct, options(Closure.AUTO, false, 1), new CancelToken(), ProgressListener.NONE);
    study.run(duct, options(Closure.LAMINAR, false, 1), new CancelToken(), ProgressListener.NONE);
    assertThat(family.solves).containsExactly("rig sst", "rig laminar");
    assertThat(answer.result().name()).isEqualTo("rig");
    assertThat(answer.result().conditions().gap()).isEqualTo(1);
  }

  @Test
  void relativeLeakMeasuresAgainstAFlatLipAsWide() {
    LipProfile hook =
        new LipProfile(
            "hook",
            "hook",
            "",
            new Outline(
                List.of(
                    new Vertex(0, 20e-3),
                    new Vertex(0, 0),
                    new Vertex(3e-3, 0, 1),
                    new Vertex(3e-3, 4e-3),
                    new Vertex(3e-3, 20e-3))),
            4,
            List.of());
    LipProfile flat = PlainFlat.asWideAs(hook);
    assertThat(flat.name()).isEqualTo("plain flat 5 mm");
    assertThat(flat.outline().vertices().get(1).x()).isCloseTo(5e-3, within(1e-15));
    assertThat(flat.outline().vertices().get(flat.mountEdge()))
        .isEqualTo(new Vertex(flat.outline().vertices().get(1).x(), 20e-3));

    MadeUpFamily family =
        new MadeUpFamily(
            (section, closure, place) ->
                jet(section, section.profile().name().equals("hook") ? 0.63 : 0.7));
    RelativeAnswer answer =
        new SectionStudy(family)
            .relativeLeak(
                section(hook),
                options(Closure.AUTO, false, 2),
                new CancelToken(),
                ProgressListener.NONE);
    assertThat(answer.relativeLeak()).isNotNull();
    assertThat(answer.relativeLeak().value()).isCloseTo(0.9, within(1e-12));
    assertThat(answer.flat().result().name()).isEqualTo("plain flat 5 mm");
  }

  // ---- sweeps

  @Test
  void aSweepAgainstABaselineKeepsTheLipsBitsAndTellsTheRatioAtEveryPoint() {
    MadeUpFamily.Leak leak =
        (section, closure, place) ->
            (section.profile().name().equals("hook") ? 0.8 : 1)
                * (1 + 0.02 * SIZES[place])
                * (1 + section.ground().speed() / 40)
                * section.gap();
    SealSection hook = section(MadeUpFamily.lip("hook"));
    List<Double> speeds = List.of(5.0, -5.0, 0.0);
    SweepStudy study = new SweepStudy(new MadeUpFamily(leak));
    RelativeSweep sweep =
        study.against(
            FLAT,
            Swept.GROUND_SPEED,
            hook,
            speeds,
            options(Closure.SST, false, 2),
            new CancelToken(),
            ProgressListener.NONE);
    SweepResult alone =
        study.over(
            Swept.GROUND_SPEED,
            hook,
            speeds,
            options(Closure.SST, false, 1),
            new CancelToken(),
            ProgressListener.NONE);
    assertThat(sweep.lip()).isEqualTo(alone);
    assertThat(sweep.lip().gapExponent()).isNull();
    assertThat(sweep.lip().points())
        .extracting(s -> s.conditions().groundSpeed())
        .containsExactly(5.0, -5.0, 0.0);
    assertThat(sweep.baseline().points()).extracting(SectionResult::name).containsOnly(FLAT.name());
    assertThat(sweep.relativeLeak())
        .allSatisfy(ratio -> assertThat(ratio.value()).isCloseTo(0.8, within(1e-12)));
  }

  private static SweepResult sweep(MadeUpFamily.Leak leak, Double... gaps) {
    return new SweepStudy(new MadeUpFamily(leak))
        .overGaps(
            section(FLAT),
            List.of(gaps),
            options(Closure.SST, false, 2),
            new CancelToken(),
            ProgressListener.NONE);
  }

  @Test
  void theGapExponentIsTheSlopeOfTheLogarithms() {
    SweepResult power =
        sweep(
            (section, closure, place) ->
                (1 + 0.02 * SIZES[place]) * Math.pow(section.gap() / 1e-3, 1.25),
            4e-3,
            1e-3,
            2e-3,
            3e-3);
    assertThat(power.points())
        .extracting(s -> s.conditions().gap())
        .containsExactly(4e-3, 1e-3, 2e-3, 3e-3);
    assertThat(power.gapExponent()).isNotNull();
    assertThat(power.gapExponent().value()).isCloseTo(1.25, within(1e-10));
    assertThat(power.gapExponent().numerical()).isLessThan(1e-6); // common errors cancel

    SweepResult bent =
        sweep(
            (section, closure, place) -> {
              double x = Math.log(section.gap() / 2e-3);
              return Math.exp(1.2 * x - 0.2 * x * x);
            },
            1e-3,
            2e-3,
            4e-3,
            8e-3);
    assertThat(bent.gapExponent()).isNotNull();
    assertThat(bent.gapExponent().numerical()).isGreaterThan(0.1);

    SweepResult two =
        sweep(
            (section, closure, place) -> Math.pow(section.gap(), 1 + 0.05 * SIZES[place]),
            1e-3,
            2e-3);
    assertThat(two.gapExponent()).isNotNull();
    assertThat(two.gapExponent().low()).isLessThanOrEqualTo(1);
    assertThat(two.gapExponent().high()).isGreaterThan(1.05);
  }

  @Test
  void thereIsNoExponentWithoutTwoUsableGaps() {
    assertThat(sweep((section, closure, place) -> 0.05, 1e-3).gapExponent()).isNull();
    assertThat(sweep((section, closure, place) -> 0.05, 1e-3, 1e-3).gapExponent()).isNull();
    assertThat(
            sweep(
                    (section, closure, place) -> section.gap() > 1.5e-3 ? Double.NaN : 0.05,
                    1e-3,
                    2e-3)
                .gapExponent())
        .isNull();
    assertThat(
            sweep((section, closure, place) -> section.gap() > 1.5e-3 ? -0.05 : 0.05, 1e-3, 2e-3)
                .gapExponent())
        .isNull();
    assertThat(sweep((section, closure, place) -> 0.05).points()).isEmpty();
  }

  @Test
  void suctionsAreAnsweredInTheirOrder() {
    SweepResult result =
        new SweepStudy(plain())
            .over(
                Swept.SUCTION,
                section(FLAT),
                List.of(600.0, 100.0, 3000.0),
                options(Closure.SST, false, 2),
                new CancelToken(),
                ProgressListener.NONE);
    assertThat(result.points())
        .extracting(s -> s.conditions().suction())
        .containsExactly(600.0, 100.0, 3000.0);
    assertThat(result.gapExponent()).isNull();
  }

  // ---- scheduling

  @Test
  void progressNeverFallsAndEndsAtOne() {
    List<Double> heard = Collections.synchronizedList(new ArrayList<>());
    List<Double> gaps = IntStream.rangeClosed(1, 20).mapToObj(i -> i * 1e-4).toList();
    new SweepStudy(plain())
        .overGaps(
            section(FLAT),
            gaps,
            options(Closure.AUTO, true, 4),
            new CancelToken(),
            (done, what) -> {
              assertThat(what).contains("flat, gap");
              heard.add(done);
            });
    assertThat(heard).isSorted().hasSizeGreaterThan(60);
    assertThat(heard.get(heard.size() - 1)).isEqualTo(1.0);
    assertThat(heard.get(0)).isBetween(0.0, 0.1);
  }

  @Test
  void progressEndsAtOneThoughASolveBreaksOff() {
    List<Double> heard = Collections.synchronizedList(new ArrayList<>());
    MadeUpFamily family =
        new MadeUpFamily(
            (section, closure, place) -> {
              if (section.gap() < 1.5e-3) {
                throw new IllegalStateException("no mesh");
              }
              return jet(section, 0.7);
            });
    SweepResult result =
        new SweepStudy(family)
            .overGaps(
                section(FLAT),
                List.of(1e-3, 2e-3),
                options(Closure.SST, false, 2),
                new CancelToken(),
                (done, what) -> heard.add(done));
    assertThat(heard).isSorted();
    assertThat(heard.get(heard.size() - 1)).isEqualTo(1.0);
    assertThat(result.points().get(0).status()).isEqualTo(SolveStatus.FAILED);
    assertThat(result.points().get(0).notices())
        .containsExactly(NoticeKind.SOLVE_BROKEN.of("no mesh"));
  }

  private static void waitFor(CancelToken cancel) {
    while (!cancel.isCancelled()) {
      LockSupport.parkNanos(1_000_000);
    }
  }

  @Test
  void cancellingAnswersAtOnceAndKeepsWhatIsDone() throws InterruptedException {
    CancelToken cancel = new CancelToken();
    CountDownLatch started = new CountDownLatch(2);
    MadeUpFamily family =
        new MadeUpFamily(
            (section, closure, place) -> jet(section, 0.7),
            (section, closure, token) -> {
              if (section.gap() > 2.5e-3) {
                started.countDown();
                waitFor(token);
              }
            });
    List<Double> gaps = List.of(1e-3, 2e-3, 3e-3, 4e-3, 5e-3, 6e-3);
    AtomicReference<SweepResult> result = new AtomicReference<>();
    Thread caller =
        new Thread(
            () ->
                result.set(
                    new SweepStudy(family)
                        .overGaps(
                            section(FLAT),
                            gaps,
                            options(Closure.SST, false, 2),
                            cancel,
                            ProgressListener.NONE)));
    caller.start();
    assertThat(started.await(10, TimeUnit.SECONDS)).isTrue();
    long before = System.nanoTime();
    cancel.cancel();
    caller.join(10_000);
    assertThat(System.nanoTime() - before).isLessThan(TimeUnit.MILLISECONDS.toNanos(100));

    List<SectionResult> points = result.get().points();
    assertThat(points).hasSize(6);
    assertThat(points.get(0).status()).isEqualTo(SolveStatus.CONVERGED);
    assertThat(points.get(1).status()).isEqualTo(SolveStatus.CONVERGED);
    assertThat(points.subList(2, 6))
        .allSatisfy(
            p -> {
              assertThat(p.status()).isEqualTo(SolveStatus.CANCELLED);
              assertThat(p.notices()).extracting(Notice::code).containsExactly("solve.cancelled");
            });
    assertThat(result.get().gapExponent()).isNull();
  }

  @Test
  void aCancelledRankingSaysSo() {
    CancelToken cancel = new CancelToken();
    cancel.cancel();
    RankingAnswer answer =
        new RankingStudy(plain())
            .rank(
                List.of(lip("teeth")),
                FLAT,
                GapDistribution.even(List.of(1e-3, 2e-3)),
                section(FLAT),
                options(Closure.SST, false, 2),
                cancel,
                ProgressListener.NONE);
    assertThat(answer.answers()).hasSize(4);
    assertThat(answer.ranking().rows()).isEmpty();
    assertThat(answer.ranking().notices()).extracting(Notice::code).contains("ranking.cancelled");
  }

  @Test
  void interruptingTheCallerCancels() throws InterruptedException {
    CancelToken cancel = new CancelToken();
    CountDownLatch started = new CountDownLatch(1);
    MadeUpFamily family =
        new MadeUpFamily(
            (section, closure, place) -> jet(section, 0.7),
            (section, closure, token) -> {
              started.countDown();
              waitFor(token);
            });
    AtomicReference<Boolean> interrupted = new AtomicReference<>(false);
    AtomicReference<SectionAnswer> answer = new AtomicReference<>();
    Thread caller =
        new Thread(
            () -> {
              answer.set(
                  new SectionStudy(family)
                      .run(
                          section(FLAT),
                          options(Closure.SST, false, 1),
                          cancel,
                          ProgressListener.NONE));
              interrupted.set(Thread.currentThread().isInterrupted());
            });
    caller.start();
    assertThat(started.await(10, TimeUnit.SECONDS)).isTrue();
    caller.interrupt();
    caller.join(10_000);
    assertThat(answer.get().result().status()).isEqualTo(SolveStatus.CANCELLED);
    assertThat(interrupted.get()).isTrue();
    assertThat(cancel.isCancelled()).isTrue();
  }

  @Test
  void anErrorOfTheMachineIsNotMistakenForAResult() {
    MadeUpFamily family =
        new MadeUpFamily(
            (section, closure, place) -> {
              throw new StackOverflowError("deep");
            });
    assertThatThrownBy(() -> run(family, 8000, options(Closure.SST, false, 1)))
        .isInstanceOf(IllegalStateException.class)
        .hasCauseInstanceOf(StackOverflowError.class);
  }
}
