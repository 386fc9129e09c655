package hemline.validation.bench;

import hemline.solver.refine.SectionFamily;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;

/** Counts and times the whole set of sections in one run, with the yardstick of the machine. */
final class SpeedRun {
  private static final int TIMES = 2;

  private final List<GridCount> counts = new ArrayList<>();
  private final List<SpeedRow> rows = new ArrayList<>();

  /**
   * Runs the set.
   *
   * @param sections the set; one of each flow model is solved first to have compiled code
   * @param progress hears a line for each section
   */
  SpeedRun(List<BenchSection> sections, Consumer<String> progress) {
    double bandwidth = Triad.bandwidth();
    GridCount.of(sections.get(0), SectionFamily.GRIDS);
    GridCount.of(sections.get(sections.size() - 1), SectionFamily.GRIDS);
    List<Double> seconds = new ArrayList<>();
    List<GridCount> finest = new ArrayList<>();
    for (BenchSection section : sections) {
      List<GridCount> grids = List.of();
      double best = Double.MAX_VALUE;
      for (int time = 0; time < TIMES; time++) {
        CpuClock clock = CpuClock.start();
        grids = GridCount.of(section, SectionFamily.GRIDS);
        best = Math.min(best, clock.seconds());
      }
      counts.addAll(grids);
      finest.add(grids.get(grids.size() - 1));
      seconds.add(best);
      progress.accept("%s, %.2f s".formatted(grids.get(grids.size() - 1).name(), best));
    }
    Yardstick yardstick = new Yardstick(Math.max(bandwidth, Triad.bandwidth()));
    for (int i = 0; i < finest.size(); i++) {
      rows.add(new SpeedRow(finest.get(i), seconds.get(i), yardstick));
    }
  }

  /** A row for each grid. */
  List<GridCount> counts() {
    return counts;
  }

  /** A row for each section. */
  List<SpeedRow> rows() {
    return rows;
  }
}
