package hemline.viewer.project;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import hemline.shared.file.Seal;
import hemline.shared.fluid.Air;
import hemline.shared.geometry.Outline;
import hemline.shared.geometry.Vertex;
import hemline.shared.problem.InputException;
import hemline.shared.problem.NoticeKind;
import hemline.shared.profile.LipProfile;
import hemline.shared.result.Estimate;
import hemline.shared.result.Figure;
import hemline.shared.result.GridRun;
import hemline.shared.result.RawFigures;
import hemline.shared.result.Regime;
import hemline.shared.result.SectionFigures;
import hemline.shared.result.SectionResult;
import hemline.shared.result.SolveStatus;
import hemline.shared.section.GroundMotion;
import hemline.shared.section.SectionConditions;
import hemline.solver.flow.Closure;
import hemline.solver.grid.MeshLevel;
import hemline.solver.study.RelativeSweep;
import hemline.solver.study.SweepResult;
import hemline.solver.study.Swept;
import hemline.viewer.format.NoticeWords;
import hemline.viewer.page.PageHtml;
import hemline.viewer.page.PageText;
import hemline.viewer.picture.InventedStudies;
import hemline.viewer.report.ResultFolder;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Studies on disk; figures are invented. */
final class StudyStoreTest {
  @TempDir Path dir;

  private static LipProfile lip(String name, String notes, double width) {
    Outline box =
        new Outline(
            List.of(
                new Vertex(0, 0, 0.1),
                new Vertex(width, 0),
                new Vertex(width, 0.01),
                new Vertex(0, 0.01)));
    return new LipProfile(name, "flat", notes, box, 2, List.of());
  }

  private static StudyQuestion curve(LipProfile lip) {
    return new StudyQuestion(
        Swept.GAP,
        List.of(lip),
        lip("plain flat 8 mm", "", 8e-3),
        List.of(1e-3, 2e-3),
        new StudyQuestion.Held(2e-3, 600, GroundMotion.STILL, Air.STANDARD),
        new StudyQuestion.Solving(MeshLevel.COARSE, Closure.AUTO, false));
  }

  private static StudyQuestion ranked() {
    return new StudyQuestion(
        null,
        InventedStudies.ranking().rows().stream().map(r -> lip(r.profile(), "", 4e-3)).toList(),
        lip("plain flat 8", "", 8e-3),
        InventedStudies.ranking().gaps(),
        new StudyQuestion.Held(1e-3, 600, GroundMotion.STILL, Air.STANDARD),
        new StudyQuestion.Solving(MeshLevel.FINE, Closure.SST, true));
  }

  /** A result with every part filled in, awkward numbers among them. */
  private static SectionResult full(String name, double gap) {
    Estimate odd = new Estimate(0.1 + 0.2, 1e-17, Math.PI, 0, 5e-300, Estimate.Trend.OSCILLATING);
    RawFigures raw =
        new RawFigures(
            Map.of(Figure.LEAK_FLOW, 0.0431, Figure.LIP_FORCE_X, -0.0),
            List.of(0.4, 0.6),
            List.of(0.1),
            List.of(new RawFigures.Vortex(0.3, 1e-3, 2e-3)));
    return new SectionResult(
        name,
        new SectionConditions(gap, 600, 0, 0),
        SolveStatus.UNSTEADY,
        Regime.TRANSITIONAL,
        "sst",
        new SectionFigures(
            Map.of(Figure.LEAK_FLOW, odd, Figure.EXPANSIBILITY, odd),
            List.of(odd),
            List.of(),
            List.of(new SectionFigures.TrappedVortex(odd, 1e-3, 0))),
        List.of(NoticeKind.LIP_THIN.of("detached[0]", 3, 1e-3 / 3, -0.0, 8e-4)),
        List.of(new GridRun(2600, 17, SolveStatus.CONVERGED, Double.NaN, 1e-6, raw, 0)));
  }

