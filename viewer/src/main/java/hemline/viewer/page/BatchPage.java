package hemline.viewer.page;

import hemline.shared.result.SolveStatus;
import hemline.solver.study.BatchAnswer;
import hemline.viewer.page.Page.Tone;

/** A batch in a few lines; its figures are in the table. */
public final class BatchPage {
  private BatchPage() {}

  public static Page of(BatchAnswer answer) {
    Page page =
        new Page(
            "%d sections: %d solved now, %d found kept."
                .formatted(answer.results().size(), answer.solved(), answer.found()));
    count(page, answer, SolveStatus.UNSTEADY, "found no steady flow; means are given.");
    count(
        page, answer, SolveStatus.FAILED, "found no flow; their figures are missing in the table.");
    long doubtful = answer.results().stream().filter(r -> !r.notices().isEmpty()).count();
    return doubtful == 0
        ? page
        : page.text(
            doubtful + " carry notices; read them in the table before using a figure.",
            Tone.NOTICE);
  }

  private static void count(Page page, BatchAnswer answer, SolveStatus status, String what) {
    long count = answer.results().stream().filter(r -> r.status() == status).count();
    page.text(count == 0 ? "" : count + " " + what, Tone.NOTICE);
  }
}
