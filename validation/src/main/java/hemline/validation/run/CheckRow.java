package hemline.validation.run;

import hemline.shared.result.Estimate;
import hemline.shared.result.SolveStatus;
import hemline.validation.reference.Evidence;
import hemline.validation.reference.ExpectedFigure;
import hemline.validation.reference.KnownLimit;
import java.util.List;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;

/**
 * One quantity of a case beside its reference.
 *
 * <p>Comparison error and validation uncertainty follow ASME {@literal V&V} 20-2009 (from memory):
 * E = S − D and u_val² = u_num² + u_input² + u_D². The set-ups are exact statements of the problem,
 * so u_input is zero; u_num is half the computed band and u_D the uncertainty of the reference,
 * both as expanded (about 95 %) uncertainties.
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
    /**
     * Not met, for a reason that is known and written down, and converged, or unsteady where that
     * is the reason, no further off than then; does not fail a check.
     */
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
    return limited() ? Verdict.KNOWN_LIMIT : Verdict.FAIL;
  }

  private boolean limited() {
    KnownLimit limit = expected.knownLimit();
    OptionalDouble error = relativeError();
    return limit != null
        && (status == SolveStatus.CONVERGED || status == SolveStatus.UNSTEADY && limit.unsteady())
        && error.isPresent()
        && limit.bounds(error.getAsDouble());
  }

  /** Why the tolerance is not met, with the figures of this run; empty when no limit is known. */
  public String reason() {
    KnownLimit limit = expected.knownLimit();
    Estimate computed = computed();
    return limit == null || computed == null
        ? ""
        : limit.told(computed.value(), relativeError().orElse(Double.NaN));
  }

  /** Computed minus reference, SI; empty when there is no computed value. */
  public OptionalDouble comparisonError() {
    Estimate computed = computed();
    return computed == null
        ? OptionalDouble.empty()
        : OptionalDouble.of(computed.value() - expected.reference().value());
  }

  /** Half the computed band and the uncertainty of the reference together, SI. */
  public OptionalDouble validationUncertainty() {
    Estimate computed = computed();
    return computed == null
        ? OptionalDouble.empty()
        : OptionalDouble.of(
            Math.hypot(
                0.5 * (computed.high() - computed.low()), expected.reference().uncertainty()));
  }

  /**
   * True when the reference lies inside the computed band, give or take its own uncertainty, and
   * that band is not as wide as the value.
   */
  public boolean insideBand() {
    Estimate computed = computed();
    return computed != null
        && expected.insideBand(computed.value(), computed.low(), computed.high());
  }

  /**
   * True when the row tells whether our bands are honest: a value with a band from three grids, and
   * a reference good enough to judge it.
   */
  public boolean calibrates() {
    return measured != null
        && measured.hasBand()
        && status == SolveStatus.CONVERGED
        && expected.tolerance().comparison() == ExpectedFigure.Comparison.WITHIN
        && expected.evidence().grade() != Evidence.Grade.C;
  }

  /**
   * Comparison error over the size of the reference, or the scale where that is zero; empty when
   * there is no computed value.
   */
  public OptionalDouble relativeError() {
    OptionalDouble error = comparisonError();
    return error.isEmpty() ? error : OptionalDouble.of(error.getAsDouble() / expected.size());
  }

  /** Values by grid, coarsest first; may be empty. */
  public List<Measured.GridPoint> grids() {
    return measured == null ? List.of() : measured.grids();
  }
}
