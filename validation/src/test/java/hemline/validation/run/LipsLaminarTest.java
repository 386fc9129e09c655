package hemline.validation.run;

import static org.assertj.core.api.Assertions.assertThat;

import hemline.solver.flow.CancelToken;
import hemline.solver.flow.Closure;
import hemline.solver.flow.ProgressListener;
import hemline.solver.grid.MeshLevel;
import hemline.solver.refine.FamilySolver;
import hemline.solver.study.RunOptions;
import hemline.validation.reference.ReferenceCase;
import hemline.validation.reference.ReferenceCases;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.assertj.core.api.SoftAssertions;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** The whole table of laminar lips on the medium mesh, against its references. */
@Tag("slow")
class LipsLaminarTest {
  private static final RunOptions MEDIUM = new RunOptions(MeshLevel.MEDIUM, Closure.AUTO, false, 1);

  @Test
  void pressureDropAndForceAreWithinToleranceAndTheBandsAreHonest() {
    CaseRunner runner = new CaseRunner(new FamilySolver(), MEDIUM);
    List<CheckRow> rows = new ArrayList<>();
    for (ReferenceCase one : ReferenceCases.in("lips")) {
      rows.addAll(runner.run(one, new CancelToken(), ProgressListener.NONE));
    }
    SoftAssertions soft = new SoftAssertions();
    for (CheckRow row : rows) {
      soft.assertThat(row.pass()).as(describe(row)).isTrue();
    }
    soft.assertAll();
    List<CheckRow> outside = rows.stream().filter(row -> !row.insideBand()).toList();
    assertThat(outside.size())
        .as(
            "references outside the computed band: %s",
            outside.stream().map(LipsLaminarTest::describe).collect(Collectors.joining("; ")))
        .isLessThanOrEqualTo(rows.size() / 10);
  }

  private static String describe(CheckRow row) {
    return row.caseName()
        + " "
        + row.expected().quantity()
        + ": "
        + row.computed()
        + " ("
        + row.status()
        + ") against "
        + row.expected().reference();
  }
}
