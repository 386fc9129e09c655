package hemline.viewer.draw;

/**
 * What the board shows of a flow.
 *
 * @param map what the colours mean
 * @param streamlines true to draw them
 * @param tubes parts into which the lines divide the leak, 2 or more
 * @param tracers true for particles that move with the air
 * @param mesh true for the lines of the finest grid
 */
public record BoardLook(
    ColourMap map, boolean streamlines, int tubes, boolean tracers, boolean mesh) {
  public static final BoardLook USUAL = new BoardLook(ColourMap.PRESSURE, true, 10, false, false);

  /** What the colours mean. */
  public enum ColourMap {
    PRESSURE,
    SPEED,
    NONE
  }

  public BoardLook withMap(ColourMap other) {
    return new BoardLook(other, streamlines, tubes, tracers, mesh);
  }

  public BoardLook withStreamlines(boolean on) {
    return new BoardLook(map, on, tubes, tracers, mesh);
  }

  public BoardLook withTubes(int count) {
    return new BoardLook(map, streamlines, count, tracers, mesh);
  }

  public BoardLook withTracers(boolean on) {
    return new BoardLook(map, streamlines, tubes, on, mesh);
  }

  public BoardLook withMesh(boolean on) {
    return new BoardLook(map, streamlines, tubes, tracers, on);
  }
}
