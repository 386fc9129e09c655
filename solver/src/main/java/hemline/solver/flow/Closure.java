package hemline.solver.flow;

/** Choice of flow model. */
public enum Closure {
  /** Laminar or SST by the gap Reynolds number. */
  AUTO("auto"),
  LAMINAR("laminar"),
  /** k-ω shear stress transport, Menter, Kuntz & Langtry 2003. */
  SST("sst"),
  /** One-equation eddy viscosity, Spalart & Allmaras 1994. */
  SA("sa");

  private final String key;

  Closure(String key) {
    this.key = key;
  }

  /** Name on the command line and in files. */
  public String key() {
    return key;
  }
}
