package hemline.viewer.model;

import static org.assertj.core.api.Assertions.assertThat;

import hemline.shared.fluid.Air;
import hemline.shared.profile.LipProfile;
import hemline.shared.profile.LipResolver;
import hemline.shared.profile.Starter;
import hemline.shared.result.SolveStatus;
import hemline.shared.section.GroundMotion;
import hemline.solver.flow.CancelToken;
import hemline.solver.flow.Closure;
import hemline.solver.flow.ProgressListener;
import hemline.solver.grid.MeshLevel;
import hemline.solver.refine.FamilySolver;
import hemline.solver.refine.GridFamily;
import hemline.solver.refine.SectionFamily;
import hemline.solver.refine.SolveRequest;
import hemline.solver.study.PlainFlat;
import hemline.solver.study.Swept;
import hemline.viewer.project.KeptStudy;
import hemline.viewer.project.StudyQuestion;
import hemline.viewer.project.StudyStore;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.BooleanSupplier;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Studies without a window: this thread is the screen's; the solver is the real one, asked once for
 * each section.
 */
final class StudyDeskTest {
  private static final LipProfile FLAT = lip(2e-3, "flat 2");
  private final BlockingQueue<Runnable> screen = new LinkedBlockingQueue<>();
  @TempDir Path dir;
  private StudyDesk desk;

  private static LipProfile lip(double width, String name) {
    LipProfile flat =
        Objects.requireNonNull(
            LipResolver.check(new Starter.Flat(width, 10e-3).drawing()).profile());
    return new LipProfile(name, "flat", "", flat.outline(), flat.mountEdge(), List.of());
  }

  @BeforeEach
  void empty() {
    desk = desk();
  }

  private StudyDesk desk() {
    return desk(new Counting(Integer.MAX_VALUE));
  }

  private StudyDesk desk(SectionFamily family) {
    return listed(
        new StudyDesk(
            family,
            new StudyStore(dir, "this build"),
            Runnable::run,
            screen::add,
            Clock.systemUTC()));
  }

  /** Lets the screen hear of what was listed. */
  private StudyDesk listed(StudyDesk made) {
    for (Runnable next = screen.poll(); next != null; next = screen.poll()) {
      next.run();
    }
    return made;
  }

  private void until(BooleanSupplier done) throws InterruptedException {
    long start = System.nanoTime();
    while (!done.getAsBoolean()) {
      Runnable next = screen.poll(1, TimeUnit.SECONDS);
      if (next != null) {
        next.run();
      }
      assertThat(System.nanoTime() - start).isLessThan(60_000_000_000L);
    }
  }

  private static StudyQuestion curve(Swept swept, boolean relative, Double... values) {
    return curve(swept, relative ? PlainFlat.asWideAs(FLAT) : null, values);
  }

  /** A curve of 2 mm beside one of 1 mm: no section of the one is also one of the other. */
  private static StudyQuestion besideNarrower(Double... speeds) {
    return curve(Swept.GROUND_SPEED, lip(1e-3, "flat 1"), speeds);
  }

  private static StudyQuestion curve(Swept swept, @Nullable LipProfile baseline, Double... values) {
    return new StudyQuestion(
        swept,
        List.of(FLAT),
        baseline,
        List.of(values),
        new StudyQuestion.Held(0.5e-3, 20, GroundMotion.STILL, Air.STANDARD),
        new StudyQuestion.Solving(MeshLevel.COARSE, Closure.LAMINAR, false));
  }

