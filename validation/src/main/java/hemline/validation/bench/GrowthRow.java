package hemline.validation.bench;

import hemline.shared.result.SolveStatus;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;

/**
 * Cost of one grid of a long family, started from the flow on the grid before it.
 *
 * @param flow what was solved
 * @param work of this grid, in iterations
 * @param seconds CPU time of the solving thread on this grid, mesh not counted
 * @param allSeconds CPU time, summed from the coarsest grid to this one
 * @param leak leak flow, m²/s: the figure that settled
 * @param residual of momentum at the end, over gap times suction
 */
public record GrowthRow(
    SolvedFlow flow,
    GridWork work,
    double seconds,
    double allSeconds,
    double leak,
    double residual) {
  private static final String HEAD =
      "lip,suction_Pa,closure,cells,status,passes,work_units,cpu_s,cpu_s_with_coarser,"
          + "us_per_pass,ns_per_cell_pass,time_over_triad,leak_m2_per_s,momentum_residual,machine_class";

  /** True when the solve ended as it should. */
  boolean settled() {
    return work.status() == SolveStatus.CONVERGED;
  }

  /** Seconds of one pass over this grid. */
  double secondsPerPass() {
    return seconds / work.passes();
  }

  /** The rows as comma-separated text, with a line of column names. */
  static String text(List<GrowthRow> rows, Yardstick yardstick, String machineClass) {
    return rows.stream()
        .map(r -> r.line(yardstick) + "," + machineClass)
        .collect(Collectors.joining("\n", HEAD + "\n", "\n"));
  }

  private String line(Yardstick yardstick) {
    return String.format(
        Locale.ROOT,
        "%s,%.0f,%s,%d,%s,%d,%.1f,%.3f,%.3f,%.0f,%.0f,%.1f,%.5f,%.1e",
        flow.lip(),
        flow.suction(),
        flow.closure().key(),
        work.cells(),
        work.status().name().toLowerCase(Locale.ROOT),
        work.passes(),
        (double) work.cellPasses() / work.cells(),
        seconds,
        allSeconds,
        1e6 * secondsPerPass(),
        1e9 * secondsPerPass() / work.cells(),
        yardstick.ratio(seconds, (double) work.cells() * work.passes(), flow.closure()),
        leak,
        residual);
  }
}
