package hemline.solver.grid;

/** Numbers of the boundary patches of a mesh: four domain sides, then one per solid. */
public final class Patch {
  public static final int LEFT = 0;
  public static final int RIGHT = 1;
  public static final int BOTTOM = 2;
  public static final int TOP = 3;

  /** Patch of the first solid; solid k has {@code FIRST_SOLID + k}. */
  public static final int FIRST_SOLID = 4;

  private Patch() {}
}
