package hemline.validation.reference;

/**
 * What stands behind the reference of a case; how often bands hold it is counted apart for each.
 */
public enum FlowClass {
  /** An exact solution of the equations that are solved. */
  EXACT("exact"),
  /** A laminar flow, computed independently or measured. */
  LAMINAR("laminar"),
  /** A turbulent flow: the flow model has an error of its own that grids do not show. */
  TURBULENT("turbulent"),
  /** A turbulent row of teeth against handbook formulas, which differ among themselves. */
  LABYRINTH("labyrinth");

  private final String key;

  FlowClass(String key) {
    this.key = key;
  }

  /** Word in tables. */
  public String key() {
    return key;
  }

  /**
   * Finds a class by its word.
   *
   * @throws IllegalArgumentException when there is none
   */
  static FlowClass of(String key) {
    for (FlowClass one : values()) {
      if (one.key.equals(key)) {
        return one;
      }
    }
    throw new IllegalArgumentException("there is no class of flows \"" + key + "\"");
  }
}
