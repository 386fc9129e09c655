package hemline.viewer.picture;

import hemline.viewer.picture.Sheet.Pen;

/** The few colours all pictures share. Dark on chalk; one warm accent against the blues. */
public final class Ink {
  public static final int PAPER = 0xFFFFFF;
  public static final int TEXT = OkLab.polar(0.27, 0.035, 265).rgb();
  public static final int QUIET = OkLab.polar(0.52, 0.025, 265).rgb();
  public static final int FAINT = OkLab.polar(0.87, 0.010, 265).rgb();

  /** Leak through the gap. */
  public static final int THROUGH = OkLab.polar(0.24, 0.06, 268).rgb();

  /** Trapped vortices, and what needs attention. */
  public static final int VORTEX = OkLab.polar(0.58, 0.19, 38).rgb();

  /** Lip material and its hatch. */
  public static final int LIP = OkLab.polar(0.80, 0.045, 75).rgb();

  public static final int LIP_HATCH = OkLab.polar(0.64, 0.06, 68).rgb();
  public static final int LIP_EDGE = OkLab.polar(0.36, 0.05, 60).rgb();

  /** Skirt wall, channel walls, ground. */
  public static final int WALL = OkLab.polar(0.90, 0.008, 75).rgb();

  public static final int WALL_HATCH = OkLab.polar(0.70, 0.015, 75).rgb();

  /** The candidate in a chart and its band. */
  public static final int SERIES = OkLab.polar(0.46, 0.135, 264).rgb();

  public static final int SERIES_BAND = OkLab.polar(0.86, 0.055, 250).rgb();

  public static final Pen HAIR = new Pen(FAINT, 1, 0.8);
  public static final Pen AXIS = new Pen(QUIET, 1, 0.9);

  private Ink() {}
}