  private static KeptStudy study(StudyQuestion question, boolean complete, String when) {
    String flat = "plain flat 8 mm";
    SweepResult sweep = new SweepResult(List.of(full("a", 1e-3), full("a", 2e-3)), null);
    RelativeSweep relative =
        new RelativeSweep(
            sweep,
            new SweepResult(
                List.of(full(flat, 1e-3), full(flat, 2e-3)),
                new Estimate(1, 0.1, 0, 0, 0, Estimate.Trend.UNKNOWN)),
            Arrays.asList(new Estimate(0.9, 0.1, 0, 0, 0, Estimate.Trend.MONOTONE), null));
    return new KeptStudy(
        question,
        null,
        relative,
        null,
        List.of(),
        complete,
        new KeptStudy.Run(12.5, when, "engine one"));
  }

  private static KeptStudy ranked(KeptStudy.Run run) {
    return new KeptStudy(ranked(), null, null, InventedStudies.ranking(), List.of(), true, run);
  }

  private StudyStore store(String engine) {
    return new StudyStore(dir.resolve("studies"), engine);
  }

  @Test
  void aStudyComesBackAsItWasToTheLastBit() throws Exception {
    KeptStudy curve = study(curve(lip("a", "", 4e-3)), true, "2026-11-25T03:00:00Z");
    KeptStudy ranked = ranked(new KeptStudy.Run(3, "2026-11-25T04:00:00Z", "engine one"));
    store("engine one").keep(curve);
    store("engine one").keep(ranked);
    StudyStore again = store("engine one");
    assertThat(again.find(curve.question())).isEqualTo(curve);
    assertThat(again.find(ranked.question())).isEqualTo(ranked);
    assertThat(again.all().studies()).containsExactly(ranked, curve);
  }

  @Test
  void theKeyFollowsTheContentAlone() {
    StudyStore store = store("engine one");
    String key = store.key(curve(lip("a", "", 4e-3)));
    assertThat(store.key(curve(lip("a", "other notes", 4e-3)))).isEqualTo(key);
    assertThat(store.key(curve(lip("a", "", 4.0001e-3)))).isNotEqualTo(key);
    assertThat(store.key(curve(lip("b", "", 4e-3)))).isNotEqualTo(key);
    assertThat(store("engine two").key(curve(lip("a", "", 4e-3)))).isNotEqualTo(key);
  }

  @Test
  void anotherBuildOfTheSolverDoesNotTakeAnOldAnswerButStillListsIt() throws Exception {
    KeptStudy curve = study(curve(lip("a", "", 4e-3)), true, "2026-11-25T03:00:00Z");
    store("engine one").keep(curve);
    assertThat(store("engine two").find(curve.question())).isNull();
    assertThat(store("engine two").all().studies()).containsExactly(curve);
    store("engine two").remove(curve);
    assertThat(store("engine one").all().studies()).isEmpty();
  }

  @Test
  void aStoppedStudyNeverReplacesAWholeOne() throws Exception {
    StudyQuestion question = curve(lip("a", "", 4e-3));
    KeptStudy part = study(question, false, "2026-11-25T03:00:00Z");
    KeptStudy whole = study(question, true, "2026-11-25T03:01:00Z");
    StudyStore store = store("engine one");
    store.keep(part);
    assertThat(store.find(question)).isEqualTo(part);
    store.keep(whole);
    store.keep(study(question, false, "2026-11-25T03:02:00Z"));
    assertThat(store.find(question)).isEqualTo(whole);
  }

  private Path file(StudyStore store, KeptStudy study) {
    return dir.resolve("studies").resolve(store.key(study.question()) + ".json");
  }

  /** Writes a changed study with a sound seal, as somebody who knows the rule can. */
  private static void forge(Path file, String text) throws Exception {
    Matcher seal = Pattern.compile("\"seal\":\"[0-9a-f]{64}\"").matcher(text);
    Files.writeString(file, Seal.close(seal.replaceFirst("\"seal\":\"" + Seal.BLANK + "\"")));
  }

