package hemline.validation.reference;

/**
 * Where a reference value comes from and how much it is worth.
 *
 * @param source author, year, title, table or figure
 * @param provenance how the number got here: found, derived or from memory, with what confirms it
 * @param grade A: pass or fail; B: pass or fail with a wide tolerance; C: orientation only
 */
public record Evidence(String source, String provenance, Grade grade) {

  /** What a reference value may decide. */
  public enum Grade {
    /** Good enough to pass or fail a result within a narrow tolerance. */
    A,
    /** Good enough to pass or fail a result within a wide tolerance. */
    B,
    /** Orientation only: the row is shown and never fails. */
    C
  }

  public Evidence {
    if (source.isBlank() || provenance.isBlank()) {
      throw new IllegalArgumentException("a reference names its source and its provenance");
    }
  }
}
