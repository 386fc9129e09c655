package hemline.viewer.hard;

import hemline.shared.fluid.Air;
import hemline.shared.profile.LipProfile;
import hemline.shared.result.Estimate;
import hemline.shared.result.Figure;
import hemline.shared.result.GridRun;
import hemline.shared.result.RawFigures;
import hemline.shared.result.SectionResult;
import hemline.shared.result.SolveStatus;
import hemline.shared.section.GroundMotion;
import hemline.solver.flow.Closure;
import hemline.solver.grid.MeshLevel;
import hemline.solver.refine.GridSolution;
import hemline.solver.study.PlainFlat;
import hemline.solver.study.RelativeSweep;
import hemline.solver.study.SweepResult;
import hemline.solver.study.Swept;
import hemline.viewer.picture.InventedStudies;
import hemline.viewer.project.KeptStudy;
import hemline.viewer.project.StudyQuestion;
import java.util.List;
import java.util.Map;

/** Whole answers to keep; the figures are invented. */
final class Kept {
  private Kept() {}

  static KeptStudy study(LipProfile lip) {
    LipProfile flat = PlainFlat.asWideAs(lip);
    StudyQuestion question =
        new StudyQuestion(
            Swept.GAP,
            List.of(lip),
            flat,
            List.of(1e-3, 2e-3),
            new StudyQuestion.Held(2e-3, 600, GroundMotion.STILL, Air.STANDARD),
            new StudyQuestion.Solving(MeshLevel.COARSE, Closure.AUTO, false));
    Estimate ratio = new Estimate(0.9, 0.01, 0, 0, 0, Estimate.Trend.MONOTONE);
    RelativeSweep sweep =
        new RelativeSweep(
            new SweepResult(points(lip.name()), ratio),
            new SweepResult(points(flat.name()), ratio),
            List.of(ratio, ratio));
    return new KeptStudy(
        question,
        null,
        sweep,
        null,
        List.of(),
        true,
        new KeptStudy.Run(1, "2026-11-25T12:00:00Z", "engine"));
  }

  private static List<SectionResult> points(String name) {
    return List.of(
        InventedStudies.result(name, 1e-3, 600, 0.7), InventedStudies.result(name, 2e-3, 600, 0.7));
  }

  static GridSolution grid() {
    RawFigures raw =
        new RawFigures(Map.of(Figure.LEAK_FLOW, 0.04), List.of(), List.of(), List.of());
    return new GridSolution(new GridRun(2600, 17, SolveStatus.CONVERGED, 1e-4, 1e-6, raw, 0));
  }
}
