package hemline.solver.rig;

import hemline.shared.rig.RigReading;
import java.util.ArrayList;
import java.util.List;

/**
 * Leaks of the box by the readings with the lip taped shut: q = c Δp^n.
 *
 * <p>With readings at two suctions or more, c and n are fitted to them; with one, n is taken as
 * 0.65 within 0.15, between an orifice (0.5) and cracks (towards 1); ISO 9972 on the leaks of
 * buildings uses the same law and about the same exponent (from memory).
 */
final class BoxLeak {
  private static final double USUAL_EXPONENT = 0.65;
  private static final double EXPONENT_SPREAD = 0.15;
  private static final double LEAST_EXPONENT = 0.5;
  private static final double MOST_EXPONENT = 1;

  /** Suctions this far apart tell an exponent. */
  private static final double LEAST_RATIO = 1.3;

  private final List<RigPoint> taped;
  private final List<Decay> decays;
  private final double volume;
  private final boolean fitted;

  /**
   * Leaks of a box.
   *
   * @param taped points with the lip taped
   * @param decays runs; those with the lip taped count where there are no such points
   * @param volume of the box, m³
   */
  BoxLeak(List<RigPoint> taped, List<Decay> decays, double volume) {
    this.taped = taped;
    this.decays = taped.isEmpty() ? decays.stream().filter(Decay::taped).toList() : List.of();
    this.volume = volume;
    double low = taped.stream().mapToDouble(RigPoint::suction).min().orElse(1);
    double high = taped.stream().mapToDouble(RigPoint::suction).max().orElse(1);
    this.fitted = high > LEAST_RATIO * low;
  }

  /** Half-width of the exponent; 0 where it is fitted or nothing was taped. */
  double exponentSpread() {
    return fitted || taped.isEmpty() ? 0 : EXPONENT_SPREAD;
  }

  double polytropicSpread() {
    return decays.isEmpty() ? 0 : Decay.POLYTROPIC_SPREAD;
  }

  /** Runs that give the law. */
  List<Decay> decays() {
    return decays;
  }

  /** A law, for one draw of the errors. */
  record Law(double factor, double exponent) {
    /** Leak at a suction, m³/s as ambient air. */
    double at(double suction) {
      return factor == 0 ? 0 : factor * Math.pow(suction, exponent);
    }
  }

  /** The law that the taped readings give once their errors are taken off. */
  Law law(FlowReader flow, Errors errors, int firstPlace) {
    List<double[]> pairs = new ArrayList<>();
    for (int t = 0; t < taped.size(); t++) {
      for (RigReading r : taped.get(t).readings()) {
        double suction = flow.suction(r, errors, firstPlace + t);
        double leak = flow.flow(r, suction, errors, firstPlace + t);
        if (suction > 0 && leak > 0) {
          pairs.add(new double[] {Math.log(suction), Math.log(leak)});
        }
      }
    }
    if (!decays.isEmpty()) {
      double area =
          decays.stream().mapToDouble(d -> d.area(flow, errors, volume)).average().orElseThrow();
      double density = flow.density(decays.get(0).readings().get(0), errors);
      return new Law(Math.max(0, area) * Math.sqrt(2 / density), 0.5);
    }
    if (pairs.isEmpty()) {
      return new Law(0, USUAL_EXPONENT);
    }
    double x = pairs.stream().mapToDouble(p -> p[0]).average().orElseThrow();
    double y = pairs.stream().mapToDouble(p -> p[1]).average().orElseThrow();
    double exponent = USUAL_EXPONENT + errors.of(Errors.Shared.BOX_EXPONENT);
    if (fitted) {
      double xx = pairs.stream().mapToDouble(p -> (p[0] - x) * (p[0] - x)).sum();
      double xy = pairs.stream().mapToDouble(p -> (p[0] - x) * (p[1] - y)).sum();
      exponent = Math.max(LEAST_EXPONENT, Math.min(MOST_EXPONENT, xx > 0 ? xy / xx : exponent));
    }
    return new Law(Math.exp(y - exponent * x), exponent);
  }
}
