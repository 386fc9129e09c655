package hemline.solver.plenum;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What ends the hold at one place: each thing changed alone until the least margin over all
 * headings falls to what is asked. Leaks as estimated.
 *
 * @param place slope, wall, ceiling or worst (at every tilt)
 * @param tilt of the ground, rad
 * @param fan least of it
 * @param wider most by which all gaps may open, m; null when it bears more than the widest gap that
 *     was tried
 * @param grip least of the tyres
 * @param payload most that may be added at the centre of gravity, kg
 * @param times from the moment the fan fails
 */
public record HoldEnd(
    String place,
    double tilt,
    LeastFan fan,
    @Nullable Double wider,
    LeastGrip grip,
    double payload,
    Times times) {

  /**
   * Least of the fan.
   *
   * @param speed 1/s
   * @param voltage of the battery, V, when the fan's speed goes with it (common practice, no
   *     source); null when none is given
   */
  public record LeastFan(double speed, @Nullable Double voltage) {}

  /**
   * Least of the tyres.
   *
   * @param friction before slip; null when nothing slides
   * @param surfaces what usual frictions are over that; empty when nothing slides
   */
  public record LeastGrip(@Nullable Double friction, List<SurfaceGrip> surfaces) {
    public LeastGrip {
      surfaces = List.copyOf(surfaces);
    }
  }

  /**
   * How long it holds without the fan.
   *
   * @param plenum from the moment the fan moves no air any more, s
   * @param rotor from the moment its motor has no power, while the rotor runs down, s; null when
   *     its inertia is not given
   */
  public record Times(double plenum, @Nullable Double rotor) {}
}
