package hemline.validation.bench;

import java.util.List;
import java.util.Locale;
import java.util.function.ToDoubleFunction;

/**
 * How the cost of one section grows with cells, apart for what it is made of.
 *
 * <p>Fitted over the settled grids, the first one left out because it had a cold start. Per grid
 * the exponents add up: cost = cost of a pass + number of passes.
 *
 * @param rows of one section, coarsest first
 * @param cost CPU time of a grid, started from the coarser one
 * @param withCoarser CPU time of a grid and all coarser ones
 * @param pass CPU time of one pass
 * @param passes number of passes
 */
record GrowthFit(
    List<GrowthRow> rows, PowerFit cost, PowerFit withCoarser, PowerFit pass, PowerFit passes) {
  /** Largest exponent of cost that is asked for. */
  static final double TARGET = 1.15;

  /** Exponent of cost to strive for. */
  static final double STRETCH = 1.05;

  private static final String HEAD =
      "lip,suction_Pa,closure,quantity,exponent,worst_point_percent,from_cells,to_cells,grids";

  static GrowthFit of(List<GrowthRow> rows) {
    List<GrowthRow> used = used(rows);
    return new GrowthFit(
        rows,
        fit(used, GrowthRow::seconds),
        fit(used, GrowthRow::allSeconds),
        fit(used, GrowthRow::secondsPerPass),
        fit(used, g -> g.work().passes()));
  }

  private static List<GrowthRow> used(List<GrowthRow> rows) {
    return rows.subList(1, rows.size()).stream().filter(GrowthRow::settled).toList();
  }

  private static PowerFit fit(List<GrowthRow> used, ToDoubleFunction<GrowthRow> value) {
    return PowerFit.of(
        used.stream().mapToDouble(g -> g.work().cells()).toArray(),
        used.stream().mapToDouble(value).toArray());
  }

  /** All fits as comma-separated text, with a line of column names. */
  static String text(List<GrowthFit> fits) {
    StringBuilder text = new StringBuilder(HEAD).append('\n');
    for (GrowthFit fit : fits) {
      fit.line(text, "cpu_s", fit.cost);
      fit.line(text, "cpu_s_with_coarser", fit.withCoarser);
      fit.line(text, "us_per_pass", fit.pass);
      fit.line(text, "passes", fit.passes);
    }
    return text.toString();
  }

  private void line(StringBuilder text, String quantity, PowerFit fit) {
    List<GrowthRow> used = used(rows);
    GrowthRow first = used.get(0);
    text.append(
        String.format(
            Locale.ROOT,
            "%s,%.0f,%s,%s,%.3f,%.0f,%d,%d,%d\n",
            first.flow().lip(),
            first.flow().suction(),
            first.flow().closure().key(),
            quantity,
            fit.exponent(),
            100 * fit.worst(),
            first.work().cells(),
            used.get(used.size() - 1).work().cells(),
            used.size()));
  }
}
