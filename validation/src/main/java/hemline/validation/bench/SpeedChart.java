package hemline.validation.bench;

import hemline.shared.result.SolveStatus;
import hemline.solver.flow.Closure;
import java.util.List;
import java.util.Locale;
import java.util.function.ToDoubleFunction;

/** The table of speed as a picture: a row for each section, dots for work and time. */
final class SpeedChart {
  private static final double ROW = 20;
  private static final double TOP = 70;
  private static final double NAMES = 240;
  private static final double PANEL = 230;
  private static final double BETWEEN = 45;
  private static final String INK = "#333333";
  private static final String GRID = "#d8d8d8";
  private static final String TURBULENT = "#1f5f8b";
  private static final String LAMINAR = "#b5651d";

  /** Newton steps are about forty times as dear as passes: from 10 to 10 000, by powers. */
  private static final Scale DECADES =
      new Scale(
          new double[] {10, 100, 1000, 10_000},
          value -> Math.max(0, Math.min(1, (Math.log10(value) - 1) / 3)));

  private final List<SpeedRow> rows;
  private final SvgPage page;

  private SpeedChart(List<SpeedRow> rows) {
    this.rows = rows;
    page = new SvgPage(NAMES + 3 * PANEL + 2 * BETWEEN + 40, TOP + ROW * rows.size() + 60);
  }

  /** The picture as SVG text. */
  static String of(List<SpeedRow> rows) {
    SpeedChart chart = new SpeedChart(rows);
    chart.names();
    chart.panel(
        0,
        "work units: passes over the finest grid",
        r -> r.finest().work().units(),
        chart.even(r -> r.finest().work().units()));
    chart.panel(1, "CPU time, s", SpeedRow::seconds, chart.even(SpeedRow::seconds));
    chart.panel(2, "time over triad, for each cell and pass", SpeedRow::timeOverTriad, DECADES);
    return chart.page.end();
  }

  private void names() {
    page.text(
        10,
        22,
        SvgPage.Anchor.START,
        INK,
        "Cost of a medium section, three grids, cold start, 2 mm gap");
    page.text(NAMES, 42, SvgPage.Anchor.END, TURBULENT, "turbulent");
    page.text(NAMES - 70, 42, SvgPage.Anchor.END, LAMINAR, "laminar");
    for (int i = 0; i < rows.size(); i++) {
      GridCount f = rows.get(i).finest();
      page.text(
          NAMES - 12,
          y(i) + 4,
          SvgPage.Anchor.END,
          INK,
          "%s, %.0f Pa".formatted(f.flow().lip().replace('-', ' '), f.flow().suction()));
    }
  }

  private double y(int row) {
    return TOP + ROW * (row + 0.5);
  }

  private void panel(int place, String title, ToDoubleFunction<SpeedRow> value, Scale scale) {
    double left = NAMES + place * (PANEL + BETWEEN);
    double bottom = TOP + ROW * rows.size();
    page.text(left, TOP - 12, SvgPage.Anchor.START, INK, title);
    for (double t : scale.ticks()) {
      double x = left + PANEL * scale.share(t);
      page.line(x, TOP, x, bottom, GRID, 1, "");
      page.text(x, bottom + 18, SvgPage.Anchor.MIDDLE, INK, AxisSteps.label(t));
    }
    for (int i = 0; i < rows.size(); i++) {
      SpeedRow row = rows.get(i);
      double x = left + PANEL * scale.share(value.applyAsDouble(row));
      String colour = row.finest().flow().closure() == Closure.LAMINAR ? LAMINAR : TURBULENT;
      page.line(left, y(i), x, y(i), colour, 1.2, "");
      if (row.finest().work().status() == SolveStatus.CONVERGED) {
        page.dot(x, y(i), colour);
      } else {
        page.ring(x, y(i), colour);
      }
    }
    page.line(left, TOP, left, bottom, INK, 1, "");
    if (place == 0) {
      page.text(
          NAMES - 12,
          bottom + 44,
          SvgPage.Anchor.END,
          INK,
          String.format(
              Locale.ROOT, "triad %.1f GB/s", 1e-9 * rows.get(0).yardstick().bandwidth()));
    }
  }

  /** Where values stand on a panel, as a share of its width. */
  private record Scale(double[] ticks, java.util.function.DoubleUnaryOperator place) {
    double share(double value) {
      return place.applyAsDouble(value);
    }
  }

  /** From zero in even steps to beyond the largest value. */
  private Scale even(ToDoubleFunction<SpeedRow> value) {
    double largest = rows.stream().mapToDouble(value).max().orElse(1);
    double step = AxisSteps.linear(largest);
    int steps = (int) Math.ceil(largest / step);
    return new Scale(
        java.util.stream.IntStream.rangeClosed(0, steps).mapToDouble(k -> k * step).toArray(),
        v -> v / (steps * step));
  }
}
