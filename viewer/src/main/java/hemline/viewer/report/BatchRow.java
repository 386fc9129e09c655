package hemline.viewer.report;

import hemline.shared.result.Estimate;
import hemline.shared.result.Figure;
import hemline.shared.result.GridRun;
import hemline.shared.result.LeakOrigin;
import hemline.shared.result.SectionResult;
import java.util.List;
import java.util.stream.Collectors;

/**
 * A solved section of a batch.
 *
 * @param result its figures
 * @param origin what it was asked for
 * @param solver fingerprint of the solver
 */
public record BatchRow(SectionResult result, LeakOrigin origin, String solver) {
  double value(Figure figure) {
    Estimate estimate = result.figures().get(figure);
    return estimate == null ? Double.NaN : estimate.value();
  }

  double low(Figure figure) {
    Estimate estimate = result.figures().get(figure);
    return estimate == null ? Double.NaN : estimate.low();
  }

  double high(Figure figure) {
    Estimate estimate = result.figures().get(figure);
    return estimate == null ? Double.NaN : estimate.high();
  }

  double cells() {
    List<GridRun> grids = result.grids();
    return grids.isEmpty() ? Double.NaN : grids.get(grids.size() - 1).cells();
  }

  double iterations() {
    return result.grids().stream().mapToInt(GridRun::iterations).sum();
  }

  static String values(List<Estimate> estimates) {
    return estimates.stream()
        .map(estimate -> Double.toString(estimate.value()))
        .collect(Collectors.joining(" "));
  }
}