  @Test
  void brokenFilesAreToldOnceSetAsideAndCountAsMissing() throws Exception {
    KeptStudy curve = study(curve(lip("a", "", 4e-3)), true, "2026-11-25T03:00:00Z");
    StudyStore store = store("engine one");
    store.keep(curve);
    Path file = file(store, curve);
    String text = Files.readString(file);
    for (int cut = 0; cut < text.length(); cut += text.length() / 60) {
      Files.writeString(file, text.substring(0, cut));
      assertThat(store.find(curve.question())).isNull();
      StudyStore.Kept all = store.all();
      assertThat(all.studies()).isEmpty();
      assertThat(all.refused()).hasSize(1);
      assertThat(all.refused().get(0).toString()).contains(file.toString()).contains("set aside");
      assertThat(store.all().refused()).isEmpty();
    }
    store.keep(curve);
    assertThat(store.all().studies()).containsExactly(curve);
  }

  @Test
  void aStudyOfAnotherVersionStaysWhereItIs() throws Exception {
    KeptStudy curve = study(curve(lip("a", "", 4e-3)), true, "2026-11-25T03:00:00Z");
    StudyStore store = store("engine one");
    store.keep(curve);
    Path file = file(store, curve);
    Files.writeString(file, Files.readString(file).replace("study/3", "study/7"));
    assertThat(store.all().studies()).isEmpty();
    assertThat(store.all().refused()).hasSize(1);
    assertThat(file).exists();
  }

  /** Its notices were sentences, which are shown as they stand. */
  @Test
  void aStudyOfTheVersionBeforeIsStillRead() throws Exception {
    KeptStudy curve = study(curve(lip("a", "", 4e-3)), true, "2026-11-25T03:00:00Z");
    StudyStore store = store("engine one");
    store.keep(curve);
    Path file = file(store, curve);
    String former =
        Files.readString(file)
            .replace("study/3", "study/2")
            .replaceAll(
                "\\{\"kind\":.*?}", "{\"code\":\"a.code\",\"text\":\"Some \u201ctext\u201d.\"}");
    forge(file, former);
    assertThat(store.all().refused()).isEmpty();
    KeptStudy read = store.find(curve.question());
    assertThat(read).isNotNull();
    assertThat(read.results())
        .hasSize(2)
        .allSatisfy(
            r -> assertThat(NoticeWords.of(r.notices())).containsExactly("Some \u201ctext\u201d."));
    store.keep(read);
    assertThat(store.find(curve.question())).isEqualTo(read);
    // sentences belong to the version before alone
    forge(file, former.replace("study/2", "study/3"));
    assertThat(store.find(curve.question())).isNull();
  }

  @Test
  void aFigureChangedByHandIsNotShown() throws Exception {
    KeptStudy curve = study(curve(lip("a", "", 4e-3)), true, "2026-11-25T03:00:00Z");
    StudyStore store = store("engine one");
    store.keep(curve);
    Path file = file(store, curve);
    Files.writeString(file, Files.readString(file).replace("0.0431", "0.0231"));
    assertThat(store.find(curve.question())).isNull();
    assertThat(store.all().refused().get(0).text()).contains("changed or damaged");
  }

  @Test
  void whatAStrangerSealedMustStillAnswerItsQuestion() throws Exception {
    KeptStudy curve = study(curve(lip("a", "", 4e-3)), true, "2026-11-25T03:00:00Z");
    StudyStore store = store("engine one");
    store.keep(curve);
    Path file = file(store, curve);
    String text = Files.readString(file);
    List<String> forged =
        List.of(
            text.replace("\"when\":\"2026-11-25T03:00:00Z\"", "\"when\":null"),
            text.replace("\"when\":\"2026-11-25T03:00:00Z\"", "\"when\":\"\""),
            text.replace("\"engine\":\"engine one\"", "\"engine\":\"engine two\""),
            text.replace("\"status\":\"UNSTEADY\"", "\"status\":null"),
            text.replace("\"relativeLeak\":[", "\"relativeLeak\":[null,"),
            text.replace("\"gap\":0.001", "\"gap\":0.0015"),
            text.replaceFirst("\"name\":\"a\"(?=,\"gap\")", "\"name\":\"b\""),
            text.replaceFirst("\"study\":.*", "\"study\":null}"),
            text.replaceFirst("\"study\":.*", "\"study\":{}}"));
    for (String one : forged) {
      assertThat(one).isNotEqualTo(text);
      forge(file, one);
      assertThat(store.find(curve.question())).as(one).isNull();
      assertThat(store.all().studies()).as(one).isEmpty();
    }
    // two such files once ended the start of the window
    forge(file, forged.get(0));
    forge(file.resolveSibling("other.json"), forged.get(0));
    assertThat(store.all().refused()).hasSize(2);
    // the answer of another question, under the name of this one
    KeptStudy other = study(curve(lip("a", "", 4.5e-3)), true, "2026-11-25T03:00:00Z");
    store.keep(other);
    Files.move(file(store, other), file);
    assertThat(store.find(curve.question())).isNull();
  }

