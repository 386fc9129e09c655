package hemline.viewer.report;

import hemline.shared.result.Estimate;
import hemline.shared.result.Figure;
import hemline.shared.result.SectionFigures;
import hemline.shared.result.SectionResult;
import hemline.solver.study.Ranking;
import java.util.List;

/** Figures as tables, one figure a line. */
public final class FiguresCsv {
  private FiguresCsv() {}

  /** All figures of some sections. */
  public static String of(List<SectionResult> results) {
    CsvText out =
        new CsvText(
            "profile,gap_m,suction_Pa,groundSpeed_m_s,spanwiseSpeed_m_s,status,regime,closure,"
                + "figure,value,low,high,unit");
    for (SectionResult r : results) {
      List<Object> head =
          List.of(
              r.name(),
              r.conditions().gap(),
              r.conditions().suction(),
              r.conditions().groundSpeed(),
              r.conditions().spanwiseSpeed(),
              r.status().key(),
              r.regime().key(),
              r.closure());
      for (Figure figure : Figure.values()) {
        Estimate estimate = r.figures().get(figure);
        if (estimate != null) {
          out.row(head, figure.key(), CsvText.band(estimate), figure.unit());
        }
      }
      list(out, head, "stageShare", r.figures().stageShares());
      list(out, head, "carryOver", r.figures().carryOver());
      list(
          out,
          head,
          "trappedVortexStrength",
          r.figures().trappedVortices().stream()
              .map(SectionFigures.TrappedVortex::strength)
              .toList());
    }
    return out.toString();
  }

  private static void list(CsvText out, List<Object> head, String name, List<Estimate> values) {
    for (int k = 0; k < values.size(); k++) {
      out.row(head, name + (k + 1), CsvText.band(values.get(k)), "1");
    }
  }

  /** Relative leaks of a ranking: over the gap distribution first (gap empty), then gap by gap. */
  public static String of(Ranking ranking) {
    CsvText out =
        new CsvText(
            "rank,profile,baseline,tiedWith,group,probabilityLess,bestShare,gap_m,relativeLeak,"
                + "low,high");
    for (Ranking.Row row : ranking.rows()) {
      List<Object> head =
          List.of(
              row.rank(),
              row.profile(),
              ranking.baseline(),
              String.join("; ", row.tiedWith()),
              row.placement().group().key(),
              row.placement().probabilityLess(),
              row.bestShare());
      out.row(head, null, CsvText.band(row.relativeLeak()));
      for (Ranking.GapRatio ratio : row.perGap()) {
        out.row(head, ratio.gap(), CsvText.band(ratio.relativeLeak()));
      }
    }
    return out.toString();
  }
}
