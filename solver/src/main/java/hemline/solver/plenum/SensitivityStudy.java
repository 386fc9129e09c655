package hemline.solver.plenum;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.Function;

/**
 * How much the least margin of a verdict changes with each input and guess, one moved at a time
 * with the balance solved anew, in the attitudes that were worst before.
 */
final class SensitivityStudy {
  /** Change of the tilt of the ground. */
  private static final double TILT = Math.toRadians(2);

  private final PlenumBalance balance;
  private final List<UncertainInput> inputs;

  SensitivityStudy(PlenumBalance balance) {
    this.balance = balance;
    inputs = UncertainInput.of(balance);
  }

  /** With the seal whole. */
  Sensitivity whole(String place, HoldSearch.Worst worst) {
    return of(place, "", worst, inputs, b -> HoldSearch.whole(new HoldStatics(b, true)));
  }

  /**
   * Of any search.
   *
   * @param moved inputs and guesses
   * @param search of a changed balance
   */
  Sensitivity of(
      String place,
      String over,
      HoldSearch.Worst worst,
      List<UncertainInput> moved,
      Function<PlenumBalance, HoldSearch> search) {
    double now = HoldSearch.finite(worst.least());
    List<Attitude> attitudes = worst.attitudes();
    List<Sensitivity.Effect> effects = new ArrayList<>();
    if (!worst.worst().margins().settles() || !Double.isFinite(worst.least())) {
      return new Sensitivity(place, over, effects);
    }
    for (UncertainInput i : moved) {
      double up = least(search.apply(i.moved().apply(i.step())), attitudes);
      double down = least(search.apply(i.moved().apply(-i.step())), attitudes);
      effects.add(effect(i, new double[] {down, now, up}));
    }
    if (place.equals("slope") || place.equals("wall")) {
      HoldSearch here = search.apply(balance);
      double up = least(here, tilted(attitudes, TILT));
      double down = least(here, tilted(attitudes, -TILT));
      UncertainInput tilt = new UncertainInput("tilt of the ground", "rad", 0, TILT, b -> balance);
      effects.add(effect(tilt, new double[] {down, now, up}));
    }
    effects.sort(Comparator.comparingDouble(Sensitivity.Effect::fall).reversed());
    return new Sensitivity(place, over, effects);
  }

  List<UncertainInput> inputs() {
    return inputs;
  }

  private static Sensitivity.Effect effect(UncertainInput i, double[] m) {
    return new Sensitivity.Effect(
        i.name(),
        i.unit(),
        i.assumed(),
        i.step(),
        (m[2] - m[0]) / (2 * i.step()),
        Math.max(0, m[1] - Math.min(m[0], m[2])));
  }

  private static List<Attitude> tilted(List<Attitude> all, double by) {
    return all.stream().map(a -> new Attitude(a.tilt() + by, a.downhill())).toList();
  }

  private static double least(HoldSearch search, List<Attitude> attitudes) {
    return HoldSearch.finite(search.among(attitudes).least());
  }
}
