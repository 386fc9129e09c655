package hemline.solver.study;

import hemline.shared.result.Estimate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A sweep of a lip together with the same sweep of another that it is measured against.
 *
 * @param lip the lip
 * @param baseline the other, under the same conditions
 * @param relativeLeak leak of the lip over that of the other by point, each with its own grid
 *     convergence; null where the two cannot be compared
 */
public record RelativeSweep(
    SweepResult lip, SweepResult baseline, List<@Nullable Estimate> relativeLeak) {
  public RelativeSweep {
    relativeLeak = Collections.unmodifiableList(new ArrayList<>(relativeLeak));
    if (relativeLeak.size() != lip.points().size()
        || baseline.points().size() != lip.points().size()) {
      throw new IllegalArgumentException("both sweeps and the ratios must have the same points");
    }
  }
}
