package hemline.validation.run;

import hemline.shared.result.Estimate;
import hemline.shared.result.Figure;
import hemline.shared.result.SectionResult;
import hemline.solver.flow.CancelToken;
import hemline.solver.flow.ProgressListener;
import hemline.solver.refine.SectionFamily;
import hemline.solver.study.RunOptions;
import hemline.solver.study.SectionStudy;
import hemline.validation.reference.ExpectedFigure;
import hemline.validation.reference.ReferenceCase;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Solves reference cases and lays the figures beside their references. */
public final class CaseRunner {
  private final SectionStudy study;
  private final RunOptions options;

  /**
   * Prepares to run cases.
   *
   * @param family solves the sections
   * @param options mesh, flow model and threads; the model of a case counts where they leave it
   *     open
   */
  public CaseRunner(SectionFamily family, RunOptions options) {
    this.study = new SectionStudy(family);
    this.options = options;
  }

  /** Solves one case: a row for each expected figure, in their order. */
  public List<CheckRow> run(ReferenceCase one, CancelToken cancel, ProgressListener progress) {
    SectionResult result = study.run(one.section(), options, cancel, progress).result();
    List<CheckRow> rows = new ArrayList<>();
    for (ExpectedFigure expected : one.expected()) {
      rows.add(
          new CheckRow(
              one.name(),
              result.status(),
              computed(result, expected.quantity()),
              expected,
              one.source()));
    }
    return rows;
  }

  private static @Nullable Estimate computed(SectionResult result, String quantity) {
    for (Figure figure : Figure.values()) {
      if (figure.key().equals(quantity)) {
        return result.figures().get(figure);
      }
    }
    throw new IllegalArgumentException(
        "a case expects the figure " + quantity + ", which no result has");
  }
}
