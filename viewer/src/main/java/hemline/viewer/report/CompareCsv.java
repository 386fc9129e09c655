package hemline.viewer.report;

import hemline.shared.result.Estimate;
import hemline.solver.rig.ComparedPoint;
import hemline.solver.rig.Comparison;

/** Points of a rig beside their predictions as comma-separated table (RFC 4180), SI units. */
final class CompareCsv {
  private static final String END = "\r\n";

  private CompareCsv() {}

  static String of(Comparison comparison) {
    StringBuilder out = new StringBuilder();
    out.append("gap_m,suction_Pa,readings,measured,measuredUncertainty,predicted,predictedLow,")
        .append("predictedHigh,error,errorUncertainty,verdict,largestSource")
        .append(END);
    for (ComparedPoint p : comparison.points()) {
      Estimate s = p.predicted();
      out.append(p.gap()).append(',').append(p.suction()).append(',').append(p.readings());
      out.append(',').append(p.measured()).append(',').append(p.measuredUncertainty());
      if (s == null) {
        out.append(",,,,,");
      } else {
        out.append(',').append(s.value()).append(',').append(s.low()).append(',').append(s.high());
        out.append(',').append(p.error()).append(',').append(p.errorUncertainty());
      }
      out.append(',').append(p.verdict().key()).append(',').append(p.largest().key()).append(END);
    }
    return out.toString();
  }
}
