package hemline.solver.rig;

import hemline.shared.problem.InputException;
import hemline.shared.result.Estimate;
import hemline.shared.rig.Rig;
import hemline.shared.rig.RigReading;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import org.apache.commons.math3.distribution.ChiSquaredDistribution;

/** Compares the readings of a rig with a prediction of its points. */
public final class ComparisonStudy {
  static final double PROBABILITY = 0.95;

  private ComparisonStudy() {}

  /** The points that a rig's readings of the lip make, in the order of predictions. */
  public static List<RigPoint> points(Rig rig) {
    return RigPoint.of(rig.of(RigReading.Kind.LIP));
  }

  /**
   * Compares.
   *
   * @param predictions of {@link #points}, in their order
   * @param matters share of the discharge from which on a difference matters
   * @throws InputException if a reading gives no flow
   */
  public static Comparison of(Rig rig, List<Prediction> predictions, double matters)
      throws InputException {
    return of(new ComparisonModel(rig, predictions), matters);
  }

  static Comparison of(ComparisonModel model, double matters) {
    Propagated all = Propagation.of(model.inputs(), model::outputs);
    List<RigPoint> points = model.rig().points();
    int n = points.size();
    List<ComparedPoint> compared = new ArrayList<>();
    double low = 0;
    double high = 0;
    for (int k = 0; k < n; k++) {
      int i = model.usable().indexOf(k);
      compared.add(point(model, all, k, i, matters));
      if (i >= 0) {
        Estimate s = model.predicted(k);
        low += s.modelLow() / s.value() / model.usable().size();
        high += s.modelHigh() / s.value() / model.usable().size();
      }
    }
    double scatter = model.rig().scatter();
    if (model.usable().isEmpty()) {
      return new Comparison(
          compared,
          new Comparison.Mean(Double.NaN, Double.NaN, Double.NaN, Verdict.NO_PREDICTION),
          new Comparison.Finer(matters, List.of()),
          scatter,
          drawn(model, all),
          FaultStudy.of(model),
          model.rig().relative(),
          model.rig().decays());
    }
    int mean = n + model.usable().size();
    double wide = all.expanded(mean, PROBABILITY);
    Verdict verdict = Verdict.of(all.value(mean), wide, low, high, matters);
    double chiSquare = Distance.chiSquare(model, all);
    if (chiSquare > chiSquareLimit(model.usable().size())) {
      verdict = Verdict.DIFFERS;
    }
    return new Comparison(
        compared,
        new Comparison.Mean(all.value(mean), wide, chiSquare, verdict),
        new Comparison.Finer(
            matters, verdict == Verdict.CANNOT_TELL ? deciders(all, mean, matters) : List.of()),
        scatter,
        drawn(model, all),
        FaultStudy.of(model),
        model.rig().relative(),
        model.rig().decays());
  }

  /** Largest difference of the ends of the intervals of D from drawn ones (JCGM 101:2008, 8). */
  private static double drawn(ComparisonModel model, Propagated all) {
    int n = model.rig().points().size();
    List<MonteCarlo.Drawn> drawn =
        MonteCarlo.of(model.inputs(), x -> Arrays.copyOf(model.outputs(x), n), PROBABILITY);
    double most = 0;
    for (int k = 0; k < n; k++) {
      double wide = all.expanded(k, PROBABILITY);
      double low = drawn.get(k).low() - (all.value(k) - wide);
      double high = drawn.get(k).high() - (all.value(k) + wide);
      most = Math.max(most, Math.max(Math.abs(low), Math.abs(high)) / wide);
    }
    return most;
  }

  static double chiSquareLimit(int points) {
    return new ChiSquaredDistribution(null, points).inverseCumulativeProbability(PROBABILITY);
  }

  private static ComparedPoint point(
      ComparisonModel model, Propagated all, int k, int i, double matters) {
    RigPoint p = model.rig().points().get(k);
    double measured = all.value(k);
    double wide = all.expanded(k, PROBABILITY);
    if (i < 0) {
      return new ComparedPoint(
          p.gap(),
          p.suction(),
          p.readings().size(),
          new ComparedPoint.Uncertain(measured, wide),
          null,
          new ComparedPoint.Uncertain(Double.NaN, Double.NaN),
          Verdict.NO_PREDICTION,
          largest(all, k));
    }
    int e = model.rig().points().size() + i;
    Estimate s = model.predicted(k);
    double unsure = all.expanded(e, PROBABILITY);
    return new ComparedPoint(
        p.gap(),
        p.suction(),
        p.readings().size(),
        new ComparedPoint.Uncertain(measured, wide),
        s,
        new ComparedPoint.Uncertain(all.value(e), unsure),
        Verdict.of(all.value(e), unsure, s.modelLow(), s.modelHigh(), matters * s.value()),
        largest(all, e));
  }

  private static Source largest(Propagated all, int output) {
    return ranked(all, output).get(0);
  }

  private static List<Source> ranked(Propagated all, int output) {
    List<Source> sources = new ArrayList<>(List.of(Source.values()));
    sources.sort(Comparator.comparingDouble((Source s) -> -all.share(output, s)));
    return sources;
  }

  /** Which sources have to get how much finer for the mean error to be finer than what matters. */
  private static List<Comparison.Decider> deciders(Propagated all, int mean, double matters) {
    double wide = all.expanded(mean, PROBABILITY);
    double target = (matters / wide) * (matters / wide);
    List<Comparison.Decider> deciders = new ArrayList<>();
    double rest = 1;
    for (Source source : ranked(all, mean)) {
      double share = all.share(mean, source);
      rest -= share;
      if (share < 0.01) {
        break;
      }
      // as the sources before it, this one must shrink; the last one named by what then is left
      double room = target - Math.max(0, rest);
      if (room > 0) {
        deciders.add(new Comparison.Decider(source, share, Math.sqrt(share / room)));
        break;
      }
      deciders.add(new Comparison.Decider(source, share, Double.POSITIVE_INFINITY));
    }
    return deciders;
  }
}
