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
 * @param lip material of the lip
 * @param lipHatch its hatch
 * @param lipEdge its outline
 * @param wall skirt and ground
 * @param wallHatch their hatch
 * @param handle vertices
 * @param chosen selected vertices
 * @param wrong edges that cannot stay
 * @param caution parts that may fail in print
 * @param leak streamlines that carry the leak
 * @param vortex streamlines of trapped vortices
 * @param map colours of pressure, from the lowest to the highest, and of speed, from still to fast
 */
public record Palette(
    int paper,
    int text,
    int quiet,
    int lip,
    int lipHatch,
    int lipEdge,
    int wall,
    int wallHatch,
    int handle,
    int chosen,
    int wrong,
    int caution,
    int leak,
    int vortex,
    Map map) {

  /** Colours of the two maps. */
  public record Map(ColourCurve pressure, ColourCurve speed) {}

  /** Dark on chalk. */
  public static final Palette LIGHT =
      new Palette(
          OkLab.polar(0.985, 0.006, 95).rgb(),
          Ink.TEXT,
          Ink.QUIET,
          Ink.LIP,
          Ink.LIP_HATCH,
          Ink.LIP_EDGE,
          Ink.WALL,
          Ink.WALL_HATCH,
          OkLab.polar(0.36, 0.05, 60).rgb(),
          OkLab.polar(0.50, 0.17, 300).rgb(),
          OkLab.polar(0.52, 0.21, 27).rgb(),
          OkLab.polar(0.54, 0.145, 55).rgb(),
          Ink.THROUGH,
          Ink.VORTEX,
          new Map(PressureColours.curve(), ColourCurve.SPEED));

  /** Light on slate. */
  public static final Palette DARK =
      new Palette(
          OkLab.polar(0.22, 0.012, 265).rgb(),
          OkLab.polar(0.93, 0.012, 95).rgb(),
          OkLab.polar(0.74, 0.015, 265).rgb(),
          OkLab.polar(0.55, 0.06, 70).rgb(),
          OkLab.polar(0.42, 0.05, 65).rgb(),
          OkLab.polar(0.88, 0.05, 80).rgb(),
          OkLab.polar(0.34, 0.010, 265).rgb(),
          OkLab.polar(0.50, 0.015, 265).rgb(),
          OkLab.polar(0.90, 0.05, 80).rgb(),
          OkLab.polar(0.80, 0.13, 310).rgb(),
          OkLab.polar(0.70, 0.19, 25).rgb(),
          OkLab.polar(0.79, 0.15, 65).rgb(),
          OkLab.polar(0.95, 0.015, 95).rgb(),
          OkLab.polar(0.76, 0.15, 50).rgb(),
          new Map(ColourCurve.PRESSURE_DARK, ColourCurve.SPEED_DARK));
}
