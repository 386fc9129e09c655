package hemline.solver.rig;

import hemline.shared.fluid.Air;
import hemline.shared.fluid.Expansibility;
import hemline.shared.result.Estimate;
import hemline.shared.result.SolveStatus;
import hemline.shared.rig.Accuracy;
import hemline.shared.rig.Instrument;
import hemline.shared.rig.Rig;
import hemline.shared.rig.RigReading;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.apache.commons.math3.random.RandomGenerator;
import org.apache.commons.math3.random.Well19937c;

/**
 * A rig whose truth is known: readings of invented instruments, with faults where asked.
 *
 * <p>The truth is a plane crack (Baker, Sharples & Ward 1987, Building and Environment 22, 293,
 * from memory): 1 / C_d² = 96 z / (D_h Re_Dh) + 1.5 with D_h = 2 h and Re_Dh = 2 q / ν. It serves
 * as the prediction too, off by a draw of its own band.
 */
final class InventedRig {
  static final double LIP = 0.6;
  static final double WIDTH = 0.008;
  private static final double TEMPERATURE = 293.15;
  private static final double BAROMETER = 100_400;
  private static final double GRID = 0.01;

  private final RandomGenerator chance;
  private final Quality quality;
  private final Map<Fault, Double> faults;
  private final Map<Errors.Shared, Double> errors = new EnumMap<>(Errors.Shared.class);
  private final List<RigReading> readings = new ArrayList<>();

  /** True discharge coefficients by reading of the lip, in their order. */
  final List<Double> truths = new ArrayList<>();

  private double largest;
  private double most;

  /** Error of the prediction as a share. */
  final double predictionError;

  /** Instruments: cheap ones and good ones, half-widths. */
  enum Quality {
    CHEAP(0.03e-3, 0.02e-3, 3, 0.02, 1, 0.04, 0.2e-3, 0.01),
    GOOD(0.01e-3, 0.005e-3, 1, 0.005, 0.1, 0.01, 0.02e-3, 0.003);

    private final double gap;
    private final double gapAnew;
    private final double gauge;
    private final double gaugeShare;
    private final double gaugeStep;
    private final double meterShare;
    private final double meterStep;
    private final double scatter;

    Quality(
        double gap,
        double gapAnew,
        double gauge,
        double gaugeShare,
        double gaugeStep,
        double meterShare,
        double meterStep,
        double scatter) {
      this.gap = gap;
      this.gapAnew = gapAnew;
      this.gauge = gauge;
      this.gaugeShare = gaugeShare;
      this.gaugeStep = gaugeStep;
      this.meterShare = meterShare;
      this.meterStep = meterStep;
      this.scatter = scatter;
    }

    Map<Instrument, Accuracy> accuracies() {
      return Map.of(
          Instrument.GAP, new Accuracy(gap, 0, 2 * gapAnew),
          Instrument.SUCTION, new Accuracy(gauge, gaugeShare, gaugeStep),
          Instrument.FLOW, new Accuracy(0, meterShare, meterStep),
          Instrument.LIP_LENGTH, new Accuracy(1e-3, 0, 0),
          Instrument.TEMPERATURE, new Accuracy(1, 0, 0),
          Instrument.BAROMETER, new Accuracy(200, 0, 0));
    }
  }

  InventedRig(
      long seed,
      Quality quality,
      Map<Fault, Double> faults,
      List<Double> gaps,
      List<Double> suctions,
      int repeats) {
    this.chance = new Well19937c(seed);
    this.quality = quality;
    this.faults = faults;
    draw(Errors.Shared.GAP_ZERO, quality.gap);
    draw(Errors.Shared.SUCTION_ZERO, quality.gauge);
    draw(Errors.Shared.SUCTION_SHARE, quality.gaugeShare);
    draw(Errors.Shared.FLOW_SHARE, quality.meterShare);
    draw(Errors.Shared.LIP_LENGTH_ZERO, 1e-3);
    draw(Errors.Shared.TEMPERATURE, 1);
    draw(Errors.Shared.BAROMETER, 200);
    predictionError = 0.5 * GRID * chance.nextGaussian();
    for (double suction : suctions) {
      for (int k = 0; k < repeats; k++) {
        read(RigReading.Kind.TAPED, Double.NaN, Double.NaN, suction, suctions);
      }
    }
    for (double gap : gaps) {
      double anew = within(quality.gapAnew);
      for (double suction : suctions) {
        for (int k = 0; k < repeats; k++) {
          double real = gap + errors.get(Errors.Shared.GAP_ZERO) + anew + size(Fault.GAP_OFFSET);
          read(RigReading.Kind.LIP, gap, real, suction, suctions);
        }
      }
    }
  }

