package hemline.viewer.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Folders of results: what they hold, what they refuse, what is told when a file fails. */
final class OutputFolderTest extends CommandCase {
  @Test
  void outHoldsTheFiles() throws Exception {
    Path folder = dir.resolve("results");
    hemline("run", lip, "--gap", "2mm", "--suction", "600Pa", "--out", folder.toString());
    assertThat(folder.resolve("result.json")).exists();
    assertThat(folder.resolve("figures.csv")).exists();
  }

  /** Each command with its first file and the exit code of its invented answers. */
  @ParameterizedTest
  @CsvSource({
    "run LIP --gap 2mm --suction 600Pa, result.json, figures.csv, 0",
    "sweep LIP --gap 1mm..6mm --suction 600Pa, sweep.json, figures.csv, 0",
    "rank DIR --gaps 1mm..6mm --suction 600Pa, ranking.csv, ranking.json, 0",
    "rank DIR --gaps 1mm..6mm --suction 600Pa, ranking.png, ranking.json, 0",
    "check --fast, check.json, check.html, 0",
    "balance ../profiles/machines/silo-wall-crawler.json, fan-and-leaks.png, balance.json, 0"
  })
  void aFileThatFailsLosesNeitherTheTableNorTheOthers(
      String line, String fails, String stays, int code) throws Exception {
    Path folder = dir.resolve("results");
    List<String> asked = new ArrayList<>();
    for (String word : line.split(" ")) {
      asked.add(word.equals("LIP") ? lip : word.equals("DIR") ? dir.toString() : word);
    }
    asked.addAll(List.of("--out", folder.toString()));
    assertThat(hemline(asked.toArray(String[]::new))).isEqualTo(code);
    String table = out().lines().limit(2).reduce("", String::concat);
    assertThat(table).isNotBlank();
    out.reset();

    Files.delete(folder.resolve(fails));
    Files.createDirectories(folder.resolve(fails).resolve("taken"));
    Files.delete(folder.resolve(stays));
    assertThat(hemline(asked.toArray(String[]::new))).isEqualTo(1);
    assertThat(out().lines().limit(2).reduce("", String::concat)).isEqualTo(table);
    assertThat(err().lines().toList()).hasSize(2);
    assertThat(err()).contains(folder.resolve(fails) + ": cannot be written", "the other");
    assertThat(folder.resolve(stays)).isRegularFile();
  }

  /** Only Linux has a folder that lets root in and takes no file. */
  @Test
  @EnabledOnOs(OS.LINUX)
  void aFolderThatTakesNoFileIsToldBeforeSolving() {
    assertThat(hemline("run", lip, "--gap", "2mm", "--suction", "600Pa", "--out", "/proc/self"))
        .isEqualTo(2);
    assertThat(err()).contains("/proc/self").hasLineCount(1);
    assertThat(studies.asked).isEmpty();
    assertThat(out()).isEmpty();
  }

  @Test
  void folderIsNotMadeWhenTheInputIsBad() {
    Path folder = dir.resolve("results");
    hemline("run", lip, "--gap", "2", "--suction", "600Pa", "--out", folder.toString());
    assertThat(folder).doesNotExist();
  }

  @Test
  void folderThatIsAFileIsRefused() {
    assertThat(hemline("run", lip, "--gap", "2mm", "--suction", "600Pa", "--out", lip))
        .isEqualTo(2);
    assertThat(err()).contains("is a file");
    assertThat(studies.asked).isEmpty();
  }
}
