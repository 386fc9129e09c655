package hemline.viewer.hard;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import hemline.shared.file.DuctFile;
import hemline.shared.file.DxfFile;
import hemline.shared.file.FanCurveFile;
import hemline.shared.file.LimitsFile;
import hemline.shared.file.LipFile;
import hemline.shared.file.MachineFile;
import hemline.shared.file.SvgFile;
import hemline.shared.geometry.Outline;
import hemline.shared.geometry.Vertex;
import hemline.shared.problem.InputException;
import hemline.shared.result.Figure;
import hemline.shared.result.LeakOrigin;
import hemline.shared.result.LeakPoint;
import hemline.shared.result.SectionResult;
import hemline.shared.section.SealSection;
import hemline.solver.flow.Closure;
import hemline.solver.flow.SolvedSection;
import hemline.solver.grid.MeshLevel;
import hemline.solver.refine.FamilySolver;
import hemline.solver.refine.GridFamily;
import hemline.viewer.picture.InventedStudies;
import hemline.viewer.project.KeptResults;
import hemline.viewer.project.KeptStudy;
import hemline.viewer.project.ProjectFolder;
import hemline.viewer.project.SampleSections;
import hemline.viewer.project.StudyStore;
import hemline.viewer.report.ResultDocument;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What every file format owes: what was written is read as it was, what is broken is refused. */
class FormatContractTest {
  private static final Path PROFILES = Path.of("..", "profiles");
  private static final Path CRAWLER =
      PROFILES.resolve("machines").resolve("silo-wall-crawler.json");
  private static final Path CASES =
      Path.of("..", "validation/src/main/resources/hemline/validation/cases");

  @TempDir Path dir;

  /** Every member passes these. */
  abstract class Contract {
    /** Something whole, in a form that can be compared. */
    abstract Object sample() throws Exception;

    /** Writes it and answers where. */
    abstract Path write(Object value) throws Exception;

    /** Reads it again; null where a broken file counts as missing. */
    abstract @Nullable Object read(Path file) throws InputException;

    @Test
    void whatWasWrittenIsReadAndWrittenTheSame() throws Exception {
      Object before = sample();
      Path file = write(before);
      byte[] first = Files.readAllBytes(file);
      Object after = read(file);
      assertThat(after).isEqualTo(before);
      byte[] again = Files.readAllBytes(write(Objects.requireNonNull(after)));
      assertThat(again).isEqualTo(first);
    }

    @Test
    void halfAFileIsRefused() throws Exception {
      Path file = write(sample());
      byte[] all = Files.readAllBytes(file);
      refused(file, Arrays.copyOf(all, all.length / 2));
    }

    @Test
    void nothingIsRefused() throws Exception {
      refused(write(sample()), new byte[0]);
    }

    @Test
    void noiseIsRefused() throws Exception {
      byte[] noise = new byte[300];
      for (int i = 0; i < noise.length; i++) {
        noise[i] = (byte) (i * 37 + 11);
      }
      refused(write(sample()), noise);
    }

    /** One sentence for each problem, which names the file; or the file counts as missing. */
    private void refused(Path file, byte[] content) throws IOException {
      Files.write(file, content);
      Object[] found = new Object[1];
      InputException told = catchThrowableOfType(InputException.class, () -> found[0] = read(file));
      if (told == null) {
        assertThat(found[0]).isNull();
        return;
      }
      assertThat(told.problems()).isNotEmpty();
      told.problems()
          .forEach(
              p ->
                  assertThat(p.toString())
                      .contains(file.getFileName().toString())
                      .doesNotContain("Exception", "\n"));
    }
  }

  @Nested
  class Lip extends Contract {
    @Override
    Object sample() throws Exception {
      return LipFile.read(PROFILES.resolve("round-nose.json"));
    }

    @Override
    Path write(Object value) throws Exception {
      Path file = dir.resolve("lip.json");
      LipFile.write(file, (hemline.shared.profile.LipDrawing) value);
      return file;
    }

    @Override
    Object read(Path file) throws InputException {
      return LipFile.read(file);
    }
  }

  @Nested
  class Duct extends Contract {
    @Override
    Object sample() throws Exception {
      return DuctFile.read(CASES.resolve("lips/round-re20-with-leak.json"));
    }

    @Override
    Path write(Object value) throws Exception {
      Path file = dir.resolve("duct.json");
      DuctFile.write(file, (hemline.shared.section.DuctSection) value, "kept");
      return file;
    }

