package hemline.validation.run;

import hemline.shared.result.Estimate;
import hemline.shared.result.SolveStatus;
import hemline.validation.reference.ExpectedFigure;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;

/**
 * One figure of a case beside its reference.
 *
 * @param caseName name of the case
 * @param status how the solve ended
 * @param computed null when the solve gave no such figure
 * @param expected reference, its uncertainty and the tolerance
 * @param source where the reference comes from
 */
public record CheckRow(
    String caseName,
    SolveStatus status,
    @Nullable Estimate computed,
    ExpectedFigure expected,
    String source) {

  /** True when the solve converged and the value lies within the tolerance. */
  public boolean pass() {
    return status == SolveStatus.CONVERGED
        && computed != null
        && expected.passes(OptionalDouble.of(computed.value()));
  }

  /** True when the reference lies inside the computed band, give or take its own uncertainty. */
  public boolean insideBand() {
    return computed != null && expected.insideBand(computed.low(), computed.high());
  }

  /** Computed minus reference over the reference; empty when there is no computed value. */
  public OptionalDouble relativeError() {
    return computed == null
        ? OptionalDouble.empty()
        : OptionalDouble.of((computed.value() - expected.reference()) / expected.reference());
  }
}
