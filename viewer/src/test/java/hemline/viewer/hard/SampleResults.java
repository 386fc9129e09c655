package hemline.viewer.hard;

import hemline.shared.fluid.FluidState;
import hemline.shared.problem.NoticeKind;
import hemline.shared.result.Estimate;
import hemline.shared.result.Estimate.Trend;
import hemline.shared.result.Figure;
import hemline.shared.result.LeakOrigin;
import hemline.shared.result.SectionFigures;
import hemline.shared.result.SectionResult;
import hemline.shared.section.SectionConditions;
import hemline.viewer.picture.InventedStudies;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/** An invented result with something of every kind in it. */
public final class SampleResults {
  public static final LeakOrigin ASKED =
      new LeakOrigin(
          "abc",
          new SectionConditions(2e-3, 600, 0, 0),
          new FluidState(1.2, 1.5e-5),
          "coarse",
          "auto",
          false);

  private SampleResults() {}

  /** Figures, shares, eddies, notices and grids. */
  public static SectionResult whole() {
    SectionResult r = InventedStudies.result("=sum, \"lip\"", 2e-3, 600, 1.0 / 3);
    Map<Figure, Estimate> figures = new EnumMap<>(Figure.class);
    figures.putAll(r.figures().scalars());
    figures.put(Figure.LIP_FORCE_Y, new Estimate(-0.0, 0.1, 0.2, 0.3, 0.4, Trend.SLOW));
    return new SectionResult(
        r.name(),
        r.conditions(),
        r.status(),
        r.regime(),
        r.closure(),
        new SectionFigures(
            figures,
            List.of(Estimate.exact(0.25), Estimate.exact(0.75)),
            List.of(Estimate.exact(0.1)),
            List.of(new SectionFigures.TrappedVortex(Estimate.exact(0.3), 1e-3, 2e-3))),
        List.of(
            NoticeKind.SOLVE_BROKEN.of("A notice | with a bar"), NoticeKind.MODEL_MISSING.of("é")),
        List.of(Kept.grid().run()));
  }
}
