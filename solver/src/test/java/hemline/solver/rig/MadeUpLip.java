package hemline.solver.rig;

import hemline.shared.file.LipFile;
import hemline.shared.problem.InputException;
import hemline.shared.profile.LipProfile;
import hemline.shared.result.Estimate;
import hemline.shared.result.Figure;
import hemline.shared.result.Regime;
import hemline.shared.result.SectionFigures;
import hemline.shared.result.SectionResult;
import hemline.shared.result.SolveStatus;
import hemline.shared.section.SectionConditions;
import java.util.List;
import java.util.Map;

/** Lips and results that nobody solved. */
final class MadeUpLip {
  private MadeUpLip() {}

  static LipProfile flat(String name, double width) throws InputException {
    double w = 1000 * width;
    return LipFile.load(
            "{\"schema\": \"hemline.lip/1\", \"name\": \""
                + name
                + "\", \"outline\": [[0, 0], ["
                + w
                + ", 0], ["
                + w
                + ", 10], [0, 10]], \"mountEdge\": 2}",
            "made-up.json")
        .profile();
  }

  static SectionResult result(String name, double gap, double suction, double discharge) {
    Estimate c = new Estimate(discharge, 0.01 * discharge, 0, 0, 0, Estimate.Trend.MONOTONE);
    double jet = Math.sqrt(2 * suction / 1.225);
    return new SectionResult(
        name,
        new SectionConditions(gap, suction, 0, 0),
        SolveStatus.CONVERGED,
        Regime.TURBULENT,
        "sst",
        new SectionFigures(
            Map.of(
                Figure.DISCHARGE_COEFFICIENT, c,
                Figure.LEAK_FLOW, c.times(gap * jet),
                Figure.EFFECTIVE_GAP, c.times(gap)),
            List.of(),
            List.of(),
            List.of()),
        List.of(),
        List.of());
  }
}
