package hemline.solver.spark;

import static org.assertj.core.api.Assertions.assertThat;

import hemline.shared.section.SealSection;
import hemline.solver.study.BatchStudy;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class PartsTest {
  @Test
  void smallBatchesGoOneByOneTheLongestFirst() throws Exception {
    List<SealSection> sections = Samples.sections(50);
    List<List<Integer>> parts = Parts.of(sections);
    assertThat(parts).hasSize(50).allMatch(part -> part.size() == 1);
    assertThat(parts.get(0)).containsExactly(0);
    assertThat(parts.get(49)).containsExactly(49);
  }

  @ParameterizedTest
  @CsvSource({"1000, 400", "2000, 400", "10000, 2000", "50000, 4000"})
  void largeBatchesGoInPartsOfLikeCost(int count, int wanted) throws Exception {
    List<SealSection> sections = Samples.sections(count);
    List<List<Integer>> parts = Parts.of(sections);
    assertThat(parts).hasSizeBetween(wanted / 2, wanted);
    assertThat(parts.stream().flatMap(List::stream).sorted())
        .containsExactlyElementsOf(IntStream.range(0, count).boxed().toList());
    double whole = sections.stream().mapToDouble(BatchStudy::cost).sum();
    assertThat(parts)
        .allMatch(
            part ->
                part.size() == 1
                    || part.stream().mapToDouble(i -> BatchStudy.cost(sections.get(i))).sum()
                        <= 2 * whole / wanted);
  }

  @Test
  void whatTravelsComesBackWithTheSameBits() throws Exception {
    SectionText.Part part =
        new SectionText.Part(List.of(2), Samples.sections(3).subList(2, 3), Samples.COARSE);
    assertThat(SectionText.read(SectionText.of(part), SectionText.Part.class)).isEqualTo(part);
  }
}
