package hemline.validation.run;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import hemline.solver.flow.Closure;
import hemline.solver.refine.ModelResidual;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/**
 * The residuals of the turbulence models against the table they come from, which is written with
 * the catalogue.
 */
class ModelResidualsTest {
  private static final Path TABLE = Path.of("bench", "model-residuals.csv");
  private static final Path CATALOGUE = Path.of("catalogue.csv");

  /** Share of a half-width that may be lost where its last digit is rounded. */
  private static final double ROUNDED = 0.02;

  private static List<ModelRow> rows(String kind, Closure closure) throws Exception {
    List<ModelRow> rows =
        ModelRow.parse(Files.readString(TABLE)).stream()
            .filter(r -> r.kind().equals(kind) && r.closure().equals(closure.key()))
            .toList();
    assertThat(rows).as(kind + ", " + closure.key()).hasSizeGreaterThan(3);
    return rows;
  }

  private static List<ModelRow> without(List<ModelRow> rows, ModelRow row) {
    List<ModelRow> others = new ArrayList<>(rows);
    others.remove(row);
    return others;
  }

  private static void is(double residual, List<ModelRow> rows) {
    double derived = ModelRow.halfWidth(rows);
    assertThat(residual)
        .as(rows.get(0).kind() + ", " + rows.get(0).closure())
        .isCloseTo(derived, within(ROUNDED * derived));
  }

  private static void everyRowIsHeldByTheOthers(List<ModelRow> rows) {
    for (ModelRow row : rows) {
      assertThat(row.heldBy(ModelRow.halfWidth(without(rows, row))))
          .as(row.flow() + ", " + row.quantity())
          .isTrue();
    }
  }

  @ParameterizedTest
  @EnumSource(names = {"SA", "SST"})
  void lips(Closure closure) throws Exception {
    List<ModelRow> rows = rows(ModelRow.LIPS, closure);
    is(ModelResidual.SEPARATED.flow(closure), rows);
    everyRowIsHeldByTheOthers(rows);
  }

  @ParameterizedTest
  @EnumSource(names = {"SA", "SST"})
  void ratiosOfLips(Closure closure) throws Exception {
    List<ModelRow> rows = rows(ModelRow.RATIOS, closure);
    is(ModelResidual.ratio(closure), rows);
    everyRowIsHeldByTheOthers(rows);
  }

  @ParameterizedTest
  @EnumSource(names = {"SA", "SST"})
  void friction(Closure closure) throws Exception {
    List<ModelRow> rows = rows(ModelRow.GAPS, closure);
    is(ModelResidual.friction(closure), rows);
    // the drop of a duct goes with the square of the flow
    is(2 * ModelResidual.ATTACHED.flow(closure), rows);
    everyRowIsHeldByTheOthers(rows);
  }

  @ParameterizedTest
  @EnumSource(names = {"SPEED", "PRESSURE", "LENGTH", "FRICTION"})
  void kindsThatCasesAloneMeasure(QuantityKind kind) throws Exception {
    for (Closure closure : List.of(Closure.SA, Closure.SST)) {
      is(kind.residual(closure), rows(kind.name().toLowerCase(Locale.ROOT), closure));
    }
  }

  @Test
  void theModelForLipsIsTheOneThatMissesLess() {
    Closure chosen = Closure.turbulent(true);
    assertThat(ModelResidual.SEPARATED.flow(chosen))
        .isLessThan(ModelResidual.SEPARATED.flow(chosen.second()));
    assertThat(ModelResidual.ratio(chosen)).isLessThan(ModelResidual.ratio(chosen.second()));
    assertThat(ModelResidual.ATTACHED.flow(Closure.turbulent(false)))
        .isLessThan(ModelResidual.ATTACHED.flow(chosen));
  }

  /**
   * How often bands of turbulent rows hold the reference when the residual of each row that made
   * one is derived from the others.
   */
  @Test
  void bandsHoldWhatTheyWereNotMadeOf() throws Exception {
    Catalogue catalogue = Catalogue.parse(Files.readString(CATALOGUE));
    List<ModelRow> models = ModelRow.of(catalogue);
    int bands = 0;
    int held = 0;
    for (Catalogue.Row row : catalogue.rows()) {
      if (row.flow().equals("turbulent") && !row.band().isEmpty()) {
        bands++;
        held += held(row, models) ? 1 : 0;
      }
    }
    assertThat((double) held / bands).as(held + " of " + bands).isBetween(0.9, 0.98);
  }

  private static boolean held(Catalogue.Row row, List<ModelRow> models) {
    Optional<String> kind = ModelRow.kind(row);
    boolean holds = row.band().equals("holds");
    if (kind.isEmpty() || row.second().isEmpty()) {
      return holds;
    }
    List<ModelRow> own =
        models.stream()
            .filter(m -> m.kind().equals(kind.get()) && m.closure().equals(row.closure()))
            .toList();
    double value = Double.parseDouble(row.computed());
    ModelRow itself = ModelRow.of(row, kind.get(), row.closure(), value);
    assertThat(own).contains(itself);
    double residual = ModelRow.halfWidth(without(own, itself));
    double grid = Double.parseDouble(row.grid());
    // ratios have the residual alone, as in a ranking
    double away = row.name().contains("-over-flat") ? 0 : Double.parseDouble(row.second()) - value;
    double natural = row.scale().isEmpty() ? Math.abs(value) : Double.parseDouble(row.scale());
    double half =
        QuantityKind.of(row.quantity()) == QuantityKind.FRICTION_VELOCITY
            ? 0.5 * residual * natural
            : residual * natural;
    double low = value - Math.hypot(grid, Math.max(half, -away));
    double high = value + Math.hypot(grid, Math.max(half, away));
    double slack = Double.parseDouble(row.uncertainty());
    double reference = Double.parseDouble(row.reference());
    return high - low < natural && low - slack <= reference && reference <= high + slack;
  }
}
