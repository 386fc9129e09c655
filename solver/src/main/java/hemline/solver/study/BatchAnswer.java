package hemline.solver.study;

import hemline.shared.result.SectionResult;
import java.util.List;

/**
 * What a batch found.
 *
 * @param results in the order of the sections; of a stopped batch those known
 * @param complete false when the batch was stopped before its end
 * @param found sections whose results were kept before
 * @param solved sections solved this time
 */
public record BatchAnswer(List<SectionResult> results, boolean complete, int found, int solved) {
  public BatchAnswer {
    results = List.copyOf(results);
  }
}
