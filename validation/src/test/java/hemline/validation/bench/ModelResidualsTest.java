package hemline.validation.bench;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import hemline.solver.flow.Closure;
import hemline.solver.refine.ModelResidual;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.apache.commons.math3.distribution.TDistribution;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/**
 * The residuals of the turbulence models against the table they come from.
 *
 * <p>References: resolved large-eddy solutions of lips in a duct at Re 3500 (computed for this
 * project, uncertainties of two standard deviations), discharge by the base pressure; friction as
 * in the cases {@code turbulent-gap}, Couette flow as the square of the friction velocity.
 * Computed: {@code check resolved-lips turbulent-gap}; SST under lips on the finest of three medium
 * grids.
 */
class ModelResidualsTest {
  private static final Path TABLE = Path.of("bench", "model-residuals.csv");

  private record Row(String flow, double error, double uncertainty) {
    /** Square of the error and of the reference's standard deviation, which may hide another. */
    double square() {
      return error * error + 0.25 * uncertainty * uncertainty;
    }
  }

  private static List<Row> rows(ModelResidual kind, Closure closure, String quantity)
      throws Exception {
    List<Row> rows = new ArrayList<>();
    String start =
        kind.name().toLowerCase(Locale.ROOT) + "," + closure.key() + "," + quantity + ",";
    for (String line : Files.readAllLines(TABLE)) {
      if (line.startsWith(start)) {
        String[] cells = line.substring(start.length()).split(",", -1);
        double reference = Double.parseDouble(cells[1]);
        rows.add(
            new Row(
                cells[0],
                Double.parseDouble(cells[3]) / reference - 1,
                Double.parseDouble(cells[2]) / reference));
      }
    }
    assertThat(rows).as(start).hasSizeGreaterThan(3);
    return rows;
  }

  private static double halfWidth(List<Row> rows) {
    double t = new TDistribution(rows.size()).inverseCumulativeProbability(0.975);
    return t * Math.sqrt(rows.stream().mapToDouble(Row::square).average().orElseThrow());
  }

  private static void everyRowIsHeldByTheOthers(List<Row> rows) {
    for (Row row : rows) {
      List<Row> others = new ArrayList<>(rows);
      others.remove(row);
      assertThat(Math.abs(row.error()))
          .as(row.flow())
          .isLessThanOrEqualTo(halfWidth(others) + row.uncertainty());
    }
  }

  @ParameterizedTest
  @EnumSource(names = {"SA", "SST"})
  void lips(Closure closure) throws Exception {
    List<Row> rows = rows(ModelResidual.SEPARATED, closure, "dischargeCoefficient");
    assertThat(ModelResidual.SEPARATED.flow(closure)).isCloseTo(halfWidth(rows), within(5e-4));
    everyRowIsHeldByTheOthers(rows);
  }

  @ParameterizedTest
  @EnumSource(names = {"SA", "SST"})
  void ratiosOfLips(Closure closure) throws Exception {
    List<Row> rows = rows(ModelResidual.SEPARATED, closure, "relativeLeak");
    assertThat(ModelResidual.ratio(closure)).isCloseTo(halfWidth(rows), within(5e-4));
    everyRowIsHeldByTheOthers(rows);
  }

  @ParameterizedTest
  @EnumSource(names = {"SA", "SST"})
  void friction(Closure closure) throws Exception {
    List<Row> rows = rows(ModelResidual.ATTACHED, closure, "friction");
    assertThat(ModelResidual.friction(closure)).isCloseTo(halfWidth(rows), within(5e-4));
    // the drop of a duct goes with the square of the flow
    assertThat(2 * ModelResidual.ATTACHED.flow(closure)).isCloseTo(halfWidth(rows), within(1e-3));
    everyRowIsHeldByTheOthers(rows);
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
}
