package hemline.viewer.report;

import hemline.shared.profile.LipProfile;
import hemline.shared.result.SectionResult;
import hemline.shared.section.SealSection;
import hemline.solver.flow.FlowField;
import hemline.solver.flow.ProgressListener;
import hemline.solver.study.Ranking;
import hemline.solver.study.RankingAnswer;
import hemline.solver.study.SectionAnswer;
import hemline.viewer.format.Digits;
import hemline.viewer.page.Page;
import hemline.viewer.page.PageHtml;
import hemline.viewer.page.RankingPage;
import hemline.viewer.picture.GapChart;
import hemline.viewer.picture.RankingChart;
import hemline.viewer.picture.SectionPicture;
import java.util.List;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.IntStream;

/** The files of a ranking. */
public final class RankingFiles {
  private RankingFiles() {}

  /**
   * Writes {@code ranking.json}, {@code ranking.csv}, {@code figures.csv}, the charts {@code
   * ranking} and (for several gaps) {@code gaps}, and into {@code streamlines} a picture of every
   * lip.
   *
   * @param profiles in the order of the answer
   * @param conditions what the sections share
   * @param everyGap true for pictures and fields at all gaps, false for pictures at the middle gap
   * @param progress share of the pictures
   */
  public static void write(
      ResultFolder folder,
      String document,
      RankingAnswer answer,
      List<LipProfile> profiles,
      SealSection conditions,
      boolean everyGap,
      ProgressListener progress) {
    Ranking ranking = answer.ranking();
    List<SectionResult> all = answer.answers().stream().map(SectionAnswer::result).toList();
    write(folder, document, ranking, all, RankingPage.of(ranking));
    int gaps = ranking.gaps().size();
    List<Integer> shown =
        IntStream.range(0, profiles.size() * gaps)
            .filter(k -> everyGap || k % gaps == (gaps - 1) / 2)
            .boxed()
            .toList();
    List<String> names = ResultFolder.fileNames(profiles.stream().map(LipProfile::name).toList());
    AtomicInteger done = new AtomicInteger();
    // pictures are independent of each other, and drawing takes a while
    shown.parallelStream()
        .forEach(
            k -> {
              LipProfile lip = profiles.get(k / gaps);
              double gap = ranking.gaps().get(k % gaps);
              SealSection section = conditions.withProfile(lip).withGap(gap);
              String name = names.get(k / gaps) + "-" + Digits.plain(1000 * gap, 4) + "mm";
              section(folder, name, section, answer.answers().get(k), everyGap);
              progress.progress(
                  (double) done.incrementAndGet() / shown.size(), "picture of " + lip.name());
            });
  }

  /**
   * Writes all of it but what shows single sections.
   *
   * @param results of all sections
   * @param page what the ranking says
   */
  public static void write(
      ResultFolder folder,
      String document,
      Ranking ranking,
      List<SectionResult> results,
      Page page) {
    folder.write("ranking.json", document);
    folder.write("ranking.csv", FiguresCsv.of(ranking));
    folder.write("figures.csv", FiguresCsv.of(results));
    folder.write("report.html", () -> PageHtml.bytes(page));
    if (!ranking.rows().isEmpty()) {
      SectionFiles.picture(folder, "ranking", () -> RankingChart.of(ranking));
      if (ranking.gaps().size() > 1) {
        SectionFiles.picture(folder, "gaps", () -> GapChart.of(ranking));
      }
    }
  }

  /** Writes {@code figures.csv} of the sections solved before a ranking was stopped. */
  public static void writePartial(ResultFolder folder, List<SectionResult> done) {
    folder.write("figures.csv", FiguresCsv.of(done));
  }

  private static void section(
      ResultFolder folder,
      String name,
      SealSection section,
      SectionAnswer answer,
      boolean withFields) {
    FlowField field = answer.field();
    if (field == null) {
      return;
    }
    SectionFiles.picture(
        folder, "streamlines/" + name, () -> SectionPicture.of(section, answer.result(), field));
    if (withFields) {
      folder.write("fields/" + name + ".vtr", FieldFile.text(field));
    }
  }
}
