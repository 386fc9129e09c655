package hemline.viewer.cli;

import static org.assertj.core.api.Assertions.assertThat;

import hemline.solver.flow.CancelToken;
import hemline.solver.flow.Closure;
import hemline.solver.grid.MeshLevel;
import hemline.solver.study.RunOptions;
import hemline.viewer.project.StudyRoom;
import java.io.PrintStream;
import java.io.RandomAccessFile;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What is too large is told before anything is solved. */
final class LimitsTest extends CommandCase {
  private int rank(int lips) throws Exception {
    for (int k = 0; k < lips; k++) {
      lip("lip " + k);
    }
    return hemline(
        "rank",
        dir.toString(),
        "--gaps",
        "1mm",
        "--suction",
        "600Pa",
        "--mesh",
        "coarse",
        "--json");
  }

  @Test
  void aRankingTakesTwoHundredLips() throws Exception {
    // with the two that are there already
    assertThat(rank(198)).isZero();
    assertThat((List<?>) studies.asked.get(0)).hasSize(200);
    studies.asked.clear();
    assertThat(rank(199)).isEqualTo(2);
    assertThat(err())
        .contains("at most 200 lips, the baseline among them, not 201")
        .hasLineCount(1);
    assertThat(studies.asked).isEmpty();
  }

  @Test
  void memoryIsAskedForBefore() {
    RunOptions fine = new RunOptions(MeshLevel.FINE, Closure.AUTO, false, 2);
    RunOptions coarse = new RunOptions(MeshLevel.COARSE, Closure.AUTO, false, 2);
    // 78 flows of 12 MB and two solves of 470 MB in four fifths
    assertThat(StudyRoom.ranking("rank", 13, 6, fine, 2_344_000_000L)).hasSize(1);
    assertThat(StudyRoom.ranking("rank", 13, 6, fine, 2_346_000_000L)).isEmpty();
    assertThat(StudyRoom.ranking("rank", 13, 6, coarse, 400_000_000L)).isEmpty();
    assertThat(StudyRoom.ranking("rank", 13, 6, fine, 2_000_000_000L).get(0).toString())
        .isEqualTo(
            "rank: 78 sections on fine meshes, 2 at once, need about 2.3 GB of memory, and Java may"
                + " take 2.0 GB; ask for fewer lips or gaps or a coarser mesh, or set"
                + " JAVA_TOOL_OPTIONS=-Xmx3g");
  }

  /** A solve that ends for want of memory is told with the cure, not as a fault of the program. */
  @ParameterizedTest
  @ValueSource(booleans = {false, true})
  void memoryThatIsUsedUpIsTold(boolean inAnotherThread) {
    OutOfMemoryError want = new OutOfMemoryError("Java heap space");
    PrintStream to = new PrintStream(err, true, StandardCharsets.UTF_8);
    Desk desk = new Desk(to, to, false, new CancelToken(), studies, () -> 0L);
    Job job =
        new Job(desk) {
          @Override
          int work() {
            if (inAnotherThread) {
              throw new IllegalStateException("a solve broke down", want);
            }
            throw want;
          }
        };
    assertThat(job.call()).isEqualTo(ExitCode.NOT_USABLE);
    assertThat(err()).contains("is used up; choose a coarser mesh").hasLineCount(1);
  }

  @ParameterizedTest
  @ValueSource(strings = {"large.json", "large.svg", "large.dxf"})
  void filesAreAtMostSixteenMegabytes(String name) throws Exception {
    Path file = dir.resolve(name);
    try (RandomAccessFile large = new RandomAccessFile(file.toFile(), "rw")) {
      large.setLength((16 << 20) + 1);
    }
    assertThat(hemline("run", file.toString(), "--gap", "2mm", "--suction", "600Pa")).isEqualTo(2);
    assertThat(err()).contains("larger than 16 MB").hasLineCount(1);
    Files.delete(file);
  }

  @Test
  void aLipHasAtMostTwoThousandCorners() throws Exception {
    String teeth =
        IntStream.range(0, 1999)
            .mapToObj(k -> "[" + 0.01 * k + ", " + (k % 2) + "]")
            .collect(Collectors.joining(", "));
    Path file = dir.resolve("many.json");
    Files.writeString(
        file,
        """
        {"schema": "hemline.lip/1", "name": "many", "outline": [%s, [20, 10], [0, 10]],
         "mountEdge": 1999}
        """
            .formatted(teeth));
    assertThat(hemline("run", file.toString(), "--gap", "2mm", "--suction", "600Pa")).isEqualTo(2);
    assertThat(err()).contains("2001 corners; at most 2000");
  }
}
