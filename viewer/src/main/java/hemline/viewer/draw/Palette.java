package hemline.viewer.draw;

import hemline.viewer.picture.ColourCurve;
import hemline.viewer.picture.Ink;
import hemline.viewer.picture.OkLab;
import hemline.viewer.picture.PressureColours;

/**
 * Colours of the board in one theme, 0xRRGGBB.
 *
 * @param paper where no flow is
 * @param text letters and strong lines
 * @param quiet rulers
 * @param lip colours of the lip
 * @param wall colours of skirt and ground
 * @param marks colours of what can be edited
 * @param lines colours of streamlines
 * @param map colours of pressure, from the lowest to the highest, and of speed, from still to fast
 */
public record Palette(
    int paper, int text, int quiet, Lip lip, Wall wall, Marks marks, Lines lines, Map map) {

  /**
   * Colours of a lip.
   *
   * @param fill its material
   * @param hatch its hatch
   * @param edge its outline
   */
  public record Lip(int fill, int hatch, int edge) {}

  /** Colours of skirt and ground: material and hatch. */
  public record Wall(int fill, int hatch) {}

  /**
   * Colours of what can be edited.
   *
   * @param handle vertices
   * @param chosen selected vertices
   * @param wrong edges that cannot stay
   * @param caution parts that may fail in print
   */
  public record Marks(int handle, int chosen, int wrong, int caution) {}

  /** Colours of streamlines: those that carry the leak and those of trapped vortices. */
  public record Lines(int leak, int vortex) {}

  /** Colours of the two maps. */
  public record Map(ColourCurve pressure, ColourCurve speed) {}

  /** Dark on chalk. */
  public static final Palette LIGHT =
      new Palette(
          OkLab.polar(0.985, 0.006, 95).rgb(),
          Ink.TEXT,
          Ink.QUIET,
          new Lip(Ink.LIP, Ink.LIP_HATCH, Ink.LIP_EDGE),
          new Wall(Ink.WALL, Ink.WALL_HATCH),
          new Marks(
              OkLab.polar(0.36, 0.05, 60).rgb(),
              OkLab.polar(0.50, 0.17, 300).rgb(),
              OkLab.polar(0.52, 0.21, 27).rgb(),
              OkLab.polar(0.54, 0.145, 55).rgb()),
          new Lines(Ink.THROUGH, Ink.VORTEX),
          new Map(PressureColours.curve(), ColourCurve.SPEED));

  /** Light on slate. */
  public static final Palette DARK =
      new Palette(
          OkLab.polar(0.22, 0.012, 265).rgb(),
          OkLab.polar(0.93, 0.012, 95).rgb(),
          OkLab.polar(0.74, 0.015, 265).rgb(),
          new Lip(
              OkLab.polar(0.55, 0.06, 70).rgb(),
              OkLab.polar(0.42, 0.05, 65).rgb(),
              OkLab.polar(0.88, 0.05, 80).rgb()),
          new Wall(OkLab.polar(0.34, 0.010, 265).rgb(), OkLab.polar(0.50, 0.015, 265).rgb()),
          new Marks(
              OkLab.polar(0.90, 0.05, 80).rgb(),
              OkLab.polar(0.80, 0.13, 310).rgb(),
              OkLab.polar(0.70, 0.19, 25).rgb(),
              OkLab.polar(0.79, 0.15, 65).rgb()),
          new Lines(OkLab.polar(0.95, 0.015, 95).rgb(), OkLab.polar(0.76, 0.15, 50).rgb()),
          new Map(ColourCurve.PRESSURE_DARK, ColourCurve.SPEED_DARK));
}
