package hemline.solver.spark;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import hemline.shared.result.SectionResult;
import hemline.shared.section.SealSection;
import hemline.solver.study.RunOptions;
import java.util.List;

/** What travels between machines, as JSON: numbers come back with the same bits. */
final class SectionText {
  private static final ObjectMapper JSON = new ObjectMapper();

  private SectionText() {}

  /**
   * Sections to solve together.
   *
   * @param numbers of the sections in the batch
   */
  record Part(List<Integer> numbers, List<SealSection> sections, RunOptions options) {}

  /** Answers to a part, in its order. */
  record Answers(List<Integer> numbers, List<SectionResult> results) {}

  static String of(Object value) {
    try {
      return JSON.writeValueAsString(value);
    } catch (JsonProcessingException e) {
      throw new IllegalArgumentException("not a value that can travel: " + e.getMessage(), e);
    }
  }

  static <T> T read(String text, Class<T> kind) {
    try {
      return JSON.readValue(text, kind);
    } catch (JsonProcessingException e) {
      throw new IllegalArgumentException("another version travelled here: " + e.getMessage(), e);
    }
  }
}