  /** A fault of the hose as share of the suction read at the largest flow that there is. */
  double hose(double size) {
    double lost = size * most / largest * (most / largest);
    return lost / (1 + lost);
  }

  private void draw(Errors.Shared error, double halfWidth) {
    errors.put(error, within(halfWidth));
  }

  private double within(double halfWidth) {
    return halfWidth * (2 * chance.nextDouble() - 1);
  }

  private double size(Fault fault) {
    return faults.getOrDefault(fault, 0.0);
  }

  private void read(
      RigReading.Kind kind, double gap, double real, double suction, List<Double> suctions) {
    double barometer = BAROMETER + errors.get(Errors.Shared.BAROMETER);
    double density = Air.density(TEMPERATURE + errors.get(Errors.Shared.TEMPERATURE), barometer);
    double jet = Expansibility.jetSpeed(suction, density);
    double flow = 2e-6 * Math.pow(suction, 0.6) * 10;
    if (kind == RigReading.Kind.LIP) {
      double truth = truth(real, suction);
      truths.add(truth);
      double length = LIP + errors.get(Errors.Shared.LIP_LENGTH_ZERO);
      flow +=
          Expansibility.factor(suction, barometer) * truth * real * length * jet
              + size(Fault.EXTRA_AREA) * jet;
    }
    flow *= 1 + quality.scatter * chance.nextGaussian();
    largest =
        0.75 * 4e-3 * LIP * Expansibility.jetSpeed(suctions.get(suctions.size() - 1), density);
    most = Math.max(most, flow);
    double lost =
        size(Fault.HOSE) * suctions.get(suctions.size() - 1) * (flow / largest) * (flow / largest);
    double atTap = suction + lost;
    double gauge =
        (atTap - errors.get(Errors.Shared.SUCTION_ZERO))
                / (1 + errors.get(Errors.Shared.SUCTION_SHARE))
            + size(Fault.GAUGE_ZERO);
    double meter = flow / (1 + errors.get(Errors.Shared.FLOW_SHARE)) * (1 + size(Fault.FLOW_SCALE));
    readings.add(
        new RigReading(
            kind,
            readings.size() + 1,
            gap,
            step(gauge, quality.gaugeStep),
            step(meter, quality.meterStep),
            Double.NaN,
            Double.NaN,
            new RigReading.AirState(TEMPERATURE, BAROMETER)));
  }

  private static double step(double value, double step) {
    return step * Math.round(value / step);
  }

  /** Discharge coefficient of the plane crack. */
  static double truth(double gap, double suction) {
    double jet = Expansibility.jetSpeed(suction, Air.density(TEMPERATURE, BAROMETER));
    double viscosity = Air.at(TEMPERATURE, BAROMETER).kinematicViscosity();
    double c = 0.7;
    for (int k = 0; k < 60; k++) {
      double re = 2 * c * jet * gap / viscosity;
      c = 0.5 * c + 0.5 / Math.sqrt(96 * WIDTH / (2 * gap * re) + 1.5);
    }
    return c;
  }

  Rig rig() {
    return new Rig(
        "invented",
        true,
        LIP,
        Double.NaN,
        new Rig.FanMeter(null, 0),
        quality.accuracies(),
        readings,
        List.of());
  }

  /** Made-up predictions of its points. */
  List<Prediction> predictions() {
    return ComparisonStudy.points(rig()).stream()
        .map(
            p -> {
              double s = truth(p.gap(), p.suction()) * (1 + predictionError);
              return new Prediction(
                  p.gap(),
                  p.suction(),
                  SolveStatus.CONVERGED,
                  new Estimate(s, GRID * s, 0, 0.01 * s, 0.01 * s, Estimate.Trend.MONOTONE),
                  List.of());
            })
        .toList();
  }

  /** Mean of the true coefficients of a point's readings. */
  double truthOf(RigPoint point) {
    double sum = 0;
    for (RigReading r : point.readings()) {
      int number = 0;
      for (RigReading other : readings) {
        if (other.line() == r.line()) {
          sum += truths.get(number);
        }
        number += other.kind() == RigReading.Kind.LIP ? 1 : 0;
      }
    }
    return sum / point.readings().size();
  }
}
