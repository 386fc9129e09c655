package hemline.viewer.draw;

/**
 * What the board shows of a flow.
 *
 * @param map what the colours mean
 * @param streamlines true to draw them
 * @param tubes parts into which the lines divide the leak, 2 or more
 * @param tracers true for particles that move with the air
 * @param mesh true for the lines of the finest grid
 * @param sizes true for the lengths of the lip's edges
 */
public record BoardLook(
    ColourMap map, boolean streamlines, int tubes, boolean tracers, boolean mesh, boolean sizes) {
  public static final BoardLook USUAL =
      new BoardLook(ColourMap.PRESSURE, true, 10, false, false, false);

  /** What the colours mean. */
  public enum ColourMap {
    PRESSURE,
    SPEED,
    NONE
  }

  public BoardLook withMap(ColourMap other) {
    return new BoardLook(other, streamlines, tubes, tracers, mesh, sizes);
  }

  public BoardLook withStreamlines(boolean on) {
    return new BoardLook(map, on, tubes, tracers, mesh, sizes);
  }

  public BoardLook withTubes(int count) {
    return new BoardLook(map, streamlines, count, tracers, mesh, sizes);
  }

  public BoardLook withTracers(boolean on) {
    return new BoardLook(map, streamlines, tubes, on, mesh, sizes);
  }

  public BoardLook withMesh(boolean on) {
    return new BoardLook(map, streamlines, tubes, tracers, on, sizes);
  }

  public BoardLook withSizes(boolean on) {
    return new BoardLook(map, streamlines, tubes, tracers, mesh, on);
  }
}
