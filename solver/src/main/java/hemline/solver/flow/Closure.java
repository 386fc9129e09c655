package hemline.solver.flow;

/** Choice of flow model. */
public enum Closure {
  /** Laminar by the gap Reynolds number, else {@link #turbulent}. */
  AUTO("auto"),
  LAMINAR("laminar"),
  /**
   * k-ω shear stress transport: Menter, Kuntz and Langtry 2003, Turbulence, Heat and Mass Transfer
   * 4, 625.
   */
  SST("sst"),
  /** One-equation eddy viscosity: Spalart and Allmaras 1994, Rech. Aérosp. 1, 5. */
  SA("sa");

  private final String key;

  Closure(String key) {
    this.key = key;
  }

  /**
   * Turbulent model where none is asked.
   *
   * @param edges true where edges, eddies and jets decide, as under a lip; false where wall
   *     friction alone does
   */
  public static Closure turbulent(boolean edges) {
    return edges ? SA : SST;
  }

  /** The other turbulent model; of a laminar flow the one for edges. */
  public Closure second() {
    return this == SA ? SST : SA;
  }

  /** Name on the command line and in files. */
  public String key() {
    return key;
  }
}