    @Override
    Object read(Path file) throws InputException {
      return DuctFile.read(file);
    }
  }

  private static List<Outline> outlines() {
    // decimals hold it, and a margin of 1 mm, as the page of a drawing gives it
    return List.of(
        new Outline(
            List.of(
                new Vertex(1e-3, 1e-3),
                new Vertex(7e-3, 1e-3, 1),
                new Vertex(7e-3, 3e-3),
                new Vertex(7e-3, 9e-3),
                new Vertex(1e-3, 9e-3))));
  }

  /** Vertices to the nanometre. */
  private static List<String> rounded(List<Outline> outlines) {
    return outlines.stream()
        .flatMap(o -> o.vertices().stream())
        .map(
            v ->
                Math.round(1e9 * v.x())
                    + " "
                    + Math.round(1e9 * v.y())
                    + " "
                    + Math.round(1e6 * v.bulge()))
        .toList();
  }

  @Nested
  class Svg extends Contract {
    private List<Outline> last = List.of();

    @Override
    Object sample() {
      last = outlines();
      return rounded(last);
    }

    @Override
    Path write(Object value) throws Exception {
      Path file = dir.resolve("drawing.svg");
      SvgFile.write(file, last, "a lip");
      return file;
    }

    @Override
    Object read(Path file) throws InputException {
      last = SvgFile.read(file).outlines();
      return rounded(last);
    }
  }

  @Nested
  class Dxf extends Contract {
    private List<Outline> last = List.of();

    @Override
    Object sample() {
      last = outlines();
      return rounded(last);
    }

    @Override
    Path write(Object value) throws Exception {
      Path file = dir.resolve("drawing.dxf");
      DxfFile.write(file, last);
      return file;
    }

    @Override
    Object read(Path file) throws InputException {
      last = DxfFile.read(file).outlines();
      return rounded(last);
    }
  }

  /** Machines are written by people: read twice, they are the same machine. */
  @Nested
  class Machine extends Contract {
    @Override
    Object sample() throws Exception {
      copyProfiles();
      return described(CRAWLER);
    }

    @Override
    Path write(Object value) throws Exception {
      return Files.write(dir.resolve("profiles/machines/case.json"), Files.readAllBytes(CRAWLER));
    }

    @Override
    Object read(Path file) throws InputException {
      return described(file);
    }

    private String described(Path file) throws InputException {
      var m = MachineFile.read(file);
      return m.description().name()
          + m.floor()
          + m.load()
          + m.running()
          + m.fan().outlet().angle()
          + m.openings().valve();
    }

    private void copyProfiles() throws IOException {
      try (Stream<Path> files = Files.walk(PROFILES)) {
        for (Path file : files.toList()) {
          Path to = dir.resolve("profiles").resolve(PROFILES.relativize(file).toString());
          if (Files.isDirectory(file)) {
            Files.createDirectories(to);
          } else if (!Files.exists(to)) {
            Files.copy(file, to);
          }
        }
      }
    }
  }

  @Nested
  class Fan extends Contract {
    private final Path curve = PROFILES.resolve("machines").resolve("silo-wall-crawler-fan.csv");

    @Override
    Object sample() throws Exception {
      return FanCurveFile.read(curve);
    }

    @Override
    Path write(Object value) throws Exception {
      return Files.write(dir.resolve("fan.csv"), Files.readAllBytes(curve));
    }

    @Override
    Object read(Path file) throws InputException {
      return FanCurveFile.read(file);
    }
  }

  /** Limits of a search are written by people. */
  @Nested
  class Limits extends Contract {
    private final Path limits = Path.of("examples", "leaning-fin-limits.json");

    @Override
    Object sample() throws Exception {
      return LimitsFile.read(limits);
    }

    @Override
    Path write(Object value) throws Exception {
      return Files.write(dir.resolve("limits.json"), Files.readAllBytes(limits));
    }

    @Override
    Object read(Path file) throws InputException {
      return LimitsFile.read(file);
    }
  }

  /** A project keeps its lips by name. */
  @Nested
  class Project extends Contract {
    @Override
    Object sample() throws Exception {
      return LipFile.read(PROFILES.resolve("knife-fin.json"));
    }

    @Override
    Path write(Object value) throws Exception {
      var lip = (hemline.shared.profile.LipDrawing) value;
      Path file = new ProjectFolder(dir).fileFor(lip.name());
      LipFile.write(file, lip);
      return file;
    }

