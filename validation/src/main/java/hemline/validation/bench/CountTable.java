package hemline.validation.bench;

import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;

/** The table of counts as comma-separated text. */
public final class CountTable {
  static final String HEAD =
      "lip,suction_Pa,closure,grid,cells,status,passes,linear_iterations,cell_passes,work_units";

  private CountTable() {}

  /** The rows as text, with a line of column names. */
  public static String text(List<GridCount> rows) {
    return rows.stream().map(CountTable::line).collect(Collectors.joining("\n", HEAD + "\n", "\n"));
  }

  private static String line(GridCount r) {
    return String.format(
        Locale.ROOT,
        "%s,%.0f,%s,%d,%d,%s,%d,%d,%d,%.1f",
        r.flow().lip(),
        r.flow().suction(),
        r.flow().closure().key(),
        r.grid(),
        r.work().cells(),
        r.work().status().name().toLowerCase(Locale.ROOT),
        r.work().passes(),
        r.linearIterations(),
        r.work().cellPasses(),
        r.work().units());
  }
}
