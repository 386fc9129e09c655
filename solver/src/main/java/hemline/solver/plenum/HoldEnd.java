package hemline.solver.plenum;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What ends the hold at one place: each thing changed alone until the least margin over all
 * headings falls to what is asked. Leaks as estimated.
 *
 * @param place slope, wall, ceiling or worst (at every tilt)
 * @param tilt of the ground, rad
 * @param fanSpeed least, 1/s
 * @param voltage least of the battery, V, when the fan's speed goes with it (common practice, no
 *     source); null when none is given
 * @param wider most by which all gaps may open, m; null when it bears more than the widest gap that
 *     was tried
 * @param friction least of the tyres before slip; null when nothing slides
 * @param surfaces what usual frictions are over that; empty when nothing slides
 * @param payload most that may be added at the centre of gravity, kg
 * @param plenumTime from the moment the fan moves no air any more, s
 * @param rotorTime from the moment its motor has no power, while the rotor runs down, s; null when
 *     its inertia is not given
 */
public record HoldEnd(
    String place,
    double tilt,
    double fanSpeed,
    @Nullable Double voltage,
    @Nullable Double wider,
    @Nullable Double friction,
    List<SurfaceGrip> surfaces,
    double payload,
    double plenumTime,
    @Nullable Double rotorTime) {
  public HoldEnd {
    surfaces = List.copyOf(surfaces);
  }
}
