package hemline.viewer.cli;

import hemline.shared.result.SectionResult;
import hemline.shared.result.SolveStatus;
import hemline.solver.study.BatchAnswer;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** A batch in a few lines; its figures are in the table. */
final class BatchText {
  private BatchText() {}

  static List<String> lines(BatchAnswer answer, double seconds) {
    List<String> lines = new ArrayList<>();
    lines.add(
        String.format(
            Locale.ROOT,
            "%d sections in %.1f s: %d solved now, %d found kept.",
            answer.results().size(),
            seconds,
            answer.solved(),
            answer.found()));
    int doubtful = 0;
    for (SectionResult result : answer.results()) {
      doubtful += result.notices().isEmpty() ? 0 : 1;
    }
    for (SolveStatus status : List.of(SolveStatus.UNSTEADY, SolveStatus.FAILED)) {
      long count = answer.results().stream().filter(r -> r.status() == status).count();
      if (count > 0) {
        lines.add(
            count
                + (status == SolveStatus.FAILED
                    ? " found no flow; their figures are missing in the table."
                    : " found no steady flow; means are given."));
      }
    }
    if (doubtful > 0) {
      lines.add(doubtful + " carry notices; read them in the table before using a figure.");
    }
    return lines;
  }
}