  @Test
  void aCurveIsSolvedKeptAndFoundAgainAfterARestart() throws Exception {
    StudyQuestion question = curve(Swept.GAP, true, 0.4e-3, 0.5e-3);
    List<KeptStudy> seen = new ArrayList<>();
    desk.shown().subscribe((before, now) -> seen.add(now));
    assertThat(desk.start(question, 2)).isEmpty();
    assertThat(desk.work().running().get()).isTrue();
    until(() -> !desk.work().running().get());
    KeptStudy study = desk.shown().get();
    assertThat(study).isNotNull();
    assertThat(study.complete()).isTrue();
    assertThat(seen.get(0).complete()).as("points are shown as they come").isFalse();
    assertThat(seen.get(0).results()).hasSize(1);
    assertThat(study.relative().relativeLeak()).allSatisfy(r -> assertThat(r.value()).isEqualTo(1));
    assertThat(study.relative().lip().gapExponent().value()).isBetween(1.0, 3.2);
    StudyDesk again = desk();
    assertThat(again.kept().get()).containsExactly(study);
    again.start(question, 2);
    assertThat(again.work().running().get()).isFalse();
    assertThat(again.shown().get()).isEqualTo(study);
    assertThat(again.current(study)).isTrue();
    again.remove(study);
    listed(again);
    assertThat(again.kept().get()).isEmpty();
    assertThat(again.shown().get()).isNull();
    again.bringBack();
    listed(again);
    assertThat(again.kept().get()).containsExactly(study);
    assertThat(again.shown().get()).isEqualTo(study);
    assertThat(again.forgotten().get()).isNull();
  }

  @Test
  void aStoppedStudyKeepsWhatItHas() throws Exception {
    Counting family = new Counting(1);
    desk = desk(family);
    desk.start(curve(Swept.GROUND_SPEED, false, 0.0, 0.1, 0.2), 1);
    stop(desk, family);
    KeptStudy part = desk.shown().get();
    assertThat(part.complete()).isFalse();
    assertThat(part.results()).hasSize(1).allMatch(r -> r.status() == SolveStatus.CONVERGED);
    assertThat(desk().kept().get()).containsExactly(part);
  }

  @Test
  void aStoppedStudyGoesOnAfterARestartWithTheSameBits() throws Exception {
    Counting family = new Counting(2);
    desk = desk(family);
    StudyQuestion question = besideNarrower(0.0, 0.1);
    desk.start(question, 1);
    stop(desk, family);
    assertThat(desk.shown().get().complete()).isFalse();
    goesOn(question);
  }

  /** Stops a study whose solver waits after the sections that it may solve. */
  private void stop(StudyDesk desk, Counting family) throws InterruptedException {
    until(() -> family.waits.get() > 0);
    desk.work().stop();
    until(() -> !desk.work().running().get());
  }

  /** A study that was broken off after some solves, in a program that starts anew. */
  private void goesOn(StudyQuestion question) throws Exception {
    int done = jsonFiles(dir.resolve("sections")).size();
    assertThat(done).isEqualTo(2);
    Counting family = new Counting(Integer.MAX_VALUE);
    StudyDesk later = desk(family);
    KeptStudy part = later.kept().get().get(0);
    assertThat(part.complete()).isFalse();
    assertThat(part.results()).isNotEmpty();
    later.start(part.question(), 2);
    until(() -> !later.work().running().get());
    KeptStudy whole = later.shown().get();
    assertThat(whole.complete()).isTrue();
    assertThat(whole.run().seconds()).isGreaterThan(part.run().seconds());
    assertThat(family.solves.get()).as("only what was missing is solved").isEqualTo(2);
    StudyDesk other =
        new StudyDesk(
            new FamilySolver(),
            new StudyStore(dir.resolve("other"), "this build"),
            Runnable::run,
            screen::add,
            Clock.systemUTC());
    other.start(question, 1);
    until(() -> !other.work().running().get());
    assertThat(whole.relative()).isEqualTo(other.shown().get().relative());
    assertThat(part.results()).isSubsetOf(whole.results());
    later.remove(whole);
    later.start(question, 1);
    until(() -> !later.work().running().get());
    assertThat(family.solves.get()).as("a whole study leaves no sections behind").isEqualTo(6);
  }

  @Test
  void aStudyBrokenOffByACrashLeavesItsSections() throws Exception {
    Counting family = new Counting(2);
    StudyQuestion question = besideNarrower(0.0, 0.1);
    Path broken = dir.resolve("broken");
    StudyDesk first =
        new StudyDesk(
            family,
            new StudyStore(broken, "this build"),
            Runnable::run,
            screen::add,
            Clock.systemUTC());
    first.start(question, 1);
    until(() -> family.waits.get() > 0);
    // what lies on disk in the midst of it
    for (Path file : jsonFiles(broken)) {
      Path target = dir.resolve(broken.relativize(file));
      Files.createDirectories(target.getParent());
      Files.copy(file, target);
    }
    stop(first, family);
    goesOn(question);
  }

