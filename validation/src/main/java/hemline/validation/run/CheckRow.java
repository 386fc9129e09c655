package hemline.validation.run;

import hemline.shared.result.Estimate;
import hemline.shared.result.SolveStatus;
import hemline.validation.reference.Evidence;
import hemline.validation.reference.ExpectedFigure;
import java.util.List;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;

/**
 * One quantity of a case beside its reference.
 *
 * <p>Comparison error and validation uncertainty follow ASME V&V 20-2009 (from memory): E = S − D
 * and u_val² = u_num² + u_input² + u_D². The set-ups are exact statements of the problem, so
 * u_input is zero; u_num is half the computed band and u_D the uncertainty of the reference, both
 * as expanded (about 95 %) uncertainties.
 *
 * @param caseName name of the case
 * @param status how the solve ended
 * @param measured null when the solve gave no such quantity
 * @param expected reference, its uncertainty and the tolerance
 */
public record CheckRow(
    String caseName, SolveStatus status, @Nullable Measured measured, ExpectedFigure expected) {

  /** What a row comes to. */
  public enum Verdict {
    PASS("pass"),
    /** Not met, for a reason that is known and written down; does not fail a check. */
    KNOWN_LIMIT("known limit"),
    /** Compared with a reference that is good for orientation only. */
    ORIENTATION("orientation"),
    FAIL("FAIL");

    private final String key;

    Verdict(String key) {
      this.key = key;
    }

    /** Word in tables. */
    public String key() {
      return key;
    }
  }

  /** Value and band; null when the solve gave no such quantity. */
  public @Nullable Estimate computed() {
    return measured == null ? null : measured.estimate();
  }

  /** Where the reference comes from. */
  public String source() {
    return expected.evidence().source();
  }

  /** True when the solve converged and the value lies within the tolerance. */
  public boolean pass() {
    Estimate computed = computed();
    return status == SolveStatus.CONVERGED
        && computed != null
        && expected.passes(OptionalDouble.of(computed.value()));
  }

  /** What the row comes to. */
  public Verdict verdict() {
    if (pass()) {
      return Verdict.PASS;
    }
    if (expected.evidence().grade() == Evidence.Grade.C && measured != null) {
      return Verdict.ORIENTATION;
    }
    return expected.knownLimit().isEmpty() || measured == null ? Verdict.FAIL : Verdict.KNOWN_LIMIT;
  }

  /** Computed minus reference, SI; empty when there is no computed value. */
  public OptionalDouble comparisonError() {
    Estimate computed = computed();
    return computed == null
        ? OptionalDouble.empty()
        : OptionalDouble.of(computed.value() - expected.reference());
  }

  /** Half the computed band and the uncertainty of the reference together, SI. */
  public OptionalDouble validationUncertainty() {
    Estimate computed = computed();
    return computed == null
        ? OptionalDouble.empty()
        : OptionalDouble.of(
            Math.hypot(0.5 * (computed.high() - computed.low()), expected.referenceUncertainty()));
  }

  /** True when the reference lies inside the computed band, give or take its own uncertainty. */
  public boolean insideBand() {
    Estimate computed = computed();
    return computed != null && expected.insideBand(computed.low(), computed.high());
  }

  /**
   * True when the row tells whether our bands are honest: a value with a band from three grids, and
   * a reference good enough to judge it.
   */
  public boolean calibrates() {
    return measured != null
        && measured.hasBand()
        && status == SolveStatus.CONVERGED
        && expected.comparison() == ExpectedFigure.Comparison.WITHIN
        && expected.evidence().grade() != Evidence.Grade.C;
  }

  /** Comparison error over the scale of the tolerance; empty when there is no computed value. */
  public OptionalDouble relativeError() {
    OptionalDouble error = comparisonError();
    return error.isEmpty()
        ? error
        : OptionalDouble.of(
            error.getAsDouble() / (expected.scale() * Math.signum(signOf(expected.reference()))));
  }

  private static double signOf(double reference) {
    return reference == 0 ? 1 : reference;
  }

  /** Values by grid, coarsest first; may be empty. */
  public List<Measured.GridPoint> grids() {
    return measured == null ? List.of() : measured.grids();
  }
}
