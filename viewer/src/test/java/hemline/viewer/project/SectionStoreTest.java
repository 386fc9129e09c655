package hemline.viewer.project;

import static org.assertj.core.api.Assertions.assertThat;

import hemline.shared.file.LipFile;
import hemline.shared.fluid.Air;
import hemline.shared.profile.LipProfile;
import hemline.shared.section.GroundMotion;
import hemline.shared.section.SealSection;
import hemline.solver.flow.CancelToken;
import hemline.solver.flow.Closure;
import hemline.solver.flow.ProgressListener;
import hemline.solver.grid.MeshLevel;
import hemline.solver.refine.FamilySolver;
import hemline.solver.refine.GridFamily;
import hemline.solver.refine.SectionFamily;
import hemline.solver.study.RunOptions;
import hemline.solver.study.SectionAnswer;
import hemline.solver.study.SectionStudy;
import hemline.solver.study.SweepResult;
import hemline.solver.study.SweepStudy;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A section once solved is found again with all its bits, by every study. */
class SectionStoreTest {
  private static final RunOptions OPTIONS =
      new RunOptions(MeshLevel.COARSE, Closure.AUTO, false, 2);

  @TempDir Path dir;
  private final AtomicInteger solves = new AtomicInteger();
  private final SectionFamily solver =
      (request, cancel, progress) -> {
        solves.incrementAndGet();
        return new FamilySolver().solve(request, cancel, progress);
      };
  private SealSection section;

  @BeforeEach
  void read() throws Exception {
    LipProfile flat = LipFile.load(Path.of("../profiles/plain-flat-8.json")).profile();
    section = new SealSection(flat, 0.5e-3, 20, GroundMotion.STILL, Air.STANDARD, List.of());
  }

  private SectionFamily kept(String build, boolean fields) {
    return new SectionStore(dir, build).over(solver, fields);
  }

  private static SectionAnswer run(SectionFamily family, SealSection section) {
    return new SectionStudy(family).run(section, OPTIONS, new CancelToken(), ProgressListener.NONE);
  }

  private static SweepResult sweep(SectionFamily family, SealSection section) {
    return new SweepStudy(family)
        .overGaps(
            section,
            List.of(0.4e-3, 0.45e-3, 0.5e-3),
            OPTIONS,
            new CancelToken(),
            ProgressListener.NONE);
  }

  private List<Path> files() throws IOException {
    try (Stream<Path> all = Files.list(dir)) {
      return all.filter(file -> file.toString().endsWith(".json")).toList();
    }
  }

  @Test
  void aRunIsFoundAgainWithItsFlow() {
    SectionAnswer fresh = run(new FamilySolver(), section);
    SectionAnswer first = run(kept("one", true), section);
    int once = solves.get();
    LipProfile lip = section.profile();
    SectionAnswer again =
        run(
            kept("one", true),
            section.withProfile(
                new LipProfile("other", "", "", lip.outline(), lip.mountEdge(), lip.detached())));
    assertThat(solves.get()).as("found under another name too").isEqualTo(once).isPositive();
    assertThat(first.result()).isEqualTo(fresh.result());
    assertThat(again.result()).isEqualTo(fresh.result().named("other"));
    assertThat(again.field().p()).isEqualTo(fresh.field().p());
    assertThat(again.field().streamfunction()).isEqualTo(fresh.field().streamfunction());
    assertThat(again.field().mesh().cx).isEqualTo(fresh.field().mesh().cx);
    assertThat(again.field().mesh().cy).isEqualTo(fresh.field().mesh().cy);
  }

  @Test
  void whatPicturesNeedIsSolvedAgainWhereItIsNotKept() {
    run(kept("one", false), section);
    int once = solves.get();
    assertThat(run(kept("one", false), section).field()).isNull();
    assertThat(solves.get()).isEqualTo(once);
    assertThat(run(kept("one", true), section).field()).isNotNull();
    assertThat(solves.get()).isGreaterThan(once);
  }

  @Test
  void pointsOfASweepThatStartFromOthersHaveTheSameBits() {
    SweepResult fresh = sweep(new FamilySolver(), section);
    assertThat(sweep(kept("one", false), section)).isEqualTo(fresh);
    int once = solves.get();
    assertThat(sweep(kept("one", false), section)).isEqualTo(fresh);
    assertThat(solves.get()).isEqualTo(once);
  }

  @Test
  void otherBuildsConditionsAndDamagedFilesAreSolvedAnew() throws Exception {
    run(kept("one", false), section);
    int once = solves.get();
    run(kept("two", false), section);
    assertThat(solves.get()).isEqualTo(2 * once);
    run(kept("one", false), section.withSuction(21));
    assertThat(solves.get()).isEqualTo(3 * once);
    for (Path file : files()) {
      Files.writeString(file, Files.readString(file).replaceFirst("\"iterations\":\\d", "$09"));
    }
    run(kept("one", false), section);
    assertThat(solves.get()).isEqualTo(4 * once);
    run(kept(Engine.UNKNOWN, false), section);
    run(kept(Engine.UNKNOWN, false), section);
    assertThat(solves.get()).as("an unknown build is never believed").isEqualTo(6 * once);
  }

  @Test
  void aFullFolderLetsGoItsOldest() throws Exception {
    GridFamily family =
        new GridFamily(
            Closure.LAMINAR,
            List.of(),
            FamilySolver.unfilled(section, MeshLevel.COARSE, Closure.LAMINAR));
    SectionStore roomy = new SectionStore(dir, "one");
    SampleSections.keep(roomy, section, family);
    Path first = files().get(0);
    Files.setLastModifiedTime(first, java.nio.file.attribute.FileTime.fromMillis(0));
    SectionStore full = new SectionStore(dir, "one", 2 * Files.size(first) + 100);
    for (int gap = 1; gap <= 2; gap++) {
      SampleSections.keep(full, section.withGap(section.gap() + gap * 1e-9), family);
    }
    assertThat(files()).hasSize(2).doesNotContain(first);
  }
}
