package hemline.solver.spark;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import hemline.shared.result.SectionResult;
import hemline.shared.section.SealSection;
import hemline.solver.flow.CancelToken;
import hemline.solver.flow.ProgressListener;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;

class SparkRunnerTest {
  @Test
  void twoThreadsOfTheEngineGiveTheSameBits() throws Exception {
    List<SealSection> sections = Samples.sections(4);
    Map<Integer, SectionResult> results = new TreeMap<>();
    List<Double> progress = new ArrayList<>();
    new SparkRunner("local[2]")
        .solve(
            sections,
            Samples.COARSE,
            new CancelToken(),
            (done, what) -> progress.add(done),
            (i, result) -> assertThat(results.put(i, result)).as("answer %d twice", i).isNull());
    assertThat(results).isEqualTo(Samples.solvedHere(sections));
    assertThat(progress).hasSize(4).isSorted().endsWith(1.0);
  }

  @Test
  void aCancelledBatchEndsAndKeepsWhatItHad() throws Exception {
    CancelToken cancel = new CancelToken();
    List<Integer> taken = new ArrayList<>();
    new SparkRunner("local[1]")
        .solve(
            Samples.sections(40),
            Samples.COARSE,
            cancel,
            ProgressListener.NONE,
            (i, result) -> {
              taken.add(i);
              cancel.cancel();
            });
    assertThat(taken).isNotEmpty().hasSizeLessThan(20);
  }

  @Test
  void aClusterThatDoesNotAnswerIsToldInASentence() throws Exception {
    List<SealSection> sections = Samples.sections(1);
    assertThatThrownBy(
            () ->
                new SparkRunner("local[no]")
                    .solve(
                        sections,
                        Samples.COARSE,
                        new CancelToken(),
                        ProgressListener.NONE,
                        (i, result) -> {}))
        .isInstanceOf(IllegalStateException.class)
        .hasMessageStartingWith("the cluster local[no] gave up: ");
  }
}
