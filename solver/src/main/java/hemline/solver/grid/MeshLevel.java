package hemline.solver.grid;

/** The one dial of the mesh: how fine the finest grid of a section is. */
public enum MeshLevel {
  COARSE("coarse"),
  MEDIUM("medium"),
  FINE("fine");

  private final String key;

  MeshLevel(String key) {
    this.key = key;
  }

  /** Name on the command line and in files. */
  public String key() {
    return key;
  }
}
