package hemline.viewer.report;

import hemline.shared.file.LipFile;
import hemline.shared.file.StlFile;
import hemline.shared.section.SealSection;
import hemline.solver.improve.Evaluation;
import hemline.solver.improve.Improvement;
import hemline.solver.improve.LeakGoal;
import hemline.solver.plenum.MachineBalance;
import hemline.solver.study.RankingAnswer;
import hemline.solver.study.SectionAnswer;
import hemline.viewer.format.NoticeWords;
import hemline.viewer.page.ImprovePage;
import hemline.viewer.page.PageHtml;
import hemline.viewer.picture.ImproveChart;
import hemline.viewer.picture.RankingChart;
import hemline.viewer.picture.SectionPicture;
import hemline.viewer.picture.TradeChart;
import java.util.List;

/** Files of a search for a better lip. */
public final class ImproveFiles {
  /** Length of a test coupon, m. */
  private static final double COUPON = 40e-3;

  private ImproveFiles() {}

  /**
   * Writes {@code improvement.json}, {@code search.csv}, the page, charts, and of each lip found
   * its lip file, a test coupon to print and its streamlines at the middle gap.
   */
  public static void write(ResultFolder folder, Improvement found, String document) {
    folder.write("improvement.json", document);
    folder.write("search.csv", history(found));
    folder.write("report.html", () -> PageHtml.bytes(ImprovePage.of(found)));
    SectionFiles.picture(folder, "search", () -> ImproveChart.of(found));
    List<String> names =
        ResultFolder.fileNames(found.proof().lips().stream().map(l -> l.profile().name()).toList());
    for (int k = 0; k < found.proof().lips().size(); k++) {
      Improvement.Found lip = found.proof().lips().get(k);
      folder.write(names.get(k) + ".json", LipFile.text(lip.drawing()));
      folder.write(names.get(k) + ".stl", () -> StlFile.bytes(lip.profile().bodies(), COUPON));
    }
    RankingAnswer proof = found.proof().toStart();
    if (proof != null && found.asked().goal() instanceof LeakGoal goal) {
      leaks(folder, found, proof, goal, names);
    }
    MachineBalance balance = found.proof().balance();
    if (balance != null && balance.complete()) {
      SectionFiles.picture(folder, "trades", () -> TradeChart.of(balance));
    }
  }

  private static void leaks(
      ResultFolder folder,
      Improvement found,
      RankingAnswer proof,
      LeakGoal goal,
      List<String> names) {
    if (proof.ranking().rows().isEmpty()) {
      return;
    }
    SectionFiles.picture(folder, "ranking", () -> RankingChart.of(proof.ranking()));
    List<SealSection> sections = goal.sections(found.asked().start());
    int middle = (sections.size() - 1) / 2;
    for (int k = 0; k < found.proof().lips().size(); k++) {
      SectionAnswer answer = proof.answers().get(k * sections.size() + middle);
      SealSection section = sections.get(middle).withProfile(found.proof().lips().get(k).profile());
      var field = answer.field();
      if (field != null) {
        SectionFiles.picture(
            folder,
            "streamlines/" + names.get(k),
            () -> SectionPicture.of(section, answer.result(), field));
      }
    }
  }

  private static String history(Improvement found) {
    StringBuilder head = new StringBuilder("evaluation");
    found.asked().space().lengths().forEach(l -> head.append(',').append(l.name()).append("_m"));
    CsvText csv = new CsvText(head + ",score,doubt");
    for (Evaluation e : found.history()) {
      csv.row(
          e.number(),
          e.lengths(),
          Double.isFinite(e.score()) ? e.score() : null,
          NoticeWords.of(e.doubt()));
    }
    return csv.toString();
  }
}
