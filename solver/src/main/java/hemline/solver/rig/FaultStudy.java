package hemline.solver.rig;

import hemline.shared.problem.InputException;
import hemline.shared.rig.Rig;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * Looks for the usual faults of a rig by their patterns over gap and suction: each alone, and,
 * where the best one leaves much that a second explains, two together.
 *
 * <p>Faults are weighed by Akaike's criterion, AIC = χ² + 2 k (1974, IEEE Trans. Autom. Control 19,
 * 716). Where even the best leaves too much, all χ² count for as much less (Birge 1932, Phys. Rev.
 * 40, 207). A fault is named if it stands in all explanations that do about as well as the best.
 * Nothing found here is ever applied to a result.
 */
public final class FaultStudy {
  /** Fewest points that make a pattern. */
  private static final int FEWEST = 4;

  /** χ² that a fault must explain: three standard uncertainties. */
  private static final double NEEDED = 9;

  /** χ² by which the best must lead: a likelihood ratio of 20. */
  private static final double LEAD = 2 * Math.log(20);

  private final PatternFit pattern;
  private final int n;
  private final double without;
  private final List<FaultFit> alone = new ArrayList<>();
  private final List<List<FaultFit>> together = new ArrayList<>();
  private final double excess;

  private FaultStudy(ComparisonModel model) {
    n = model.usable().size();
    pattern = new PatternFit(model);
    without = pattern.without();
    for (Fault fault : Fault.values()) {
      List<FaultFit> fit = pattern.of(List.of(fault));
      alone.add(fit == null ? new FaultFit(fault, 0, 0, without, 0) : fit.get(0));
    }
    alone.sort(Comparator.comparingDouble(FaultFit::chiSquare));
    double left = alone.get(0).chiSquare();
    if (n > FEWEST && left >= NEEDED && without - left >= NEEDED) {
      pairs();
    }
    double fewest =
        together.isEmpty()
            ? left / (n - 1)
            : Math.min(left / (n - 1), chiSquare(together.get(0)) / (n - 2));
    excess = Math.max(1, fewest);
  }

  /** Fits two at a time, the likeliest first. */
  private void pairs() {
    Fault[] all = Fault.values();
    for (int a = 0; a < all.length; a++) {
      for (int b = a + 1; b < all.length; b++) {
        List<FaultFit> fit = pattern.of(List.of(all[a], all[b]));
        if (fit != null) {
          together.add(fit);
        }
      }
    }
    together.sort(Comparator.comparingDouble(FaultStudy::chiSquare));
  }

  /**
   * Looks for a pattern.
   *
   * @throws InputException if a reading gives no flow
   */
  public static Diagnosis of(Rig rig, List<Prediction> predictions) throws InputException {
    return of(new ComparisonModel(rig, predictions));
  }

  static Diagnosis of(ComparisonModel model) {
    int n = model.usable().size();
    if (n < FEWEST || model.rig().relative()) {
      Diagnosis.Finding why = n < FEWEST ? Diagnosis.Finding.TOO_FEW : Diagnosis.Finding.NO_FLOW;
      return new Diagnosis(List.of(), n, Double.NaN, Double.NaN, why, List.of(), List.of());
    }
    return new FaultStudy(model).judged();
  }

  private Diagnosis judged() {
    double least = Math.min(without, alone.get(0).chiSquare() + 2 * excess);
    double weightWithout = Math.exp(-0.5 * (without - least) / excess);
    double sum = weightWithout;
    for (FaultFit fit : alone) {
      sum += likelihood(fit, least);
    }
    List<FaultFit> fits = new ArrayList<>();
    for (FaultFit f : alone) {
      fits.add(
          new FaultFit(
              f.fault(), f.size(), f.uncertainty(), f.chiSquare(), likelihood(f, least) / sum));
    }
    if (without - fits.get(0).chiSquare() < NEEDED) {
      boolean unexplained = without > ComparisonStudy.chiSquareLimit(n);
      return new Diagnosis(
          fits,
          n,
          without,
          weightWithout / sum,
          unexplained ? Diagnosis.Finding.CANNOT_TELL : Diagnosis.Finding.NONE,
          List.of(),
          List.of());
    }
    List<List<FaultFit>> alike = alike(fits);
    fits.replaceAll(
        f ->
            alike.stream().anyMatch(one -> holds(one, f.fault()))
                ? pattern.refined(List.of(f)).get(0)
                : f);
    List<FaultFit> named =
        pattern.refined(alike.get(0)).stream()
            .filter(f -> alike.stream().allMatch(one -> holds(one, f.fault())))
            .toList();
    return new Diagnosis(
        fits,
        n,
        without,
        weightWithout / sum,
        named.isEmpty() ? Diagnosis.Finding.CANNOT_TELL : Diagnosis.Finding.NAMED,
        named,
        alike.size() == 1
            ? List.of()
            : fits.stream()
                .filter(f -> !holds(named, f.fault()))
                .filter(f -> alike.stream().anyMatch(one -> holds(one, f.fault())))
                .toList());
  }

  /**
   * Explanations about as good as the best, that first: of two faults where the second is needed.
   */
  private List<List<FaultFit>> alike(List<FaultFit> fits) {
    double best = fits.get(0).chiSquare();
    double second = together.isEmpty() ? best : chiSquare(together.get(0));
    if (best - second >= NEEDED * excess) {
      return together.stream().filter(f -> chiSquare(f) < second + LEAD * excess).toList();
    }
    return fits.stream()
        .filter(f -> f.chiSquare() < best + LEAD * excess && without - f.chiSquare() >= NEEDED)
        .map(List::of)
        .toList();
  }

  private static boolean holds(List<FaultFit> faults, Fault fault) {
    return faults.stream().anyMatch(f -> f.fault() == fault);
  }

  private static double chiSquare(List<FaultFit> together) {
    return together.get(0).chiSquare();
  }

  private double likelihood(FaultFit fit, double least) {
    return Math.exp(-0.5 * ((fit.chiSquare() - least) / excess + 2));
  }
}
