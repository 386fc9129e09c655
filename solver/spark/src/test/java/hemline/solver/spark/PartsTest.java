package hemline.solver.spark;

import static org.assertj.core.api.Assertions.assertThat;

import hemline.shared.section.SealSection;
import hemline.solver.study.BatchStudy;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class PartsTest {
  @Test
  void smallBatchesGoOneByOneTheLongestFirst() throws Exception {
    List<SealSection> sections = Samples.sections(50);
    List<List<Integer>> parts = Parts.of(sections);
    assertThat(parts).hasSize(50).allMatch(part -> part.size() == 1);
    assertThat(parts.get(0)).containsExactly(0);
    assertThat(parts.get(49)).containsExactly(49);
  }

  @Test
  void largeBatchesGoInPartsOfLikeCost() throws Exception {
    List<SealSection> sections = Samples.sections(20_000);
    List<List<Integer>> parts = Parts.of(sections);
    assertThat(parts).hasSizeBetween(Parts.MOST / 2, Parts.MOST);
    assertThat(parts.stream().flatMap(List::stream).sorted())
        .containsExactlyElementsOf(IntStream.range(0, 20_000).boxed().toList());
    double whole = sections.stream().mapToDouble(BatchStudy::cost).sum();
    assertThat(parts)
        .allMatch(
            part ->
                part.stream().mapToDouble(i -> BatchStudy.cost(sections.get(i))).sum()
                    <= 2 * whole / Parts.MOST);
  }

  @Test
  void whatTravelsComesBackWithTheSameBits() throws Exception {
    SectionText.Part part =
        new SectionText.Part(List.of(2), Samples.sections(3).subList(2, 3), Samples.COARSE);
    assertThat(SectionText.read(SectionText.of(part), SectionText.Part.class)).isEqualTo(part);
  }
}
