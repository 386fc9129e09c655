package hemline.validation.bench;

import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;

/**
 * Cost of one section on its three grids together.
 *
 * @param finest count on the finest grid; its work holds that of the coarser ones
 * @param seconds CPU time of the solving thread, compiled code, from a cold start to the measured
 *     figures of all grids
 * @param yardstick measured in the same run
 */
public record SpeedRow(GridCount finest, double seconds, Yardstick yardstick) {
  private static final String HEAD =
      "lip,suction_Pa,closure,cells,status,work_units,cpu_s,ns_per_cell_pass,time_over_triad,"
          + "triad_GB_per_s,machine_class";

  /** Nanoseconds for each cell and pass. */
  public double nanosecondsPerCellPass() {
    return 1e9 * seconds / finest.work().cellPasses();
  }

  /** Time over that of ideal passes at the triad's speed. */
  public double timeOverTriad() {
    return yardstick.ratio(seconds, finest.work().cellPasses(), finest.flow().closure());
  }

  /** The rows as comma-separated text, with a line of column names. */
  static String text(List<SpeedRow> rows, String machineClass) {
    return rows.stream()
        .map(r -> r.line() + "," + machineClass)
        .collect(Collectors.joining("\n", HEAD + "\n", "\n"));
  }

  private String line() {
    return String.format(
        Locale.ROOT,
        "%s,%.0f,%s,%d,%s,%.1f,%.2f,%.0f,%.1f,%.1f",
        finest.flow().lip(),
        finest.flow().suction(),
        finest.flow().closure().key(),
        finest.work().cells(),
        finest.work().status().name().toLowerCase(Locale.ROOT),
        finest.work().units(),
        seconds,
        nanosecondsPerCellPass(),
        timeOverTriad(),
        1e-9 * yardstick.bandwidth());
  }
}
