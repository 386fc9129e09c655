package hemline.solver.scheme;

import hemline.solver.grid.Mesh;

/**
 * What happens at each boundary face of a mesh.
 *
 * <p>Filled once by the maker of a flow problem; read-only afterwards.
 */
public final class Boundary {
  /** Solid wall that moves with the given velocity. */
  public static final byte WALL = 0;

  /** Wall without shear. */
  public static final byte SLIP = 1;

  /** Given velocity, whichever way it points. */
  public static final byte VELOCITY = 2;

  /** Open to a reservoir: total pressure where fluid enters, static pressure where it leaves. */
  public static final byte OPEN = 3;

  /** End of a developed channel: static pressure, and whatever velocity arrives. */
  public static final byte OUTLET = 4;

  /** Takes no part: ends of a developed flow that does not vary along x. */
  public static final byte NONE = 5;

  public final byte[] kind;

  /** Velocity of walls and of given-velocity faces, m/s. */
  public final double[] u;

  public final double[] v;
  public final double[] w;

  /** True where the pressure is the drive's outlet pressure; elsewhere it is zero. */
  public final boolean[] atOutletPressure;

  /** What the state's inlet flow adds to u of given-velocity faces, 1/m. */
  public final double[] uPerFlow;

  public Boundary(Mesh mesh) {
    int n = mesh.boundaryFaces;
    kind = new byte[n];
    u = new double[n];
    v = new double[n];
    w = new double[n];
    atOutletPressure = new boolean[n];
    uPerFlow = new double[n];
  }

  /** Which faces are walls without slip. */
  public boolean[] walls() {
    boolean[] walls = new boolean[kind.length];
    for (int b = 0; b < walls.length; b++) {
      walls[b] = kind[b] == WALL;
    }
    return walls;
  }

  /** True for faces with a pressure given from outside. */
  public boolean isOpen(int b) {
    return kind[b] == OPEN || kind[b] == OUTLET;
  }
}
