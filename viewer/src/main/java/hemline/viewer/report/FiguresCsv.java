package hemline.viewer.report;

import hemline.shared.result.Estimate;
import hemline.shared.result.Figure;
import hemline.shared.result.SectionResult;
import hemline.solver.study.Ranking;
import java.util.List;

/** Figures as comma-separated tables (RFC 4180), one figure a line, SI units. */
public final class FiguresCsv {
  private static final String END = "\r\n";

  private FiguresCsv() {}

  /** All figures of some sections. */
  public static String of(List<SectionResult> results) {
    StringBuilder out = new StringBuilder();
    out.append("profile,gap_m,suction_Pa,groundSpeed_m_s,spanwiseSpeed_m_s,status,regime,closure,");
    out.append("figure,value,low,high,unit").append(END);
    for (SectionResult result : results) {
      String head =
          String.join(
                  ",",
                  CsvText.cell(result.name()),
                  number(result.gap()),
                  number(result.suction()),
                  number(result.groundSpeed()),
                  number(result.spanwiseSpeed()),
                  result.status().key(),
                  result.regime().key(),
                  CsvText.cell(result.closure()))
              + ",";
      for (Figure figure : Figure.values()) {
        Estimate estimate = result.figures().get(figure);
        if (estimate != null) {
          line(out, head, figure.key(), estimate, figure.unit());
        }
      }
      list(out, head, "stageShare", result.stageShares());
      list(out, head, "carryOver", result.carryOver());
      list(
          out,
          head,
          "trappedVortexStrength",
          result.trappedVortices().stream().map(SectionResult.TrappedVortex::strength).toList());
    }
    return out.toString();
  }

  /** Relative leaks of a ranking: over the gap distribution first (gap empty), then gap by gap. */
  public static String of(Ranking ranking) {
    StringBuilder out = new StringBuilder();
    out.append(
            "rank,profile,baseline,tiedWith,group,probabilityLess,bestShare,gap_m,relativeLeak,low,high")
        .append(END);
    for (Ranking.Row row : ranking.rows()) {
      String head =
          String.join(
                  ",",
                  String.valueOf(row.rank()),
                  CsvText.cell(row.profile()),
                  CsvText.cell(ranking.baseline()),
                  CsvText.cell(String.join("; ", row.tiedWith())),
                  row.placement().group().key(),
                  number(row.placement().probabilityLess()),
                  number(row.bestShare()))
              + ",";
      out.append(head).append(',').append(band(row.relativeLeak())).append(END);
      for (Ranking.GapRatio ratio : row.perGap()) {
        out.append(head).append(number(ratio.gap())).append(',');
        out.append(band(ratio.relativeLeak())).append(END);
      }
    }
    return out.toString();
  }

  private static void list(StringBuilder out, String head, String name, List<Estimate> values) {
    for (int k = 0; k < values.size(); k++) {
      line(out, head, name + (k + 1), values.get(k), "1");
    }
  }

  private static void line(
      StringBuilder out, String head, String name, Estimate estimate, String unit) {
    out.append(head).append(name).append(',').append(band(estimate)).append(',').append(unit);
    out.append(END);
  }

  private static String band(Estimate estimate) {
    return number(estimate.value())
        + ","
        + number(Math.min(estimate.low(), estimate.value()))
        + ","
        + number(Math.max(estimate.high(), estimate.value()));
  }

  private static String number(double value) {
    return Double.toString(value == 0 ? 0.0 : value);
  }
}
