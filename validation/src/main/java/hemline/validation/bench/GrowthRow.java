package hemline.validation.bench;

import hemline.shared.result.SolveStatus;
import hemline.solver.flow.Closure;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;

/**
 * Cost of one grid of a long family, started from the flow on the grid before it.
 *
 * @param lip file name of the lip without its ending
 * @param suction Pa
 * @param closure flow model used
 * @param cells fluid cells
 * @param status how the solve ended
 * @param passes iterations on this grid
 * @param seconds CPU time of the solving thread on this grid, mesh not counted
 * @param cellPasses cells times passes, summed from the coarsest grid to this one
 * @param allSeconds CPU time, summed from the coarsest grid to this one
 * @param leak leak flow, m²/s: the figure that settled
 * @param residual of momentum at the end, over gap times suction
 */
public record GrowthRow(
    String lip,
    double suction,
    Closure closure,
    int cells,
    SolveStatus status,
    int passes,
    double seconds,
    long cellPasses,
    double allSeconds,
    double leak,
    double residual) {
  private static final String HEAD =
      "lip,suction_Pa,closure,cells,status,passes,work_units,cpu_s,cpu_s_with_coarser,"
          + "us_per_pass,ns_per_cell_pass,time_over_triad,leak_m2_per_s,momentum_residual,machine_class";

  /** True when the solve ended as it should. */
  boolean settled() {
    return status == SolveStatus.CONVERGED;
  }

  /** Seconds of one pass over this grid. */
  double secondsPerPass() {
    return seconds / passes;
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
        lip,
        suction,
        closure.key(),
        cells,
        status.name().toLowerCase(Locale.ROOT),
        passes,
        (double) cellPasses / cells,
        seconds,
        allSeconds,
        1e6 * secondsPerPass(),
        1e9 * secondsPerPass() / cells,
        yardstick.ratio(seconds, (double) cells * passes, closure),
        leak,
        residual);
  }
}
