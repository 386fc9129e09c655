package hemline.solver.rig;

import hemline.shared.fluid.Air;
import hemline.shared.fluid.Expansibility;
import hemline.shared.problem.InputException;
import hemline.shared.result.Estimate;
import hemline.shared.result.Figure;
import hemline.shared.result.SectionResult;
import hemline.shared.rig.Accuracy;
import hemline.shared.rig.Instrument;
import hemline.shared.rig.Rig;
import hemline.shared.rig.RigReading;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/**
 * Plans a test of two lips on one rig. Both are read with the same instruments, so that errors that
 * all readings share cancel in the ratio of their leaks as far as they do; setting the gap anew,
 * the steps of the displays and scatter do not.
 */
public final class TestPlan {
  /** Scatter of single readings where the rig has no repeats yet; judged, no source. */
  private static final double USUAL_SCATTER = 0.01;

  private static final int MOST_REPEATS = 100;

  private final Rig rig;
  private final double scatter;

  /**
   * A plan.
   *
   * @throws InputException if a reading of the rig gives no flow
   */
  public TestPlan(Rig rig) throws InputException {
    this.rig = rig;
    boolean read = rig.readings().stream().anyMatch(r -> r.kind() == RigReading.Kind.LIP);
    double known = read ? new RigModel(rig).scatter() : 0;
    this.scatter = known > 0 ? known : USUAL_SCATTER;
  }

  /** Scatter of single readings that the plan counts with, as a share. */
  public double scatter() {
    return scatter;
  }

  /**
   * A point of the plan.
   *
   * @param one predicted section of the lip
   * @param other predicted section of the lip that it is to be told from, same gap and suction
   * @param ratio leak of the one over that of the other
   * @param repeats readings of each lip, at least 1
   */
  public PlannedPoint at(SectionResult one, SectionResult other, Estimate ratio, int repeats)
      throws InputException {
    double wide = uncertainty(one, other, repeats);
    double off = Math.abs(ratio.value() - 1);
    double nearest = ratio.low() > 1 ? ratio.low() - 1 : ratio.high() < 1 ? 1 - ratio.high() : 0;
    PlannedPoint.Tells tells =
        nearest > wide
            ? PlannedPoint.Tells.YES
            : off > wide ? PlannedPoint.Tells.AS_PREDICTED : PlannedPoint.Tells.NO;
    return new PlannedPoint(
        one.conditions().gap(),
        one.conditions().suction(),
        ratio,
        wide,
        needed(one, other, off),
        tells);
  }

  private int needed(SectionResult one, SectionResult other, double off) throws InputException {
    double single = uncertainty(one, other, 1);
    double never = uncertainty(one, other, Integer.MAX_VALUE);
    if (off <= never) {
      return 0;
    }
    // U² = U∞² + (U1² − U∞²) / n
    double n = (single * single - never * never) / (off * off - never * never);
    int whole = (int) Math.ceil(Math.max(1, n));
    return whole > MOST_REPEATS ? 0 : whole;
  }

  /** Half-width at 95 % of the measured ratio. */
  private double uncertainty(SectionResult one, SectionResult other, int repeats)
      throws InputException {
    RigModel a = new RigModel(made(one));
    RigModel b = new RigModel(made(other));
    int shared = Errors.Shared.values().length;
    List<InputQuantity> inputs = new ArrayList<>(a.inputs());
    inputs.addAll(b.inputs().subList(shared, b.size()));
    double own = scatter / Math.sqrt(repeats);
    inputs.add(InputQuantity.normal(Source.SCATTER, 0, own));
    inputs.add(InputQuantity.normal(Source.SCATTER, 1, own));
    Propagated ratio =
        Propagation.of(
            inputs,
            x -> {
              double[] first = Arrays.copyOf(x, a.size());
              double[] second = Arrays.copyOf(x, b.size());
              System.arraycopy(x, a.size(), second, shared, b.size() - shared);
              double upper = a.at(new Errors(first)).get(0).discharge();
              double lower = b.at(new Errors(second)).get(0).discharge();
              return new double[] {upper * (1 + x[x.length - 2]) / (lower * (1 + x[x.length - 1]))};
            });
    return ratio.expanded(0, ComparisonStudy.PROBABILITY);
  }

  /** The rig with the one reading that a section would give. */
  private Rig made(SectionResult section) {
    Estimate discharge = section.figures().get(Figure.DISCHARGE_COEFFICIENT);
    double coefficient = discharge == null ? 0 : discharge.value();
    double temperature = Air.STANDARD_TEMPERATURE;
    double barometer = Air.STANDARD_PRESSURE;
    double jet =
        Expansibility.jetSpeed(section.conditions().suction(), Air.density(temperature, barometer));
    double flow =
        coefficient
            * Expansibility.factor(section.conditions().suction(), barometer)
            * section.conditions().gap()
            * rig.lipLength()
            * jet;
    Map<Instrument, Accuracy> accuracy = new EnumMap<>(Instrument.class);
    accuracy.putAll(rig.accuracy());
    if (!rig.of(Instrument.FLOW).stated()) {
      double share = rig.fan().accuracy() + rig.of(Instrument.FAN_SPEED).ofReading();
      accuracy.put(Instrument.FLOW, new Accuracy(0, share, 0));
    }
    return new Rig(
        rig.name(),
        rig.invented(),
        rig.lipLength(),
        Double.NaN,
        Rig.FanMeter.NONE,
        accuracy,
        List.of(
            new RigReading(
                RigReading.Kind.LIP,
                0,
                section.conditions().gap(),
                section.conditions().suction(),
                flow,
                Double.NaN,
                Double.NaN,
                new RigReading.AirState(temperature, barometer))),
        List.of());
  }
}
