package hemline.solver.plenum;

import hemline.shared.result.Estimate;
import hemline.shared.vehicle.Load;
import hemline.shared.vehicle.Machine;
import hemline.shared.vehicle.Tolerances;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.DoubleFunction;

/**
 * What tolerances of the inputs add to the band of a margin, to first order: each input is moved by
 * its tolerance either way with the balance solved anew, and the changes add like independent
 * errors, the band of the leaks with them (root of the sum of squares; JCGM 100:2008, 5.1.2).
 */
final class InputBands {
  /** Change of an input by which sensitivities are compared. */
  private static final double TENTH = 0.1;

  private final PlenumBalance balance;
  private final boolean powered;
  private final Tolerances tolerances;
  private final Map<String, Input> inputs = new LinkedHashMap<>();

  /**
   * An input.
   *
   * @param tolerance by which it may be off
   * @param tenth change that counts as a tenth
   * @param changed the machine with the input moved
   */
  private record Input(double tolerance, double tenth, DoubleFunction<Machine> changed) {}

  InputBands(PlenumBalance balance, boolean powered) {
    this.balance = balance;
    this.powered = powered;
    Machine m = balance.machine();
    tolerances = m.terms().tolerances();
    Load load = m.load();
    double gap = m.floor().edges().stream().mapToDouble(e -> e.gap()).average().orElse(0);
    inputs.put(
        "friction",
        new Input(tolerances.friction(), TENTH, t -> m.withRunning(m.running().gripping(1 + t))));
    inputs.put(
        "fan pressure",
        new Input(
            tolerances.fanPressure(),
            TENTH,
            t -> m.withFan(m.fan().withCurve(m.fan().curve().stronger(1 + t)))));
    inputs.put(
        "mass",
        new Input(
            tolerances.mass(),
            TENTH,
            t -> m.withLoad(new Load((1 + t) * load.mass(), load.x(), load.y(), load.height()))));
    inputs.put(
        "gap",
        new Input(tolerances.gap(), TENTH * gap, t -> m.withFloor(m.floor().withGapsWider(t))));
    inputs.put(
        "height of the centre of gravity",
        new Input(
            0,
            TENTH,
            t -> m.withLoad(new Load(load.mass(), load.x(), load.y(), (1 + t) * load.height()))));
  }

  /** A margin with the tolerances in its band. */
  Estimate total(Estimate margin, HoldSearch.Worst worst) {
    if (tolerances.none() || !worst.worst().margins().settles()) {
      return margin;
    }
    double down = square(margin.value() - margin.low());
    double up = square(margin.high() - margin.value());
    for (Input input : inputs.values()) {
      if (input.tolerance() > 0) {
        double a = least(input.changed().apply(-input.tolerance()), worst) - margin.value();
        double b = least(input.changed().apply(input.tolerance()), worst) - margin.value();
        down += square(Math.max(0, -Math.min(a, b)));
        up += square(Math.max(0, Math.max(a, b)));
      }
    }
    return new Estimate(
        margin.value(), 0, 0, Math.sqrt(down), Math.sqrt(up), Estimate.Trend.UNKNOWN);
  }

  /** The input a tenth of which changes the margin most; empty when nothing pulls. */
  String mostSensitive(HoldSearch.Worst worst) {
    double now = worst.least();
    String most = "";
    double largest = 0;
    if (!Double.isFinite(now) || !worst.worst().margins().settles()) {
      return most;
    }
    for (Map.Entry<String, Input> e : inputs.entrySet()) {
      Input input = e.getValue();
      double a = now - least(input.changed().apply(input.tenth()), worst);
      double b = now - least(input.changed().apply(-input.tenth()), worst);
      double fall = Math.max(a, b);
      if (fall > largest) {
        largest = fall;
        most = e.getKey();
      }
    }
    return most;
  }

  /** Least margin of a changed machine in the attitudes that were worst before. */
  private double least(Machine changed, HoldSearch.Worst worst) {
    HoldSearch search = HoldSearch.whole(new HoldStatics(balance.changed(changed), powered));
    List<Attitude> attitudes = new ArrayList<>();
    worst.columns().forEach(f -> attitudes.add(f.attitude()));
    return HoldSearch.finite(search.among(attitudes.stream().distinct().toList()).least());
  }

  private static double square(double v) {
    return v * v;
  }
}
