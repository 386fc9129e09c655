package hemline.validation.run;

import hemline.solver.flow.Closure;
import hemline.validation.reference.CitedRow;
import hemline.validation.reference.ReferenceTables;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.apache.commons.math3.distribution.TDistribution;

/**
 * A figure of a turbulent flow under one model beside its reference: what the residuals of the
 * models are derived from.
 *
 * @param kind which residual it belongs to
 * @param closure key of the flow model
 * @param flow case
 * @param quantity as the case names it
 * @param scale natural size where the reference is no measure of it, else the reference
 */
record ModelRow(
    String kind,
    String closure,
    String flow,
    String quantity,
    double reference,
    double uncertainty,
    double scale,
    double computed) {
  static final String LIPS = "separated, flow";
  static final String RATIOS = "separated, ratio";
  static final String GAPS = "attached, friction";
  private static final String HEAD =
      "kind,closure,flow,quantity,reference,uncertainty,scale,computed";

  /** Computed less reference over the natural size. */
  double error() {
    return (computed - reference) / scale;
  }

  /** Square of the error and of the reference's standard deviation, which may hide another. */
  private double square() {
    double u = uncertainty / scale;
    return error() * error() + 0.25 * u * u;
  }

  /** Half-width that holds 95 % of errors of normal spread. */
  static double halfWidth(List<ModelRow> rows) {
    double t = new TDistribution(rows.size()).inverseCumulativeProbability(0.975);
    return t * Math.sqrt(rows.stream().mapToDouble(ModelRow::square).average().orElseThrow());
  }

  /** True when a residual of that half-width and the uncertainty hold the reference. */
  boolean heldBy(double halfWidth) {
    return Math.abs(error()) <= halfWidth + uncertainty / scale;
  }

  /** Kind of a row of the catalogue; empty for those that no residual is made of. */
  static Optional<String> kind(Catalogue.Row row) {
    QuantityKind kind = QuantityKind.of(row.quantity());
    if (kind == null
        || !row.flow().equals("turbulent")
        || row.band().isEmpty()
        || row.grade().equals("C")) {
      return Optional.empty();
    }
    return switch (kind) {
      case DISCHARGE -> Optional.of(row.name().contains("-over-flat") ? RATIOS : LIPS);
      // the ground of the same channels stands against the same law or a second reference
      case GAP_FRICTION ->
          row.folder().equals("turbulent-gap") && row.quantity().endsWith("ceiling")
              ? Optional.of(GAPS)
              : Optional.empty();
      case FRICTION_VELOCITY -> Optional.of(GAPS);
      case GAP_FLOW -> Optional.empty();
      default -> Optional.of(kind.name().toLowerCase(Locale.ROOT));
    };
  }

  /** The rows of a catalogue, sorted by kind and model. */
  static List<ModelRow> of(Catalogue catalogue) {
    List<ModelRow> rows = new ArrayList<>();
    List<String> kinds =
        catalogue.rows().stream().flatMap(r -> kind(r).stream()).distinct().sorted().toList();
    for (String kind : kinds) {
      for (Closure closure : List.of(Closure.SA, Closure.SST)) {
        for (Catalogue.Row row : catalogue.rows()) {
          String value =
              row.closure().equals(closure.key())
                  ? row.computed()
                  : hasTwin(row, catalogue) ? "" : row.second();
          if (kind(row).equals(Optional.of(kind)) && !value.isEmpty()) {
            rows.add(of(row, kind, closure.key(), Double.parseDouble(value)));
          }
        }
      }
    }
    return rows;
  }

  /** True for a row that stands in the catalogue under the other model too. */
  private static boolean hasTwin(Catalogue.Row row, Catalogue catalogue) {
    return row.name().endsWith("-sst")
        || row.name().endsWith("-sa")
        || catalogue.rows().stream()
            .anyMatch(
                r -> r.name().equals(row.name() + "-sst") && r.quantity().equals(row.quantity()));
  }

  /** A row of the catalogue under one model. */
  static ModelRow of(Catalogue.Row row, String kind, String closure, double computed) {
    double reference = Double.parseDouble(row.reference());
    double uncertainty = Double.parseDouble(row.uncertainty());
    if (QuantityKind.of(row.quantity()) == QuantityKind.FRICTION_VELOCITY) {
      // friction goes with its square
      double twice = 2 * reference * uncertainty;
      double square = reference * reference;
      return new ModelRow(
          kind, closure, row.name(), row.quantity(), square, twice, square, computed * computed);
    }
    double scale = row.scale().isEmpty() ? Math.abs(reference) : Double.parseDouble(row.scale());
    return new ModelRow(
        kind, closure, row.name(), row.quantity(), reference, uncertainty, scale, computed);
  }

  static String csv(List<ModelRow> rows) {
    StringBuilder out = new StringBuilder(HEAD).append('\n');
    for (ModelRow r : rows) {
      out.append('"' + r.kind + '"')
          .append(',')
          .append(String.join(",", r.closure, r.flow, '"' + r.quantity + '"'));
      for (double number : new double[] {r.reference, r.uncertainty, r.scale, r.computed}) {
        out.append(',').append(Catalogue.text(number));
      }
      out.append('\n');
    }
    return out.toString();
  }

  static List<ModelRow> parse(String csv) {
    List<ModelRow> rows = new ArrayList<>();
    for (CitedRow r : ReferenceTables.rows(csv, "model-residuals")) {
      rows.add(
          new ModelRow(
              r.text("kind"),
              r.text("closure"),
              r.text("flow"),
              r.text("quantity"),
              r.number("reference"),
              r.number("uncertainty"),
              r.number("scale"),
              r.number("computed")));
    }
    return rows;
  }
}
