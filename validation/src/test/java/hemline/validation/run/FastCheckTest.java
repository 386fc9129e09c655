package hemline.validation.run;

import static org.assertj.core.api.Assertions.assertThat;

import hemline.solver.flow.CancelToken;
import hemline.solver.flow.ProgressListener;
import hemline.solver.refine.FamilySolver;
import hemline.validation.reference.ReferenceCase;
import hemline.validation.reference.ReferenceCases;
import java.util.List;
import org.assertj.core.api.SoftAssertions;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * The cases that every build runs: none fails, and nine of ten bands in each class hold the
 * reference.
 */
@Tag("slow")
class FastCheckTest {
  @Test
  void noCaseFailsAndTheBandsAreHonest() {
    List<ReferenceCase> cases = ReferenceCases.all().stream().filter(ReferenceCase::fast).toList();
    List<CaseResult> results =
        new CheckStudy(new FamilySolver())
            .run(
                cases,
                Runtime.getRuntime().availableProcessors(),
                new CancelToken(),
                ProgressListener.NONE);
    SoftAssertions soft = new SoftAssertions();
    for (CaseResult result : results) {
      for (CheckRow row : result.rows()) {
        soft.assertThat(row.verdict())
            .as(
                "%s %s: %s (%s) against %s",
                row.caseName(),
                row.expected().quantity(),
                row.computed(),
                row.status().key(),
                row.expected().reference().value())
            .isNotEqualTo(CheckRow.Verdict.FAIL);
      }
    }
    soft.assertAll();
    assertThat(CheckSummary.of(results).coverage())
        .allSatisfy(c -> assertThat(c.covered()).isGreaterThanOrEqualTo((int) (0.9 * c.bands())));
  }
}
