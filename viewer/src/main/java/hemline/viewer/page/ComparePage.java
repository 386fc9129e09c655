package hemline.viewer.page;

import hemline.shared.problem.NoticeKind;
import hemline.shared.result.Calibration;
import hemline.shared.result.Estimate;
import hemline.shared.rig.Rig;
import hemline.solver.rig.ComparedPoint;
import hemline.solver.rig.Comparison;
import hemline.solver.rig.DecayLeak;
import hemline.solver.rig.Source;
import hemline.viewer.format.Cautions;
import hemline.viewer.format.CompareWords;
import hemline.viewer.format.Digits;
import hemline.viewer.format.LengthUnit;
import hemline.viewer.format.NoticeWords;
import hemline.viewer.format.Wording;
import hemline.viewer.page.Page.Tone;
import hemline.viewer.picture.CompareChart;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** A measurement beside its prediction. */
public final class ComparePage {
  private final Rig rig;
  private final Comparison comparison;
  private final Page page;

  private ComparePage(String lip, Rig rig, Comparison comparison) {
    this.rig = rig;
    this.comparison = comparison;
    page = new Page(title(lip, rig));
  }

  /** Lip and rig, and that the readings are invented where they are. */
  public static String title(String lip, Rig rig) {
    return lip + " beside " + rig.name() + (rig.invented() ? " (invented readings)" : "");
  }

  /**
   * The page.
   *
   * @param lip name
   * @param learnt calibration that the comparison teaches; null for none
   */
  public static Page of(String lip, Rig rig, Comparison comparison, @Nullable Calibration learnt) {
    ComparePage p = new ComparePage(lip, rig, comparison);
    p.page.text(CompareWords.overall(comparison), Tone.FINDING);
    p.page.plot(
        () -> CompareChart.of(p.page.title(), comparison),
        "Measured and predicted discharge coefficients with their error bars by gap");
    p.points();
    p.deciders();
    p.decays();
    p.faults();
    p.calibration(learnt);
    p.notices();
    p.page.heading("At the rig").texts(CompareWords.CAUTIONS, Tone.CAUTION);
    return p.page.details().quiet(Cautions.CODES);
  }

  /**
   * Adds a part to a page.
   *
   * @param table rows of cells, the head first; empty for none
   */
  static void part(Page page, String title, List<List<String>> table, List<String> sentences) {
    page.heading(title);
    if (!table.isEmpty()) {
      PageTable rows = PageTable.of(table.get(0));
      table.stream().skip(1).forEach(row -> rows.row(row, false));
      page.table(rows);
    }
    page.texts(sentences, Tone.PLAIN);
  }

  private void points() {
    List<List<String>> table = new ArrayList<>();
    table.add(
        List.of(
            "gap, " + LengthUnit.unit(),
            "suction, Pa",
            "readings",
            "C_d measured",
            "C_d predicted",
            "E",
            "verdict",
            "most unsure"));
    for (ComparedPoint p : comparison.points()) {
      Estimate predicted = p.predicted();
      table.add(
          List.of(
              LengthUnit.bare(p.gap(), 4),
              Digits.plain(p.suction(), 4),
              Integer.toString(p.readings()),
              within(p.measured().value(), p.measured().halfWidth()),
              predicted == null ? "-" : Digits.withBand(predicted, 1),
              predicted == null ? "-" : within(p.error().value(), p.error().halfWidth()),
              CompareWords.verdict(p.verdict()),
              p.largest().words()));
    }
    part(
        page,
        "Points",
        table,
        List.of(
            "Measured values and E (predicted less measured) with their half-widths at 95 %, of"
                + " everything but the flow model; predicted values with their bands."));
  }

  private void decays() {
    if (comparison.decays().isEmpty()) {
      return;
    }
    List<List<String>> table = new ArrayList<>();
    table.add(
        List.of(
            "lip", "readings", "effective area, " + LengthUnit.areaUnit(), "over gap and length"));
    double area = LengthUnit.areaFactor();
    for (DecayLeak d : comparison.decays()) {
      double opening = d.gap() * rig.lipLength();
      table.add(
          List.of(
              d.taped() ? "taped" : Wording.length(d.gap()),
              Integer.toString(d.readings()),
              within(area * d.area(), area * d.uncertainty()),
              d.taped() ? "" : within(d.area() / opening, d.uncertainty() / opening)));
    }
    part(
        page,
        "Leaks by the decay of the suction",
        table,
        List.of(
            "All leaks of the box together. Those with the lip taped serve as its leak where no"
                + " flow was read with the lip taped."));
  }

  private void deciders() {
    if (comparison.finer().decisive().isEmpty()) {
      return;
    }
    List<String> sentences = new ArrayList<>();
    for (Comparison.Decider d : comparison.finer().decisive()) {
      String share = " (" + Digits.plain(100 * d.share(), 2) + " % of the variance)";
      if (Double.isInfinite(d.better())) {
        sentences.add("Not enough by itself: " + d.source().words() + share + ".");
      } else if (d.source() == Source.SCATTER) {
        sentences.add(
            "Repeat each point "
                + Digits.plain(Math.ceil(d.better() * d.better()), 3)
                + " times as often"
                + share
                + ".");
      } else {
        sentences.add(
            "Know "
                + d.source().words()
                + " "
                + Digits.plain(d.better(), 2)
                + " times as well"
                + share
                + ".");
      }
    }
    part(page, "What would tell", List.of(), sentences);
  }

  private void faults() {
    part(
        page,
        "Faults of the rig by their pattern",
        DiagnosisWords.table(comparison.diagnosis()),
        DiagnosisWords.sentences(comparison.diagnosis()));
  }

  private void calibration(@Nullable Calibration learnt) {
    List<String> sentences = new ArrayList<>();
    if (learnt != null) {
      sentences.add(NoticeWords.of(learnt.notice(NoticeKind.CALIBRATION_LEARNT)));
      if (learnt.line().offset() == 0 && learnt.points() > 1) {
        sentences.add("An offset besides the factor is not significant and left out.");
      }
      sentences.add(
          "It is kept beside the lip only where you ask for it; run, rank and balance then use and"
              + " name it, and can leave it out.");
    }
    String why = CompareWords.notKept(comparison, learnt);
    if (!why.isEmpty()) {
      sentences.add(why);
    }
    if (sentences.isEmpty()) {
      return;
    }
    part(page, "Calibration that this teaches", List.of(), sentences);
  }

  private void notices() {
    List<String> sentences = new ArrayList<>();
    if (comparison.relative()) {
      sentences.add(
          "Suction alone was read: C_d is known up to a common factor, taken so that the mean"
              + " agrees. Compared is how it changes from gap to gap, no more.");
    }
    sentences.addAll(NoticeWords.of(rig.notices()));
    if (comparison.scatter() == 0) {
      sentences.add(
          "No point was read twice, so scatter from reading to reading is not known; repeat some.");
    } else {
      sentences.add(
          "Single readings scatter by "
              + CompareWords.percent(comparison.scatter())
              + " (standard deviation, pooled over the repeats).");
    }
    sentences.add(
        "The measured intervals agree with those of a Monte Carlo check (JCGM 101) within "
            + CompareWords.percent(comparison.drawn())
            + " of their half-width.");
    page.toKnow(sentences);
  }

  /** A value with its half-width. */
  static String within(double value, double halfWidth) {
    return Digits.withBand(new Estimate(value, halfWidth, 0, 0, 0, Estimate.Trend.UNKNOWN), 1);
  }
}
