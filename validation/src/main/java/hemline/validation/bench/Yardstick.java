package hemline.validation.bench;

import hemline.solver.flow.Closure;

/**
 * Time of an ideal pass: the flow's unknowns of every cell once from memory and back, at the
 * triad's speed.
 *
 * <p>Unknowns of a cell: u, v, p and two face fluxes; with a closure k, ω and the eddy viscosity
 * too (the one-equation closure has one less). 8 bytes each, read and written: 80 bytes laminar,
 * 128 with SST.
 *
 * @param bandwidth of the triad, bytes per second
 */
public record Yardstick(double bandwidth) {
  private static final int READ_AND_WRITTEN = 16;

  /** Bytes that an ideal pass moves for each cell. */
  public static int bytesPerCell(Closure closure) {
    return READ_AND_WRITTEN
        * switch (closure) {
          case LAMINAR -> 5;
          case SA -> 7;
          case SST -> 8;
          case AUTO -> throw new IllegalArgumentException("a flow model that was used is not AUTO");
        };
  }

  /**
   * A time over that of ideal passes: 1 would be a solver limited by memory alone that reads and
   * writes each unknown once a pass.
   *
   * @param seconds measured
   * @param cellPasses cells times passes, summed over grids
   * @param closure flow model used
   */
  public double ratio(double seconds, double cellPasses, Closure closure) {
    return seconds * bandwidth / (cellPasses * bytesPerCell(closure));
  }
}