  @Test
  void aLinkInTheFolderIsNotFollowed() throws Exception {
    Path project = Files.createDirectories(dir.resolve("project/.hemline"));
    Path mine = Files.createDirectories(dir.resolve("mine"));
    Files.writeString(mine.resolve("work.json"), "precious");
    Path settings = Files.writeString(dir.resolve("settings.conf"), "precious");
    KeptStudy curve = study(curve(lip("a", "", 4e-3)), true, "2026-11-25T03:00:00Z");
    StudyStore store = new StudyStore(project.resolve("studies"), "engine one");
    Path sections = Files.createDirectories(project.resolve("studies/sections"));
    Files.createSymbolicLink(sections.resolve(store.key(curve.question())), mine);
    Files.createSymbolicLink(
        project.resolve("studies").resolve(store.key(curve.question()) + ".json"), settings);
    store.keep(curve);
    assertThat(store.find(curve.question())).isEqualTo(curve);
    assertThat(settings).hasContent("precious");
    assertThat(mine.resolve("work.json")).hasContent("precious");
    Files.move(project.resolve("studies"), dir.resolve("studies elsewhere"));
    Files.createSymbolicLink(project.resolve("studies"), mine);
    assertThat(store.all().studies()).isEmpty();
    assertThatThrownBy(() -> store.keep(curve)).isInstanceOf(InputException.class);
    assertThat(mine).isDirectoryContaining("glob:**work.json");
    assertThat(mine.toFile().list()).hasSize(1);
  }

  @Test
  void filesAreThoseOfTheCommands() throws Exception {
    KeptStudy curve = study(curve(lip("a", "", 4e-3)), true, "2026-11-25T03:00:00Z");
    StudyFiles.write(ResultFolder.at(dir.resolve("out")), curve);
    assertThat(dir.resolve("out")).isDirectoryContaining("glob:**/sweep.{json,png,svg}");
    assertThat(Files.readString(dir.resolve("out/sweep.json")))
        .contains("hemline.sweep/1")
        .contains("relativeLeak");
    assertThat(Files.readString(dir.resolve("out/figures.csv"))).contains("leakFlow");
  }

  @Test
  void wordsTellWhatTheBandsAllow() {
    KeptStudy curve = study(curve(lip("a", "", 4e-3)), true, "2026-11-25T03:00:00Z");
    assertThat(PageText.lines(StudyPage.of(curve)))
        .contains("Not distinguishable from the plain flat 8 mm at 1 mm.")
        .contains("To know")
        .anyMatch(
            line -> line.startsWith("  - the wall near detached[0] corner 3 at (0.333333, 0) mm"));
    KeptStudy ranked = ranked(new KeptStudy.Run(3, "", ""));
    assertThat(PageText.lines(StudyPage.of(ranked)))
        .contains("Leaks less than plain flat 8", "A finer mesh may tell: one pocket 8.")
        .anyMatch(
            line -> line.startsWith("  inclined teeth against the leak  0.910  0.898 to 0.92"))
        .anyMatch(line -> line.matches("  one pocket 8 leaks less than .* from about 2.4 mm.*"));
    assertThat(PageHtml.of(StudyPage.of(ranked)))
        .contains("May swap places, within the bands", "from about 5.2 mm");
  }
}
