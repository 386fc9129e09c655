package hemline.solver.plenum;

import hemline.shared.result.Estimate;
import java.util.List;

/**
 * What tolerances of the inputs add to the band of a margin, to first order: each input is moved by
 * its tolerance either way with the balance solved anew, and the changes add like independent
 * errors, the band of the leaks with them (root of the sum of squares; JCGM 100:2008, 5.1.2).
 */
final class InputBands {
  private final boolean powered;
  private final List<UncertainInput> inputs;

  InputBands(PlenumBalance balance, boolean powered) {
    this.powered = powered;
    inputs = UncertainInput.toleranced(balance).stream().filter(i -> i.tolerance() > 0).toList();
  }

  /** A margin with the tolerances in its band. */
  Estimate total(Estimate margin, HoldSearch.Worst worst) {
    if (inputs.isEmpty() || !worst.worst().margins().settles()) {
      return margin;
    }
    double down = square(margin.value() - margin.low());
    double up = square(margin.high() - margin.value());
    for (UncertainInput input : inputs) {
      double a = least(input.moved().apply(-input.tolerance()), worst) - margin.value();
      double b = least(input.moved().apply(input.tolerance()), worst) - margin.value();
      down += square(Math.max(0, -Math.min(a, b)));
      up += square(Math.max(0, Math.max(a, b)));
    }
    return new Estimate(
        margin.value(), 0, 0, Math.sqrt(down), Math.sqrt(up), Estimate.Trend.UNKNOWN);
  }

  /** Least margin of a changed machine in the attitudes that were worst before. */
  private double least(PlenumBalance changed, HoldSearch.Worst worst) {
    HoldSearch search = HoldSearch.whole(new HoldStatics(changed, powered));
    return HoldSearch.finite(search.among(worst.attitudes()).least());
  }

  private static double square(double v) {
    return v * v;
  }
}
