package hemline.shared.result;

import java.util.List;
import java.util.Map;

/**
 * Figures of one flow field on one grid, without uncertainty.
 *
 * @param scalars by figure, finite; figures that do not apply are absent
 * @param stageShares share of the pressure drop by constriction, in leak order; sums to 1
 * @param carryOver kinetic energy kept from each constriction to the next
 * @param vortices trapped eddies, strongest first
 */
public record RawFigures(
    Map<Figure, Double> scalars,
    List<Double> stageShares,
    List<Double> carryOver,
    List<Vortex> vortices) {

  /**
   * A closed eddy.
   *
   * @param strength extreme of the streamfunction beyond the through-flow, in units of the leak
   *     flow, positive
   * @param x centre, m
   * @param y centre, m
   */
  public record Vortex(double strength, double x, double y) {}

  public RawFigures {
    scalars = Map.copyOf(scalars);
    stageShares = List.copyOf(stageShares);
    carryOver = List.copyOf(carryOver);
    vortices = List.copyOf(vortices);
  }
}
