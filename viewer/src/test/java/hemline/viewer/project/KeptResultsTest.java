package hemline.viewer.project;

import static org.assertj.core.api.Assertions.assertThat;

import hemline.shared.file.Seal;
import hemline.shared.fluid.FluidState;
import hemline.shared.problem.NoticeKind;
import hemline.shared.result.Estimate;
import hemline.shared.result.GridLeak;
import hemline.shared.result.LeakGrids;
import hemline.shared.result.LeakOrigin;
import hemline.shared.result.LeakPoint;
import hemline.shared.result.Regime;
import hemline.shared.result.SectionResult;
import hemline.shared.result.SolveStatus;
import hemline.shared.section.SectionConditions;
import hemline.viewer.hard.SampleResults;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.attribute.FileTime;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class KeptResultsTest {
  private static final LeakOrigin ASKED = SampleResults.ASKED;
  private static final LeakPoint POINT =
      new LeakPoint(
          "plain \"flat\" 8",
          new SectionConditions(1.7320508e-3, 300, -0.2, 1.0 / 3),
          SolveStatus.UNSTEADY,
          Regime.TRANSITIONAL,
          new Estimate(0.7123456789012345, 1e-3, 2e-7, 0.1, 0, Estimate.Trend.OSCILLATING),
          new Estimate(-0.0101, 3e-4, 0, 0, 1e-5, Estimate.Trend.MONOTONE),
          List.of(NoticeKind.REGIME_TRANSITION.of(1000.0 / 3, 500, 3000).about("plain")),
          new LeakGrids(
              List.of(
                  new GridLeak(0, 840, 0.7000000000000001, 1e-9, -0.0102),
                  new GridLeak(2, 3360, 0.71, 0, -0.0101)),
              List.of(new GridLeak(0, 840, 0.8, 2e-3, -0.0102))));

  @TempDir Path folder;

  private KeptResults<LeakPoint> store() {
    return KeptResults.leaks(folder, "one");
  }

  private static List<Path> files(Path folder) throws IOException {
    try (Stream<Path> files = Files.walk(folder)) {
      return files.filter(Files::isRegularFile).toList();
    }
  }

  private Path only() throws IOException {
    assertThat(files(folder)).hasSize(1);
    return files(folder).get(0);
  }

  private static String resealed(String text) {
    return Seal.close(
        text.replaceFirst("\"seal\":\"[0-9a-f]{64}\"", "\"seal\":\"" + Seal.BLANK + "\""));
  }

  @Test
  void findsToTheLastBitWhatItKept() {
    assertThat(store().find(ASKED)).isNull();
    store().keep(ASKED, POINT);
    assertThat(store().find(ASKED)).isEqualTo(POINT);
    SectionResult result = SampleResults.whole();
    Path deep = folder.resolve("a").resolve("b");
    KeptResults.figures(deep, "one").keep(ASKED, result);
    assertThat(KeptResults.figures(deep, "one").find(ASKED)).isEqualTo(result);
  }

  /** Questions that differ in one part each. */
  private static List<LeakOrigin> others() {
    SectionConditions at = ASKED.conditions();
    FluidState air = ASKED.air();
    double rho = air.density();
    double nu = air.kinematicViscosity();
    return List.of(
        new LeakOrigin("abd", at, air, "coarse", "auto", false),
        at(new SectionConditions(2.1e-3, 600, 0, 0)),
        at(new SectionConditions(2e-3, 601, 0, 0)),
        at(new SectionConditions(2e-3, 600, 1, 0)),
        at(new SectionConditions(2e-3, 600, 0, 1)),
        new LeakOrigin("abc", at, new FluidState(2 * rho, nu), "coarse", "auto", false),
        new LeakOrigin("abc", at, new FluidState(rho, 2 * nu), "coarse", "auto", false),
        new LeakOrigin("abc", at, air, "fine", "auto", false),
        new LeakOrigin("abc", at, air, "coarse", "sst", false),
        new LeakOrigin("abc", at, air, "coarse", "auto", true));
  }

  private static LeakOrigin at(SectionConditions conditions) {
    return new LeakOrigin("abc", conditions, ASKED.air(), "coarse", "auto", false);
  }

  @Test
  void neitherAnotherSolverNorAnotherQuestionFindsIt() throws Exception {
    store().keep(ASKED, POINT);
    Path mine = only();
    assertThat(KeptResults.leaks(folder, "two").find(ASKED)).isNull();
    assertThat(others()).doesNotContain(ASKED);
    for (LeakOrigin other : others()) {
      assertThat(store().find(other)).as(other.text()).isNull();
      // nor under this one's name
      Path elsewhere = Files.createTempDirectory(folder, "other");
      KeptResults.leaks(elsewhere, "one").keep(other, POINT);
      Files.copy(files(elsewhere).get(0), mine, StandardCopyOption.REPLACE_EXISTING);
      assertThat(store().find(ASKED)).as(other.text()).isNull();
    }
    KeptResults<LeakPoint> two = KeptResults.leaks(folder.resolve("two"), "two");
    two.keep(ASKED, POINT);
    Files.copy(files(folder.resolve("two")).get(0), mine, StandardCopyOption.REPLACE_EXISTING);
    assertThat(store().find(ASKED)).isNull();
  }

  @Test
  void neverTakesInventedLeaksForSolvedOnes() {
    KeptResults.leaks(folder, InventedLeaks.SOLVER).keep(ASKED, POINT);
    assertThat(KeptResults.leaks(folder, Engine.fingerprint()).find(ASKED)).isNull();
    assertThat(KeptResults.leaks(folder, InventedLeaks.SOLVER).find(ASKED)).isEqualTo(POINT);
  }

  @Test
  void aChangedFileCountsAsMissing() throws Exception {
    store().keep(ASKED, POINT);
    Path file = only();
    String text = Files.readString(file);
    for (int k = 0; k < text.length(); k += 7) {
      char c = text.charAt(k);
      Files.writeString(
          file, text.substring(0, k) + (c == '1' ? '2' : '1') + text.substring(k + 1));
      assertThat(store().find(ASKED)).as("byte " + k).isNull();
    }
    for (String broken : List.of("", text.substring(0, 200), "{\"schema\": \"x\"}", "{}")) {
      Files.writeString(file, broken);
      assertThat(store().find(ASKED)).isNull();
    }
    // and once the section is solved again, the file is sound
    store().keep(ASKED, POINT);
    assertThat(store().find(ASKED)).isEqualTo(POINT);
  }

  @Test
  void aPartOfAResultCountsAsMissingThoughItIsSealed() throws Exception {
    store().keep(ASKED, POINT);
    Path file = only();
    String text = Files.readString(file);
    Files.writeString(file, resealed(text));
    assertThat(store().find(ASKED)).isEqualTo(POINT);
    for (String part :
        List.of(
            "\"status\":\"UNSTEADY\",",
            "\"value\":0.7123456789012345,",
            "\"numerical\":0.001,",
            "\"cells\":840,",
            "\"notices\":\\[.*?}],",
            "\"kind\":\"REGIME_TRANSITION\",",
            ",3000.0(?=])",
            "\"solver\":\"one\",")) {
      String cut = text.replaceFirst(part, "");
      assertThat(cut).as(part).isNotEqualTo(text);
      Files.writeString(file, resealed(cut));
      assertThat(store().find(ASKED)).as(part).isNull();
    }
    Files.writeString(file, resealed(text.replaceFirst("\"numerical\":0.001", "\"numerical\":-1")));
    assertThat(store().find(ASKED)).isNull();
  }

  @Test
  void theOldestMakeRoomAndOtherFilesStay() throws Exception {
    store().keep(ASKED, POINT);
    Path shelf = only().getParent();
    Path notes = Files.writeString(shelf.resolve("my-notes.json"), "{}");
    for (int k = 1; k <= 20; k++) {
      Path older = Files.writeString(shelf.resolve(Integer.toHexString(k) + ".json"), "{}");
      Files.setLastModifiedTime(older, FileTime.fromMillis(1000 * k));
    }
    new KeptResults<>(LeakPoint.class, "hemline.leak/5", folder, "one", 20).keep(ASKED, POINT);
    // of 21 the oldest three go, so that a tenth of the 20 is free
    assertThat(files(shelf)).hasSize(19);
    assertThat(notes).exists();
    assertThat(shelf.resolve("3.json")).doesNotExist();
    assertThat(shelf.resolve("4.json")).exists();
    assertThat(store().find(ASKED)).isEqualTo(POINT);
  }

  @Test
  void nothingIsBelievedOfAnUnknownSolver() {
    KeptResults<LeakPoint> store = KeptResults.leaks(folder, Engine.UNKNOWN);
    store.keep(ASKED, POINT);
    assertThat(store.find(ASKED)).isNull();
  }

  @Test
  void worksOnWhereNothingCanBeKept() throws Exception {
    Path file = Files.writeString(folder.resolve("file"), "in the way");
    KeptResults<LeakPoint> store = KeptResults.leaks(file, "one");
    store.keep(ASKED, POINT);
    assertThat(store.find(ASKED)).isNull();
  }
}
