package hemline.solver.plenum;

import java.util.List;
import java.util.Optional;

/**
 * What the least margin of a verdict hangs on.
 *
 * @param place slope, wall, ceiling or worst
 * @param over what is crossed there, in words; empty with the seal whole
 * @param effects of every uncertain input and guess, the one that takes most first
 */
public record Sensitivity(String place, String over, List<Effect> effects) {
  public Sensitivity {
    effects = List.copyOf(effects);
  }

  /**
   * Effect of one input.
   *
   * @param input its name
   * @param unit of the derivative's input: "1" for a share of the input, m, rad
   * @param assumed true where it is a guess of the balance, which no file gives
   * @param step by which it was moved either way
   * @param derivative of the least margin by the input, between the steps
   * @param fall of the least margin by the worse of the two steps; 0 where neither lowers it
   */
  public record Effect(
      String input, String unit, boolean assumed, double step, double derivative, double fall) {}

  /** The guess whose step takes most; empty where none lowers the margin. */
  public Optional<Effect> mostAssumed() {
    return effects.stream().filter(e -> e.assumed() && e.fall() > 0).findFirst();
  }

  /** The input whose step takes most; empty where none lowers the margin. */
  public Optional<Effect> most() {
    return effects.stream().filter(e -> e.fall() > 0).findFirst();
  }
}
