package hemline.solver.study;

import hemline.shared.result.Estimate;
import hemline.shared.result.SectionResult;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Answers over a range of gaps or suctions.
 *
 * @param points in the order asked
 * @param gapExponent d ln q / d ln h over the sweep; null when the gap was not swept or a point has
 *     no usable leak
 */
public record SweepResult(List<SectionResult> points, @Nullable Estimate gapExponent) {
  public SweepResult {
    points = List.copyOf(points);
  }
}
