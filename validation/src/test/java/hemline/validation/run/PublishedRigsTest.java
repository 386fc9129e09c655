package hemline.validation.run;

import static org.assertj.core.api.Assertions.assertThat;

import hemline.shared.fluid.Air;
import hemline.shared.fluid.Expansibility;
import hemline.shared.result.Estimate;
import hemline.shared.result.SolveStatus;
import hemline.shared.rig.Rig;
import hemline.shared.rig.RigFile;
import hemline.solver.rig.ComparisonStudy;
import hemline.solver.rig.Prediction;
import hemline.solver.rig.Verdict;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;

/**
 * Published coefficients as readings of a rig, beside the computed ones of the catalogue: single
 * fins over a wall (Zimmermann & Wolff 1998) and thick slots (Idelchik). The stated error of the
 * source is the accuracy of the flow. A comparison gives the verdict that the check gives.
 */
final class PublishedRigsTest {
  private static final double SUCTION = 600;
  private static final double GAP = 2e-3;
  private static final double MATTERS = 0.2;

  private record Row(
      String name, double reference, double computed, Estimate estimate, double allowed) {}

  private static List<Row> rows() throws Exception {
    return Files.readAllLines(Path.of("catalogue.csv")).stream()
        .map(line -> line.split(",", -1))
        .filter(c -> c[0].startsWith("fin/") || c[0].startsWith("thick-slot/"))
        .map(
            c -> {
              double computed = Double.parseDouble(c[9]);
              double grid = Double.parseDouble(c[10]);
              double low = Math.max(0, computed - Double.parseDouble(c[12]) - grid);
              double high = Math.max(0, Double.parseDouble(c[13]) - computed - grid);
              assertThat(c[17]).isEqualTo("pass");
              return new Row(
                  c[0],
                  Double.parseDouble(c[6]),
                  computed,
                  new Estimate(computed, grid, 0, low, high, Estimate.Trend.MONOTONE),
                  Double.parseDouble(c[15]));
            })
        .toList();
  }

  /** A rig of 1 m of lip that reads a coefficient. */
  private static Verdict verdict(Row row, double coefficient) throws Exception {
    double flow =
        coefficient
            * GAP
            * Expansibility.jetSpeed(SUCTION, Air.STANDARD.density())
            * Expansibility.factor(SUCTION, Air.STANDARD_PRESSURE);
    Rig rig =
        RigFile.parse(
            """
            what,gap (mm),suction (Pa),flow (m3/s),lip length (mm),temperature (degC),barometer (hPa)
            accuracy,0.001,0.1,,0.1,0.1,0.1
            accuracy %%,,,%s,,,
            rig,,,,1000,15,1013.25
            lip,2,600,%s,,,
            """
                .formatted(100 * row.allowed(), flow),
            row.name(),
            null,
            false);
    Prediction prediction =
        new Prediction(GAP, SUCTION, SolveStatus.CONVERGED, row.estimate(), List.of());
    return ComparisonStudy.of(rig, List.of(prediction), MATTERS).verdict();
  }

  @Test
  void aPublishedMeasurementGetsTheVerdictOfTheCheck() throws Exception {
    assertThat(rows()).hasSize(8);
    for (Row row : rows()) {
      assertThat(verdict(row, row.reference())).as(row.name()).isEqualTo(Verdict.AGREES);
      // what the check would not pass either: beyond the band and twice the source's error
      double far = row.estimate().high() * (1 + 2.5 * row.allowed());
      assertThat(far / row.computed() - 1).isGreaterThan(row.allowed());
      assertThat(verdict(row, far)).as(row.name() + ", moved").isEqualTo(Verdict.DIFFERS);
    }
  }
}
