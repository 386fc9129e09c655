package hemline.viewer.report;

import hemline.shared.result.Figure;
import hemline.viewer.format.NoticeWords;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/**
 * A column of the table of a batch: texts or numbers, of which some may be missing.
 *
 * @param name with its SI unit at the end, such as {@code leakFlow_m2_s}
 * @param unit SI unit; empty for texts and pure numbers
 * @param meaning one clause
 * @param text of a row, empty for none; null for a column of numbers
 * @param number of a row, NaN for none; null for a column of texts
 */
record BatchColumn(
    String name,
    String unit,
    String meaning,
    @Nullable Function<BatchRow, String> text,
    @Nullable ToDoubleFunction<BatchRow> number) {

  boolean isText() {
    return text != null;
  }

  String text(BatchRow row) {
    return text == null ? "" : text.apply(row);
  }

  double number(BatchRow row) {
    return number == null ? Double.NaN : number.applyAsDouble(row);
  }

  /** All columns: conditions, figures with their bands, what to know, provenance. */
  static List<BatchColumn> all() {
    List<BatchColumn> all = new ArrayList<>();
    all.add(text("lip", "name of the lip", r -> r.result().name()));
    all.add(number("gap", "m", "gap", r -> r.result().conditions().gap()));
    all.add(number("suction", "Pa", "suction", r -> r.result().conditions().suction()));
    all.add(
        number("groundSpeed", "m/s", "across the lip", r -> r.result().conditions().groundSpeed()));
    all.add(
        number(
            "spanwiseSpeed", "m/s", "along the lip", r -> r.result().conditions().spanwiseSpeed()));
    all.add(text("status", "how the solve ended", r -> r.result().status().key()));
    all.add(text("regime", "by the gap Reynolds number", r -> r.result().regime().key()));
    all.add(text("closure", "flow model used", r -> r.result().closure()));
    for (Figure figure : Figure.values()) {
      all.add(band(figure, "", figure.meaning(), BatchRow::value));
      all.add(band(figure, "Low", "lower end of its band", BatchRow::low));
      all.add(band(figure, "High", "upper end of its band", BatchRow::high));
    }
    all.add(
        text(
            "stageShares",
            "share of the pressure drop by constriction, parted by blanks",
            r -> BatchRow.values(r.result().figures().stageShares())));
    all.add(
        text(
            "carryOver",
            "kinetic energy kept from each constriction to the next, parted by blanks",
            r -> BatchRow.values(r.result().figures().carryOver())));
    all.add(number("cells", "", "fluid cells of the finest grid", BatchRow::cells));
    all.add(number("iterations", "", "on all grids", BatchRow::iterations));
    all.add(
        text(
            "notices",
            "what a reader must know, parted by |",
            r ->
                NoticeWords.of(r.result().notices()).stream()
                    .map(text -> text.replace('|', '/'))
                    .collect(Collectors.joining(" | "))));
    all.add(text("lipDigest", "SHA-256 of the outline", r -> r.origin().lip()));
    all.add(number("density", "kg/m3", "of the air", r -> r.origin().air().density()));
    all.add(number("viscosity", "m2/s", "kinematic", r -> r.origin().air().kinematicViscosity()));
    all.add(text("mesh", "finest grid asked", r -> r.origin().mesh()));
    all.add(text("flowModel", "asked", r -> r.origin().flowModel()));
    all.add(text("solver", "fingerprint of the solver", BatchRow::solver));
    return all;
  }

  private static BatchColumn text(String name, String meaning, Function<BatchRow, String> text) {
    return new BatchColumn(name, "", meaning, text, null);
  }

  private static BatchColumn number(
      String name, String unit, String meaning, ToDoubleFunction<BatchRow> number) {
    return new BatchColumn(named(name, unit), unit, meaning, null, number);
  }

  private interface Part {
    double of(BatchRow row, Figure figure);
  }

  private static BatchColumn band(Figure figure, String end, String meaning, Part part) {
    String unit = figure.unit().equals("1") ? "" : figure.unit();
    return number(figure.key() + end, unit, meaning, row -> part.of(row, figure));
  }

  private static String named(String name, String unit) {
    return unit.isEmpty() ? name : name + "_" + unit.replace('/', '_');
  }
}