  private static List<Path> jsonFiles(Path folder) throws IOException {
    try (var all = Files.walk(folder)) {
      return all.filter(f -> f.toString().endsWith(".json")).toList();
    }
  }

  @Test
  void sectionsOfAnotherBuildAreNotTaken() throws Exception {
    Counting family = new Counting(1);
    desk = desk(family);
    StudyQuestion question = curve(Swept.GAP, false, 0.4e-3, 0.5e-3);
    desk.start(question, 1);
    stop(desk, family);
    Counting again = new Counting(Integer.MAX_VALUE);
    StudyDesk newer =
        new StudyDesk(
            again,
            new StudyStore(dir, "newer build"),
            Runnable::run,
            screen::add,
            Clock.systemUTC());
    newer.start(question, 1);
    until(() -> !newer.work().running().get());
    assertThat(again.solves.get()).isEqualTo(2);
  }

  /** Counts solves, and after as many as it may do waits until it is cancelled. */
  private static final class Counting implements SectionFamily {
    private static final Map<SolveRequest, GridFamily> SOLVED = new ConcurrentHashMap<>();
    private final SectionFamily solver = new FamilySolver();
    private final AtomicInteger begun = new AtomicInteger();
    final AtomicInteger solves = new AtomicInteger();
    final AtomicInteger waits = new AtomicInteger();
    private final int most;

    Counting(int most) {
      this.most = most;
    }

    @Override
    public GridFamily solve(SolveRequest request, CancelToken cancel, ProgressListener progress) {
      if (begun.incrementAndGet() > most) {
        waits.incrementAndGet();
        while (!cancel.isCancelled()) {
          Thread.onSpinWait();
        }
        return solver.solve(request, cancel, progress);
      }
      GridFamily solved =
          SOLVED.computeIfAbsent(
              request, asked -> solver.solve(asked, new CancelToken(), progress));
      solves.incrementAndGet();
      return solved;
    }
  }

  @Test
  void rankingOfLips() throws Exception {
    StudyQuestion question =
        new StudyQuestion(
            null,
            List.of(lip(1e-3, "flat 1"), FLAT),
            FLAT,
            List.of(0.5e-3),
            new StudyQuestion.Held(0.5e-3, 20, GroundMotion.STILL, Air.STANDARD),
            new StudyQuestion.Solving(MeshLevel.COARSE, Closure.LAMINAR, false));
    desk.start(question, 2);
    until(() -> !desk.work().running().get());
    assertThat(desk.shown().get().ranking().rows())
        .extracting(row -> row.profile())
        .containsExactly("flat 2", "flat 1");
  }

  @Test
  void wrongQuestionsAreToldAtOnce() {
    StudyQuestion twice =
        new StudyQuestion(
            null,
            List.of(lip(4e-3, "flat"), lip(5e-3, "flat")),
            FLAT,
            List.of(0.5e-3),
            new StudyQuestion.Held(0.5e-3, 20, GroundMotion.STILL, Air.STANDARD),
            new StudyQuestion.Solving(MeshLevel.COARSE, Closure.LAMINAR, false));
    assertThat(desk.start(twice, 1)).isNotEmpty();
    assertThat(desk.work().running().get()).isFalse();
  }

  @Test
  void timeLeftIsToldWhenItIsKnown() {
    assertThat(TimeLeft.words(0.5, 1)).isEmpty();
    assertThat(TimeLeft.words(0.01, 100)).isEmpty();
    assertThat(TimeLeft.words(0.25, 10)).isEqualTo("about 30 s left");
    assertThat(TimeLeft.words(0.5, 300)).isEqualTo("about 5 min left");
    assertThat(TimeLeft.words(1, 300)).isEmpty();
  }
}
