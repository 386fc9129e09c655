package hemline.viewer.picture;

import hemline.shared.result.Estimate;
import hemline.shared.result.Estimate.Trend;
import hemline.shared.result.Figure;
import hemline.shared.result.LeakGrids;
import hemline.shared.result.LeakOrigin;
import hemline.shared.result.LeakPoint;
import hemline.shared.result.Regime;
import hemline.shared.result.SectionFigures;
import hemline.shared.result.SectionResult;
import hemline.shared.result.SolveStatus;
import hemline.shared.section.SectionConditions;
import hemline.solver.study.GapDistribution;
import hemline.solver.study.Placement;
import hemline.solver.study.Ranking;
import hemline.solver.study.ResultStore;
import hemline.solver.study.SweepResult;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/** Sweeps and rankings that are written down, not solved: figures are invented. */
public final class InventedStudies {
  private static final List<String> NAMES =
      List.of(
          "inclined teeth against the leak",
          "labyrinth three teeth",
          "two pockets 12",
          "one pocket 8",
          "plain flat 8",
          "round nose 8",
          "knife fin");
  private static final double[] MEAN = {0.91, 0.955, 0.97, 0.98, 1, 1.12, 1.15};

  private InventedStudies() {}

  /** A result with leak, discharge coefficient and effective gap. */
  public static SectionResult result(String name, double gap, double suction, double cd) {
    double jet = Math.sqrt(2 * suction / 1.2);
    Map<Figure, Estimate> figures = new EnumMap<>(Figure.class);
    Estimate coefficient = new Estimate(cd, 0.008, 0.001, 0, 0, Trend.MONOTONE);
    figures.put(Figure.DISCHARGE_COEFFICIENT, coefficient);
    figures.put(Figure.LEAK_FLOW, coefficient.times(gap * jet));
    figures.put(Figure.EFFECTIVE_GAP, coefficient.times(gap));
    return new SectionResult(
        name,
        new SectionConditions(gap, suction, 0, 0),
        gap > 4.5e-3 ? SolveStatus.UNSTEADY : SolveStatus.CONVERGED,
        Regime.at(cd * gap * jet / 1.5e-5),
        "sst",
        new SectionFigures(figures, List.of(), List.of(), List.of()),
        List.of(),
        List.of());
  }

  /** A sweep of the gap from 1 to 6 mm. */
  public static SweepResult sweep() {
    List<SectionResult> points = new ArrayList<>();
    for (int k = 1; k <= 6; k++) {
      points.add(result("plain flat 8", k * 1e-3, 600, 0.73 + 0.03 * Math.sin(k)));
    }
    return new SweepResult(points, new Estimate(1.04, 0.02, 0, 0, 0, Trend.MONOTONE));
  }

  /** Seven lips at six gaps. */
  public static Ranking ranking() {
    List<Double> gaps = new ArrayList<>();
    for (int g = 1; g <= 6; g++) {
      gaps.add(g * 1e-3);
    }
    List<Ranking.Row> rows = new ArrayList<>();
    for (int k = 0; k < NAMES.size(); k++) {
      List<Ranking.GapRatio> ratios = new ArrayList<>();
      List<SectionResult> results = new ArrayList<>();
      for (int g = 0; g < gaps.size(); g++) {
        double ratio = MEAN[k] == 1 ? 1 : MEAN[k] + 0.03 * Math.cos(k + 0.7 * g);
        double half = MEAN[k] == 1 ? 0 : 0.006 + 0.004 * g;
        ratios.add(
            new Ranking.GapRatio(gaps.get(g), new Estimate(ratio, half, 0, 0, 0, Trend.MONOTONE)));
        results.add(result(NAMES.get(k), gaps.get(g), 600, 0.75 * ratio));
      }
      List<String> tied =
          k == 2 ? List.of(NAMES.get(3)) : k == 3 ? List.of(NAMES.get(2)) : List.of();
      Estimate score =
          new Estimate(MEAN[k], MEAN[k] == 1 ? 0 : 0.012 + 0.006 * k, 0, 0, 0, Trend.MONOTONE);
      rows.add(
          new Ranking.Row(
              NAMES.get(k),
              k == 3 ? 3 : k + 1,
              tied,
              Placement.of(score),
              k == 0 ? 1 : 0,
              score,
              ratios,
              results));
    }
    return new Ranking(
        "plain flat 8",
        GapDistribution.even(gaps),
        600,
        rows,
        List.of(new Ranking.Crossing("two pockets 12", "one pocket 8", 2.4e-3)),
        List.of(new Ranking.Crossing("plain flat 8", "one pocket 8", 5.2e-3)),
        List.of());
  }

  /** Knows every leak: a discharge coefficient of 0.7 with a band of 0.02. */
  public static final ResultStore<LeakPoint> LEAKS =
      new ResultStore<LeakPoint>() {
        @Override
        public LeakPoint find(LeakOrigin asked) {
          return new LeakPoint(
              "any",
              new SectionConditions(2e-3, 600, 0, 0),
              SolveStatus.CONVERGED,
              Regime.TURBULENT,
              new Estimate(0.7, 0.02, 0, 0, 0, Estimate.Trend.MONOTONE),
              new Estimate(-0.01, 0.001, 0, 0, 0, Estimate.Trend.MONOTONE),
              List.of(),
              LeakGrids.NONE);
        }

        @Override
        public void keep(LeakOrigin asked, LeakPoint point) {}
      };
}
