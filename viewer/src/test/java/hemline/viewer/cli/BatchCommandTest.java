package hemline.viewer.cli;

import static org.assertj.core.api.Assertions.assertThat;

import hemline.shared.section.SealSection;
import hemline.solver.flow.CancelToken;
import hemline.solver.flow.ProgressListener;
import hemline.solver.study.RunOptions;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class BatchCommandTest extends CommandCase {
  private int batch(String... words) {
    String[] all = new String[words.length + 3];
    all[0] = "batch";
    System.arraycopy(words, 0, all, 1, words.length);
    all[all.length - 2] = "--out";
    all[all.length - 1] = dir.resolve("out").toString();
    return hemline(all);
  }

  @SuppressWarnings("unchecked")
  private List<SealSection> asked() {
    return (List<SealSection>) studies.asked.get(0);
  }

  @Test
  void takesEveryLipAtEveryGapSuctionAndSpeed() throws Exception {
    int code =
        batch(
            dir.toString(),
            "--gaps",
            "1mm..3mm",
            "--steps",
            "3",
            "--suctions",
            "200Pa..600Pa",
            "--suction-steps",
            "2",
            "--ground-speed",
            "0m/s..1m/s",
            "--ground-speed-steps",
            "2",
            "--spanwise-speed",
            "2m/s",
            "--mesh",
            "coarse");
    assertThat(err()).isEmpty();
    assertThat(code).isZero();
    assertThat(asked()).hasSize(2 * 3 * 2 * 2).doesNotHaveDuplicates();
    SealSection last = asked().get(23);
    assertThat(last.profile().name()).isEqualTo("plain flat 8");
    assertThat(last.gap()).isEqualTo(3e-3);
    assertThat(last.suction()).isEqualTo(600);
    assertThat(last.ground().speed()).isEqualTo(1);
    assertThat(last.ground().spanwiseSpeed()).isEqualTo(2);
    assertThat(((RunOptions) studies.asked.get(1)).level().key()).isEqualTo("coarse");
    List<String> table = Files.readAllLines(dir.resolve("out").resolve("batch.csv"));
    assertThat(table).hasSize(25);
    assertThat(table.get(24)).startsWith("plain flat 8,0.003,600.0,");
    assertThat(dir.resolve("out").resolve("batch.arrow")).isNotEmptyFile();
    assertThat(out()).contains("24 sections").contains("24 solved now, 0 found kept");
  }

  @Test
  void takesTheRowsOfATableAsTheyCome() throws Exception {
    Path table =
        Files.writeString(
            dir.resolve("sections.CSV"),
            "lip, gap (mm), suction (Pa), ground speed (m/s)\n"
                + "plain-flat-8.json, 2, 600, 0.5\nknife-fin.json, 1, 300, 0\n"
                + "plain-flat-8.json, 1, 300, 0\n");
    assertThat(batch(table.toString())).isZero();
    assertThat(asked())
        .extracting(s -> s.profile().name() + " " + s.gap() + " " + s.suction())
        .containsExactly(
            "plain flat 8 0.002 600.0", "knife fin 0.001 300.0", "plain flat 8 0.001 300.0");
    assertThat(asked().get(0).ground().speed()).isEqualTo(0.5);
  }

  @Test
  void whatAStopLeavesIsToldAndNoTableIsWritten() throws Exception {
    studies.patience = 3;
    assertThat(batch(dir.toString(), "--gaps", "1mm..3mm", "--suctions", "600Pa")).isEqualTo(130);
    assertThat(err()).contains("3 of 12 sections are solved and kept; the same command goes on");
    assertThat(dir.resolve("out").resolve("batch.csv")).doesNotExist();
  }

  @Test
  void aClusterThatIsNotThereIsToldBeforeAnythingIsSolved() {
    String[] asked = {lip, "--gaps", "1mm", "--suctions", "600Pa", "--spark", ""};
    asked[6] = "spark://host";
    assertThat(batch(asked)).isEqualTo(2);
    assertThat(err()).contains("--spark").contains("such as spark://host:7077").hasLineCount(1);
    err.reset();
    asked[6] = "local[2]";
    assertThat(batch(asked)).isEqualTo(2);
    assertThat(err()).contains("build it once with mvn -Pspark").hasLineCount(1);
    assertThat(studies.asked).isEmpty();
  }

  @Test
  void smallBatchesStayOnThisMachineAndLargeOnesGoToTheCluster() throws Exception {
    List<String> log = new ArrayList<>();
    Cluster cluster =
        new Cluster(
            (sections, options, cancel, progress, taker) -> log.add("here " + sections.size()),
            (sections, options, cancel, progress, taker) -> log.add("there " + sections.size()),
            log::add);
    batch(lip, "--gaps", "1mm..3mm", "--steps", "100", "--suctions", "600Pa");
    for (int count : new int[] {Cluster.SMALLEST - 1, Cluster.SMALLEST}) {
      cluster.solve(
          asked().subList(0, count),
          RunOptions.DEFAULT,
          new CancelToken(),
          ProgressListener.NONE,
          (i, result) -> {});
    }
    assertThat(log)
        .hasSize(3)
        .contains("here " + (Cluster.SMALLEST - 1), "there " + Cluster.SMALLEST);
    assertThat(log.get(0)).contains("solved on this machine");
  }

  @Test
  void tooManySectionsAreRefusedBeforeAnyIsSolved() {
    int code =
        batch(
            dir.toString(),
            "--gaps",
            "1mm..3mm",
            "--steps",
            "200",
            "--suctions",
            "2Pa..600Pa",
            "--suction-steps",
            "200",
            "--ground-speed",
            "0m/s..1m/s",
            "--ground-speed-steps",
            "9");
    assertThat(code).isEqualTo(2);
    assertThat(err()).contains("at most 100000 sections, got 720000").hasLineCount(1);
    assertThat(studies.asked).isEmpty();
  }
}
