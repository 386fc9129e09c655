package hemline.viewer.report;

import hemline.shared.result.Estimate;
import hemline.solver.rig.ComparedPoint;
import hemline.solver.rig.Comparison;

/** Points of a rig beside their predictions as a table. */
final class CompareCsv {
  private CompareCsv() {}

  static String of(Comparison comparison) {
    CsvText out =
        new CsvText(
            "gap_m,suction_Pa,readings,measured,measuredUncertainty,predicted,predictedLow,"
                + "predictedHigh,error,errorUncertainty,verdict,largestSource");
    for (ComparedPoint p : comparison.points()) {
      Estimate s = p.predicted();
      out.row(
          p.gap(),
          p.suction(),
          p.readings(),
          p.measured().value(),
          p.measured().halfWidth(),
          CsvText.band(s),
          s == null ? null : p.error().value(),
          s == null ? null : p.error().halfWidth(),
          p.verdict().key(),
          p.largest().key());
    }
    return out.toString();
  }
}
