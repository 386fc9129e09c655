package hemline.viewer.picture;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import hemline.shared.result.Estimate;
import hemline.shared.result.Regime;
import hemline.shared.result.SectionFigures;
import hemline.shared.result.SectionResult;
import hemline.shared.result.SolveStatus;
import hemline.shared.section.SectionConditions;
import hemline.solver.study.GapDistribution;
import hemline.solver.study.Ranking;
import hemline.solver.study.RelativeSweep;
import hemline.solver.study.SweepResult;
import hemline.solver.study.Swept;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

final class ChartTest {

  private static String text(Picture picture) throws Exception {
    String svg = picture.svg();
    assertThat(svg).doesNotContain("NaN").doesNotContain("Infinity");
    assertThat(picture.svg()).isEqualTo(svg);
    assertThat(picture.png()).startsWith(0x89, 'P', 'N', 'G');
    return SectionPictureTest.parse(svg).getDocumentElement().getTextContent();
  }

  @Test
  void rankingNamesEveryLipWithItsBand() throws Exception {
    Ranking ranking = InventedStudies.ranking();
    String text = text(RankingChart.of(ranking));
    for (Ranking.Row row : ranking.rows()) {
      assertThat(text).contains(row.profile());
    }
    assertThat(text)
        .contains("0.910  (0.898 to 0.922)")
        .containsSubsequence("Leaks less than", "Not distinguishable", "Leaks more than")
        .contains("6 gaps from 1 mm to 6 mm");
  }

  @Test
  void gapChartHasAPanelForEachLip() throws Exception {
    String text = text(GapChart.of(InventedStudies.ranking()));
    assertThat(text).contains("knife fin").contains("inclined teeth");
  }

  @Test
  void oneWideBandDoesNotSqueezeTheOthers() {
    List<Estimate> usual =
        List.of(estimate(0.86, 0.02), estimate(1, 0), estimate(1.06, 0.01), estimate(0.95, 0.02));
    List<Estimate> withWide = new ArrayList<>(usual);
    withWide.add(estimate(1.1, 0.8));
    ChartPanel.Reach before = ChartPanel.reach(usual);
    assertThat(usual).allMatch(before::holds);
    ChartPanel.Reach after = ChartPanel.reach(withWide);
    assertThat(withWide.subList(0, 4)).allMatch(after::holds);
    assertThat(after.holds(withWide.get(4))).isFalse();
    assertThat(after.high()).isGreaterThan(1.1).isLessThan(1.25);
    // bands that are wide throughout are all shown
    List<Estimate> wide = List.of(estimate(1, 0), estimate(1.01, 0.2), estimate(1.02, 0.25));
    assertThat(wide).allMatch(ChartPanel.reach(wide)::holds);
  }

  private static Estimate estimate(double value, double half) {
    return new Estimate(value, half, 0, 0, 0, Estimate.Trend.MONOTONE);
  }

  @Test
  void sweepShowsTheExponent() throws Exception {
    assertThat(text(SweepChart.of(InventedStudies.sweep(), Swept.GAP)))
        .contains("gap exponent n  1.040 \u00b1 0.020")
        .contains("suction 600 Pa");
  }

  @Test
  void aWideBandOfOnePointDoesNotStretchTheSweepsScale() throws Exception {
    SweepResult sweep = InventedStudies.sweep();
    assertThat(text(SweepChart.of(sweep, Swept.GAP))).doesNotContain("arrowheads");
    List<Estimate> ratios = new ArrayList<>();
    sweep.points().forEach(p -> ratios.add(estimate(0.9, ratios.size() == 2 ? 40 : 0.02)));
    assertThat(text(SweepChart.of(new RelativeSweep(sweep, sweep, ratios), Swept.GAP)))
        .contains("0.90", "1.00", "arrowheads: the band goes on")
        .doesNotContain("\u221220");
  }

  @Test
  void aBaselineAddsAPanelWithTheRelativeLeak() throws Exception {
    SweepResult flat = InventedStudies.sweep();
    List<Estimate> ratios = new ArrayList<>();
    flat.points().forEach(p -> ratios.add(estimate(0.9, 0.02)));
    SweepChart chart = SweepChart.of(new RelativeSweep(flat, flat, ratios), Swept.GAP);
    assertThat(text(chart)).contains("leak over that of the plain flat 8").contains("0.90");
    assertThat(chart.height()).isGreaterThan(SweepChart.of(flat, Swept.GAP).height());
  }

  @Test
  void eachKindOfSweepNamesWhatItHeldStill() throws Exception {
    assertThat(text(SweepChart.of(InventedStudies.sweep(), Swept.GROUND_SPEED)))
        .contains("gap 1 mm \u00b7 suction 600 Pa")
        .contains("ground speed towards the plenum, m/s");
    assertThat(text(SweepChart.of(InventedStudies.sweep(), Swept.SUCTION)))
        .contains("gap 1 mm \u00b7 ground still");
  }

  @Test
  void sweepWithoutAnyUsablePointSaysSo() throws Exception {
    SectionResult failed =
        new SectionResult(
            "lip",
            new SectionConditions(1e-3, 600, 0, 0),
            SolveStatus.FAILED,
            Regime.LAMINAR,
            "laminar",
            SectionFigures.NONE,
            List.of(),
            List.of());
    assertThat(text(SweepChart.of(new SweepResult(List.of(failed), null), Swept.GAP)))
        .contains("no usable flow");
  }

  @Test
  void emptyStudiesHaveNoChart() {
    Ranking empty =
        new Ranking(
            "a",
            GapDistribution.even(List.of(1e-3)),
            600,
            List.of(),
            List.of(),
            List.of(),
            List.of());
    assertThatThrownBy(() -> RankingChart.of(empty)).isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> GapChart.of(empty)).isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> SweepChart.of(new SweepResult(List.of(), null), Swept.GAP))
        .isInstanceOf(IllegalArgumentException.class);
  }
}
