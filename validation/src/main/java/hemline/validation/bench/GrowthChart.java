package hemline.validation.bench;

import java.util.List;
import java.util.Locale;
import java.util.function.ToDoubleFunction;

/** Growth of cost as a picture: three panels with logarithmic axes, dots and fitted laws. */
final class GrowthChart {
  private static final double WIDTH = 300;
  private static final double HEIGHT = 300;
  private static final double LEFT = 60;
  private static final double TOP = 70;
  private static final double BETWEEN = 70;
  private static final String INK = "#333333";
  private static final String GRID = "#d8d8d8";
  private static final String[] COLOURS = {"#1f5f8b", "#b5651d", "#4b7a3a"};

  private final List<GrowthFit> fits;
  private final SvgPage page = new SvgPage(LEFT + 3 * WIDTH + 2 * BETWEEN + 30, TOP + HEIGHT + 90);

  private GrowthChart(List<GrowthFit> fits) {
    this.fits = fits;
  }

  /** The picture as SVG text. */
  static String of(List<GrowthFit> fits) {
    GrowthChart chart = new GrowthChart(fits);
    chart.page.text(
        10,
        22,
        SvgPage.Anchor.START,
        INK,
        "Growth of cost with cells, each grid started from the coarser one"
            + " (open dots: cold start or not settled, not fitted)");
    chart.panel(0, "CPU time of a grid, s", GrowthRow::seconds, GrowthFit::cost);
    chart.panel(1, "CPU time of a pass, s", GrowthRow::secondsPerPass, GrowthFit::pass);
    chart.panel(2, "passes", g -> g.work().passes(), GrowthFit::passes);
    return chart.page.end();
  }

  private void panel(
      int place,
      String title,
      ToDoubleFunction<GrowthRow> value,
      java.util.function.Function<GrowthFit, PowerFit> law) {
    double left = LEFT + place * (WIDTH + BETWEEN);
    Axis x = axis(g -> g.work().cells(), left, left + WIDTH);
    Axis y = axis(value, TOP + HEIGHT, TOP);
    page.text(left, TOP - 12, SvgPage.Anchor.START, INK, title);
    for (double t : x.ticks()) {
      page.line(x.at(t), TOP, x.at(t), TOP + HEIGHT, GRID, 1, "");
      page.text(x.at(t), TOP + HEIGHT + 18, SvgPage.Anchor.MIDDLE, INK, AxisSteps.label(t));
    }
    for (double t : y.ticks()) {
      page.line(left, y.at(t), left + WIDTH, y.at(t), GRID, 1, "");
      page.text(left - 6, y.at(t) + 4, SvgPage.Anchor.END, INK, AxisSteps.label(t));
    }
    page.text(left + WIDTH, TOP + HEIGHT + 36, SvgPage.Anchor.END, INK, "cells");
    for (int i = 0; i < fits.size(); i++) {
      curve(fits.get(i), COLOURS[i % COLOURS.length], x, y, value, law.apply(fits.get(i)));
      legend(fits.get(i), COLOURS[i % COLOURS.length], left, i, law.apply(fits.get(i)));
    }
    page.line(left, TOP, left, TOP + HEIGHT, INK, 1, "");
    page.line(left, TOP + HEIGHT, left + WIDTH, TOP + HEIGHT, INK, 1, "");
  }

  private void curve(
      GrowthFit fit,
      String colour,
      Axis x,
      Axis y,
      ToDoubleFunction<GrowthRow> value,
      PowerFit law) {
    List<GrowthRow> rows = fit.rows();
    double a = rows.get(1).work().cells();
    double b = rows.get(rows.size() - 1).work().cells();
    page.line(x.at(a), y.at(law.at(a)), x.at(b), y.at(law.at(b)), colour, 1.2, "");
    for (int i = 0; i < rows.size(); i++) {
      GrowthRow row = rows.get(i);
      if (i > 0 && row.settled()) {
        page.dot(x.at(row.work().cells()), y.at(value.applyAsDouble(row)), colour);
      } else {
        page.ring(x.at(row.work().cells()), y.at(value.applyAsDouble(row)), colour);
      }
    }
  }

  private void legend(GrowthFit fit, String colour, double left, int place, PowerFit law) {
    GrowthRow first = fit.rows().get(0);
    page.text(
        left,
        TOP + HEIGHT + 56 + 16 * place,
        SvgPage.Anchor.START,
        colour,
        String.format(
            Locale.ROOT,
            "%s, %.0f Pa, %s: cells^%.2f",
            first.flow().lip().replace('-', ' '),
            first.flow().suction(),
            first.flow().closure().key(),
            law.exponent()));
  }

  private Axis axis(ToDoubleFunction<GrowthRow> value, double from, double to) {
    double[] values =
        fits.stream().flatMap(f -> f.rows().stream()).mapToDouble(value).sorted().toArray();
    return Axis.around(values[0], values[values.length - 1], from, to);
  }

  /** A logarithmic axis from low to high on the page. */
  private record Axis(double low, double high, double from, double to) {
    static Axis around(double least, double most, double from, double to) {
      return new Axis(least / 1.5, most * 1.5, from, to);
    }

    double at(double value) {
      return from + (to - from) * Math.log(value / low) / Math.log(high / low);
    }

    /** Powers of ten, and 2 and 5 times them where there is room. */
    double[] ticks() {
      double[] leads = high / low < 500 ? new double[] {1, 2, 5} : new double[] {1};
      return java.util.stream.IntStream.rangeClosed(
              (int) Math.floor(Math.log10(low)), (int) Math.ceil(Math.log10(high)))
          .boxed()
          .flatMapToDouble(
              p -> java.util.Arrays.stream(leads).map(lead -> AxisSteps.power(lead, p)))
          .filter(t -> t >= low && t <= high)
          .toArray();
    }
  }
}