    @Override
    Object read(Path file) throws InputException {
      ProjectFolder.Lips lips = new ProjectFolder(dir).lips();
      if (!lips.problems().isEmpty()) {
        throw new InputException(lips.problems());
      }
      return lips.lips().isEmpty() ? null : lips.lips().get(0).drawing();
    }
  }

  @Nested
  class Study extends Contract {
    private @Nullable KeptStudy last;

    private StudyStore store() {
      return new StudyStore(dir.resolve("studies"), "engine");
    }

    @Override
    Object sample() throws Exception {
      return Kept.study(LipFile.load(PROFILES.resolve("plain-flat-8.json")).profile());
    }

    @Override
    Path write(Object value) throws Exception {
      last = (KeptStudy) value;
      store().keep(last);
      return only(dir.resolve("studies"));
    }

    @Override
    Object read(Path file) {
      return store().find(Objects.requireNonNull(last).question());
    }
  }

  /** A flow on its coarsest grid, number by number. */
  @Nested
  class KeptSection extends Contract {
    private GridFamily family = new GridFamily(Closure.SST, List.of());

    @Override
    Object sample() throws Exception {
      SolvedSection start = FamilySolver.unfilled(section(), MeshLevel.COARSE, Closure.SST);
      double[] p = start.state().p;
      for (int c = 0; c < p.length; c++) {
        p[c] = Math.sin(c) / 3;
      }
      family = new GridFamily(Closure.SST, List.of(Kept.grid()), start);
      return described(family);
    }

    @Override
    Path write(Object value) throws Exception {
      SampleSections.keep(store(), section(), family);
      return only(dir.resolve("sections"));
    }

    @Override
    Object read(Path file) throws InputException {
      GridFamily found = SampleSections.find(store(), section());
      if (found == null) {
        return null;
      }
      family = found;
      return described(found);
    }

    private hemline.viewer.project.SectionStore store() throws InputException {
      KeptStudy study = Kept.study(LipFile.load(PROFILES.resolve("plain-flat-8.json")).profile());
      return new StudyStore(dir.resolve("sections"), "engine").sections(study.question());
    }

    private SealSection section() throws InputException {
      return Kept.study(LipFile.load(PROFILES.resolve("plain-flat-8.json")).profile())
          .question()
          .base();
    }

    private String described(GridFamily of) {
      return of.closure()
          + of.runs().toString()
          + Arrays.toString(Objects.requireNonNull(of.start()).state().p);
    }
  }

  @Nested
  class KeptLeak extends Contract {
    private final LeakOrigin asked = SampleResults.ASKED;

    private KeptResults<LeakPoint> leaks() {
      return KeptResults.leaks(dir.resolve("leaks"), "engine");
    }

    @Override
    Object sample() {
      return InventedStudies.LEAKS.find(asked);
    }

    @Override
    Path write(Object value) throws Exception {
      leaks().keep(asked, (LeakPoint) value);
      return only(dir.resolve("leaks"));
    }

    @Override
    Object read(Path file) {
      return leaks().find(asked);
    }
  }

  private static Path only(Path folder) throws IOException {
    try (Stream<Path> files = Files.walk(folder)) {
      return files.filter(Files::isRegularFile).findFirst().orElseThrow();
    }
  }

  /** Results are read by other programs: each figure of the document is the one that was told. */
  @Test
  void resultsHoldWhatWasTold() throws Exception {
    SectionResult result = InventedStudies.result("lip", 2e-3, 600, 0.7);
    JsonNode document = new ObjectMapper().readTree(ResultDocument.text(result, null, true, 1.5));
    assertThat(document.path("figures").size()).isPositive();
    for (Figure figure : Figure.values()) {
      var estimate = result.figures().get(figure);
      JsonNode node = document.path("figures").path(figure.key());
      assertThat(node.isMissingNode()).as(figure.key()).isEqualTo(estimate == null);
      if (estimate != null) {
        assertThat(node.path("value").doubleValue()).isEqualTo(estimate.value());
        assertThat(node.path("low").doubleValue()).isEqualTo(estimate.low());
        assertThat(node.path("high").doubleValue()).isEqualTo(estimate.high());
        assertThat(node.path("unit").textValue()).isEqualTo(figure.unit());
      }
    }
  }
}
