package hemline.viewer.report;

import hemline.shared.problem.InputException;
import hemline.shared.profile.LipProfile;
import hemline.shared.result.SectionResult;
import hemline.shared.section.SealSection;
import hemline.solver.flow.FlowField;
import hemline.solver.flow.ProgressListener;
import hemline.solver.study.Ranking;
import hemline.solver.study.RankingAnswer;
import hemline.solver.study.SectionAnswer;
import hemline.viewer.format.Digits;
import hemline.viewer.picture.GapChart;
import hemline.viewer.picture.RankingChart;
import hemline.viewer.picture.SectionPicture;
import java.util.List;
import java.util.Optional;
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
      ProgressListener progress)
      throws InputException {
    Ranking ranking = answer.ranking();
    folder.write("ranking.json", document);
    folder.write("ranking.csv", FiguresCsv.of(ranking));
    folder.write(
        "figures.csv",
        FiguresCsv.of(answer.answers().stream().map(SectionAnswer::result).toList()));
    if (!ranking.rows().isEmpty()) {
      SectionFiles.picture(folder, "ranking", RankingChart.of(ranking));
      if (ranking.gaps().size() > 1) {
        SectionFiles.picture(folder, "gaps", GapChart.of(ranking));
      }
    }
    int gaps = ranking.gaps().size();
    List<Integer> shown =
        IntStream.range(0, profiles.size() * gaps)
            .filter(k -> everyGap || k % gaps == (gaps - 1) / 2)
            .boxed()
            .toList();
    AtomicInteger done = new AtomicInteger();
    // pictures are independent of each other, and drawing takes a while
    List<InputException> faults =
        shown.parallelStream()
            .map(
                k -> {
                  LipProfile lip = profiles.get(k / gaps);
                  SealSection section =
                      conditions.withProfile(lip).withGap(ranking.gaps().get(k % gaps));
                  Optional<InputException> fault =
                      section(folder, section, answer.answers().get(k), everyGap);
                  progress.progress(
                      (double) done.incrementAndGet() / shown.size(), "picture of " + lip.name());
                  return fault;
                })
            .flatMap(Optional::stream)
            .toList();
    if (!faults.isEmpty()) {
      throw faults.get(0);
    }
  }

  /** Writes {@code figures.csv} of the sections solved before a ranking was stopped. */
  public static void writePartial(ResultFolder folder, List<SectionResult> done)
      throws InputException {
    folder.write("figures.csv", FiguresCsv.of(done));
  }

  private static Optional<InputException> section(
      ResultFolder folder, SealSection section, SectionAnswer answer, boolean withFields) {
    FlowField field = answer.field();
    if (field == null) {
      return Optional.empty();
    }
    String name =
        ResultFolder.fileName(section.profile().name())
            + "-"
            + Digits.plain(1000 * section.gap(), 4)
            + "mm";
    try {
      SectionFiles.picture(
          folder, "streamlines/" + name, SectionPicture.of(section, answer.result(), field));
      if (withFields) {
        folder.write("fields/" + name + ".vtr", FieldFile.text(field));
      }
      return Optional.empty();
    } catch (InputException e) {
      return Optional.of(e);
    }
  }
}
