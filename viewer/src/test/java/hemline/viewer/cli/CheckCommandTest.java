package hemline.viewer.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import hemline.solver.flow.CancelToken;
import hemline.validation.reference.ReferenceCase;
import hemline.validation.reference.ReferenceCases;
import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

final class CheckCommandTest {
  @TempDir Path dir;
  private final FakeStudies studies = new FakeStudies();
  private final ByteArrayOutputStream out = new ByteArrayOutputStream();
  private final ByteArrayOutputStream err = new ByteArrayOutputStream();

  private int check(String... args) {
    Desk desk =
        new Desk(
            new PrintStream(out, true, StandardCharsets.UTF_8),
            new PrintStream(err, true, StandardCharsets.UTF_8),
            false,
            new CancelToken(),
            studies,
            () -> 0L);
    String[] all = new String[args.length + 1];
    all[0] = "check";
    System.arraycopy(args, 0, all, 1, args.length);
    return Commands.execute(desk, file -> {}, all);
  }

  private String out() {
    return out.toString(StandardCharsets.UTF_8);
  }

  private String err() {
    return err.toString(StandardCharsets.UTF_8);
  }

  private List<String> asked() {
    return studies.asked.stream().map(one -> ((ReferenceCase) one).name()).toList();
  }

  @Test
  void allCasesAreRunWhenNoneIsNamed() {
    assertThat(check()).isZero();
    assertThat(studies.asked).hasSameSizeAs(ReferenceCases.all());
    assertThat(out()).contains("cavity/re1000").contains("passed").doesNotContain("FAIL");
    assertThat(err()).isEmpty();
  }

  @Test
  void casesAndGroupsAreNamed() {
    assertThat(check("channel", "cavity/re1000")).isZero();
    assertThat(asked())
        .hasSizeGreaterThan(5)
        .contains("cavity/re1000", "channel/couette")
        .doesNotContain("cavity/re100");
  }

  @Test
  void theFastSubsetIsSmaller() {
    assertThat(check("--fast")).isZero();
    int fast = studies.asked.size();
    assertThat(fast).isBetween(10, ReferenceCases.all().size() - 10);
    studies.asked.clear();
    assertThat(check("--no-fast")).isZero();
    assertThat(studies.asked.size()).isEqualTo(ReferenceCases.all().size() - fast);
  }

  @Test
  void aListSolvesNothing() {
    assertThat(check("--list", "cavity")).isZero();
    assertThat(studies.asked).isEmpty();
    assertThat(out().lines().toList()).hasSize(4).allMatch(line -> line.startsWith("cavity/re"));
    assertThat(check("--list", "--json")).isEqualTo(2);
    assertThat(err()).contains("--json: goes with figures").hasLineCount(1);
  }

  @Test
  void aRowThatFailsGivesOne() {
    studies.checkError = 1.5;
    assertThat(check("channel")).isEqualTo(1);
    assertThat(out()).contains("FAIL");
  }

  @Test
  void anUnknownCaseIsOneSentence() {
    assertThat(check("cavty")).isEqualTo(2);
    assertThat(err().lines().toList()).hasSize(1);
    assertThat(err()).contains("cavty").contains("did you mean cavity?");
    assertThat(studies.asked).isEmpty();
  }

  @Test
  void aStoppedCheckTellsWhatItHas() throws Exception {
    studies.patience = 2;
    assertThat(check("channel", "--json")).isEqualTo(130);
    JsonNode document = new ObjectMapper().readTree(out());
    assertThat(document.get("complete").asBoolean()).isFalse();
    assertThat(document.get("rows").size()).isPositive();
    assertThat(err()).contains("2 of 6 cases");
  }

  @Test
  void aFolderHoldsDocumentTableAndPage() {
    Path folder = dir.resolve("out");
    assertThat(check("cavity", "--out", folder.toString(), "--json")).isZero();
    assertThat(folder.resolve("check.json")).exists();
    assertThat(folder.resolve("check.csv")).exists();
    assertThat(folder.resolve("check.html")).exists();
    assertThat(Files.exists(folder.resolve("check.html"))).isTrue();
  }
}
