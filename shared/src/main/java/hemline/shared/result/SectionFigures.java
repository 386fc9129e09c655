package hemline.shared.result;

import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * What was measured in the flow of a section, as estimates.
 *
 * @param scalars figures that do not apply are absent
 * @param stageShares share of the pressure drop by constriction
 * @param carryOver kinetic energy kept from each constriction to the next
 * @param trappedVortices eddies, strongest first
 */
public record SectionFigures(
    Map<Figure, Estimate> scalars,
    List<Estimate> stageShares,
    List<Estimate> carryOver,
    List<TrappedVortex> trappedVortices) {
  /** Those of a section without a usable flow. */
  public static final SectionFigures NONE =
      new SectionFigures(Map.of(), List.of(), List.of(), List.of());

  /**
   * A closed eddy with the estimate of its strength.
   *
   * @param strength in units of the leak flow
   * @param x centre, m
   * @param y centre, m
   */
  public record TrappedVortex(Estimate strength, double x, double y) {}

  public SectionFigures {
    scalars = Map.copyOf(scalars);
    stageShares = List.copyOf(stageShares);
    carryOver = List.copyOf(carryOver);
    trappedVortices = List.copyOf(trappedVortices);
  }

  /** A scalar; null where it does not apply. */
  public @Nullable Estimate get(Figure figure) {
    return scalars.get(figure);
  }
}
