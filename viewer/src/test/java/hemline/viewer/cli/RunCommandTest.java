package hemline.viewer.cli;

import static org.assertj.core.api.Assertions.assertThat;

import hemline.shared.result.SolveStatus;
import hemline.shared.section.DuctSection;
import hemline.shared.section.SealSection;
import hemline.solver.flow.Closure;
import hemline.solver.grid.MeshLevel;
import hemline.solver.study.RunOptions;
import hemline.viewer.format.Cautions;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What {@code run} asks the solver and tells of its answer. */
final class RunCommandTest extends CommandCase {
  @Test
  void runAsksTheSolverWhatTheOptionsSay() {
    int code =
        hemline(
            "run",
            lip,
            "--gap",
            "0.08in",
            "--suction",
            "6mbar",
            "--ground-speed",
            "-54km/h",
            "--spanwise-speed",
            "2m/s",
            "--mesh",
            "fine",
            "--closure",
            "sst",
            "--model-spread",
            "--threads",
            "3",
            "--temperature",
            "40degC");
    assertThat(err()).isEmpty();
    assertThat(code).isZero();
    SealSection section = (SealSection) studies.asked.get(0);
    assertThat(section.gap()).isEqualTo(0.002032);
    assertThat(section.suction()).isEqualTo(600);
    assertThat(section.ground().speed()).isEqualTo(-15);
    assertThat(section.ground().spanwiseSpeed()).isEqualTo(2);
    assertThat(section.fluid().density()).isBetween(1.12, 1.13);
    assertThat(studies.asked.get(1))
        .isEqualTo(new RunOptions(MeshLevel.FINE, Closure.SST, true, 3));
    assertThat(out()).contains("plain flat 8").contains("leak flow").contains("L/s per m");
    String told = out().replaceAll("\\s+", " ");
    assertThat(told).contains("Before you build", Cautions.SHORT);
  }

  @Test
  void lengthsAreToldInTheUnitAskedForAndStaySiInJson() throws Exception {
    String[] eighth = {"run", lip, "--gap", "0.125in", "--suction", "600Pa", "--units", "ell"};
    assertThat(hemline(eighth)).isEqualTo(2);
    assertThat(err()).contains("--units: \"ell\" is no value for it; write mm or inch");
    String[] json = {"run", lip, "--gap", "1mm", "--suction", "600Pa", "--units", "inch", "--json"};
    assertThat(hemline(json)).isZero();
    assertThat(document().at("/section/gap").doubleValue()).isEqualTo(1e-3);
    out.reset();
    eighth[7] = "inch";
    assertThat(hemline(eighth)).isZero();
    assertThat(out()).contains("gap 0.125 in \u00b7 ").doesNotContain(" mm");
    out.reset();
    eighth[7] = "mm";
    assertThat(hemline(eighth)).isZero();
    assertThat(out()).contains("gap 3.175 mm \u00b7 ").doesNotContain(" in \u00b7");
  }

  @Test
  void jsonIsOneDocumentAndNothingElse() throws Exception {
    assertThat(hemline("run", lip, "--gap", "2mm", "--suction", "600Pa", "--json")).isZero();
    assertThat(document().get("schema").textValue()).isEqualTo("hemline.result/1");
    assertThat(err()).isEmpty();
  }

  @Test
  void relativeLeakIsAddedWhenAskedFor() throws Exception {
    String[] args = {"run", lip, "--gap", "2mm", "--suction", "600Pa", "--relative"};
    assertThat(hemline(args)).isZero();
    assertThat(out()).contains("0.930  \u00b1 0.020");
    out.reset();
    assertThat(hemline("run", lip, "--gap", "2mm", "--suction", "600Pa", "--relative", "--json"))
        .isZero();
    assertThat(document().at("/figures/relativeLeak/low").doubleValue()).isEqualTo(0.91);
  }

  @ParameterizedTest
  @CsvSource({"CONVERGED, 0", "UNSTEADY, 1", "FAILED, 1", "CANCELLED, 130"})
  void runEndsWithTheCodeOfItsStatus(SolveStatus status, int code) {
    studies.status = status;
    assertThat(hemline("run", lip, "--gap", "2mm", "--suction", "600Pa")).isEqualTo(code);
  }

