package hemline.validation.run;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import hemline.validation.reference.CitedRow;
import hemline.validation.reference.ExpectedFigure;
import hemline.validation.reference.ReferenceCases;
import hemline.validation.reference.ReferenceTables;
import java.util.function.DoubleUnaryOperator;
import org.apache.commons.math3.stat.regression.SimpleRegression;
import org.junit.jupiter.api.Test;

/** Widths of profiles that are known in closed form, and the reference that comes from a table. */
class WidthsTest {

  private static Widths.Column column(double from, double to, DoubleUnaryOperator speed) {
    int n = 2000;
    double[] y = new double[n];
    double[] u = new double[n];
    for (int j = 0; j < n; j++) {
      y[j] = from + (to - from) * (j + 0.5) / n;
      u[j] = speed.applyAsDouble(y[j]);
    }
    return new Widths.Column(y, u);
  }

  @Test
  void theVorticityThicknessOfAHyperbolicTangentIsItsOwn() {
    Widths.Column c = column(-10, 10, y -> 3 + Math.tanh(2 * (y - 0.3) / 1.7));
    assertThat(Widths.vorticity(c, 2)).isCloseTo(1.7, within(1e-3));
  }

  @Test
  void theWidthLiesBetweenSharesOfTheSquaredSpeed() {
    Widths.Column c = column(-4, 6, y -> Math.max(0, Math.min(1, 0.25 * y)));
    assertThat(Widths.between(c, 0.1, 0.9))
        .isCloseTo(4 * (Math.sqrt(0.9) - Math.sqrt(0.1)), within(1e-9));
  }

  @Test
  void aJetHasAMaximumAndAHalfWidthOutsideIt() {
    // y exp(1 - y): largest at 1, where it is 1; half of it is left at 2.678346990016661
    Widths.Column c = column(0, 12, y -> 2 * y * Math.exp(1 - y));
    assertThat(Widths.peak(c)).isCloseTo(1, within(1e-3));
    assertThat(Widths.half(c)).isCloseTo(2.678347, within(1e-4));
  }

  @Test
  void theGrowthOfTheMeasuredLayerIsTheSlopeOfItsTable() {
    SimpleRegression line = new SimpleRegression();
    for (CitedRow row : ReferenceTables.table("shear/delville1989_width")) {
      if (row.number("x") >= 600) {
        line.addData(row.number("x"), row.number("width"));
      }
    }
    ExpectedFigure expected =
        ReferenceCases.named("shear-layers/two-streams-sst").expected().get(0);
    assertThat(line.getSlope()).isCloseTo(expected.reference().value(), within(5e-5));
    assertThat(2 * line.getSlopeStdErr())
        .isCloseTo(expected.reference().uncertainty(), within(5e-5));
  }
}