  @Test
  void cancelledRunPrintsNoDocument() {
    studies.status = SolveStatus.CANCELLED;
    assertThat(hemline("run", lip, "--gap", "2mm", "--suction", "600Pa", "--json")).isEqualTo(130);
    assertThat(out()).isEmpty();
    assertThat(err()).contains("stopped on request");
  }

  @Test
  void ductTakesThePlaceOfTheLip() throws Exception {
    Path duct = Files.writeString(dir.resolve("duct.json"), DUCT);
    assertThat(hemline("run", "--duct", duct.toString(), "--json")).isZero();
    DuctSection section = (DuctSection) studies.asked.get(0);
    assertThat(section.name()).isEqualTo("flat lip in a channel");
    assertThat(((RunOptions) studies.asked.get(1)).closure()).isEqualTo(Closure.AUTO);
    assertThat(document().at("/section/profile").textValue()).isEqualTo("flat lip in a channel");
  }

  @Test
  void ductWithLipOptionsIsRefused() throws Exception {
    Path duct = Files.writeString(dir.resolve("duct.json"), DUCT);
    assertThat(hemline("run", lip, "--duct", duct.toString(), "--gap", "2mm")).isEqualTo(2);
    assertThat(err().lines()).hasSize(2);
    assertThat(studies.asked).isEmpty();
  }

  @Test
  void everyProblemIsToldAtOnceInOneSentenceEach() {
    int code =
        hemline("run", "nowhere.json", "--gap", "2kPa", "--suction", "fast", "--mesh", "ultra");
    assertThat(code).isEqualTo(2);
    assertThat(out()).isEmpty();
    assertThat(err().lines()).hasSize(4).allMatch(line -> line.startsWith("hemline: "));
    assertThat(err())
        .contains("nowhere.json")
        .contains("--gap")
        .contains("--suction")
        .contains("coarse, medium, fine")
        .doesNotContain("Exception");
    assertThat(studies.asked).isEmpty();
  }

  @ParameterizedTest
  @ValueSource(strings = {"0mm", "-2mm", "2", "2,5mm", "5m", "1mm..6mm", "NaNmm", "1e400mm", ""})
  void impossibleGapsAreRefused(String gap) {
    assertThat(hemline("run", lip, "--gap", gap, "--suction", "600Pa")).isEqualTo(2);
    assertThat(err().lines()).hasSize(1);
    assertThat(err()).contains("--gap");
  }

  @ParameterizedTest
  @CsvSource({
    "--suction, 200kPa",
    "--ground-speed, 2000m/s",
    "--temperature, 900degC",
    "--threads, 0",
    "--threads, many",
    "--closure, les",
    "--mesh, ''"
  })
  void impossibleOptionsAreRefused(String option, String value) {
    assertThat(hemline("run", lip, "--gap", "2mm", "--suction", "600Pa", option, value))
        .isEqualTo(2);
    assertThat(err()).contains(option).doesNotContain("Exception");
    assertThat(err().lines()).hasSize(1);
  }

  @Test
  void zeroSuctionWithMovingGroundIsLegal() {
    assertThat(hemline("run", lip, "--gap", "2mm", "--suction", "0", "--ground-speed", "5m/s"))
        .isZero();
  }

  @Test
  void runWritesAPage() throws Exception {
    Path page = dir.resolve("page.html");
    String[] asked = {
      "run", lip, "--gap", "2mm", "--suction", "600Pa", "--report", page.toString(), "--json"
    };
    assertThat(hemline(asked)).isZero();
    document();
    assertThat(Files.readString(page)).startsWith("<!DOCTYPE html>").contains("plain flat 8");
    studies.asked.clear();
    asked[7] = dir.toString();
    assertThat(hemline(asked)).isEqualTo(2);
    assertThat(err()).contains("is a folder; name a file").hasLineCount(1);
    asked[7] = dir.resolve("page.html/page.html").toString();
    assertThat(hemline(asked)).isEqualTo(2);
    assertThat(err()).contains("page.html: is a file; name a folder");
    asked[7] = dir.resolve("page.pdf").toString();
    assertThat(hemline(asked)).isEqualTo(2);
    assertThat(err()).contains("page.pdf: is no page; give the file a name that ends in .html");
    asked[6] = "--keep";
    asked[7] = page.toString();
    assertThat(hemline(asked)).isEqualTo(2);
    assertThat(err()).contains("--keep: " + page + " is a file; name a folder");
    assertThat(studies.asked).isEmpty();
  }
}
