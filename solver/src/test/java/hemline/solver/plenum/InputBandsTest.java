package hemline.solver.plenum;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.data.Percentage.withPercentage;

import hemline.shared.result.Estimate;
import hemline.shared.vehicle.HoldTerms;
import hemline.shared.vehicle.Load;
import hemline.shared.vehicle.Machine;
import hemline.shared.vehicle.Tolerances;
import java.util.Map;
import java.util.Objects;
import org.junit.jupiter.api.Test;

/**
 * What each tolerance adds to the margin on a wall, in closed form: s = μ F / W with F = A p₀ / (1
 * + a (C h L)² 2 / ρ).
 */
class InputBandsTest {
  private static final double P0 = 900;
  private static final double A = 6e4;
  private static final double WEIGHT = 3 * 9.80665;
  private static final Map<String, LeakLaw> LAWS = Machines.constant(Machines.C, 0);

  private static Machine machine(Tolerances t) {
    return Machines.round(Machines.quadratic(P0, A), Machines.RIGID)
        .withLoad(new Load(3, 0, 0, 0))
        .withTerms(new HoldTerms(false, 1, 1e-4, t));
  }

  /** The margin with friction, fan pressure, mass and gaps off by shares and a length. */
  private static double margin(double friction, double pressure, double mass, double wider) {
    return margin(friction, pressure, mass, wider, 2 * Math.PI * Machines.RADIUS);
  }

  private static double margin(
      double friction, double pressure, double mass, double wider, double seal) {
    double rho = machine(Tolerances.NONE).duty().air().air().density();
    double k = Machines.C * (Machines.GAP + wider) * seal * Math.sqrt(2 / rho);
    // all pressures of the curve times a factor: p = f (p₀ − a Q²)
    double f = 1 + pressure;
    double p = f * P0 / (1 + f * A * k * k);
    double force = Math.PI * Machines.RADIUS * Machines.RADIUS * p;
    return 0.8 * (1 + friction) * force / ((1 + mass) * WEIGHT);
  }

  private static Estimate total(Tolerances t) {
    return Objects.requireNonNull(
        new HoldStudy(new PlenumBalance(machine(t), LAWS))
            .all().stream()
                .filter(h -> h.place().name().equals("wall"))
                .findFirst()
                .orElseThrow()
                .margins()
                .total());
  }

  private static void assertBand(Estimate e, double... margins) {
    double middle = margin(0, 0, 0, 0);
    assertThat(e.value()).isCloseTo(middle, withPercentage(0.02));
    // the leaks' own band: seal along the outer edge of the lip, 8 mm out
    double outer = middle - margin(0, 0, 0, 0, 2 * Math.PI * (Machines.RADIUS + 8e-3));
    double down = outer * outer;
    double up = 0;
    for (int k = 0; k < margins.length; k += 2) {
      double least = Math.min(margins[k], margins[k + 1]);
      double most = Math.max(margins[k], margins[k + 1]);
      down += (middle - least) * (middle - least);
      up += (most - middle) * (most - middle);
    }
    assertThat(e.value() - e.low()).isCloseTo(Math.sqrt(down), withPercentage(0.5));
    assertThat(e.high() - e.value()).isCloseTo(Math.sqrt(up), withPercentage(0.5));
  }

  @Test
  void eachToleranceAlone() {
    assertBand(total(new Tolerances(0.1, 0, 0, 0)), margin(-0.1, 0, 0, 0), margin(0.1, 0, 0, 0));
    assertBand(total(new Tolerances(0, 0.1, 0, 0)), margin(0, -0.1, 0, 0), margin(0, 0.1, 0, 0));
    assertBand(total(new Tolerances(0, 0, 0.1, 0)), margin(0, 0, -0.1, 0), margin(0, 0, 0.1, 0));
    assertBand(total(new Tolerances(0, 0, 0, 3e-4)), margin(0, 0, 0, -3e-4), margin(0, 0, 0, 3e-4));
  }

  @Test
  void togetherLikeIndependentErrors() {
    assertBand(
        total(new Tolerances(0.1, 0.05, 0.08, 2e-4)),
        margin(-0.1, 0, 0, 0),
        margin(0.1, 0, 0, 0),
        margin(0, -0.05, 0, 0),
        margin(0, 0.05, 0, 0),
        margin(0, 0, -0.08, 0),
        margin(0, 0, 0.08, 0),
        margin(0, 0, 0, -2e-4),
        margin(0, 0, 0, 2e-4));
  }

  /** The band of the leaks is one more of them; without tolerances it stands alone. */
  @Test
  void theBandOfTheLeaksIsOneMore() {
    PlenumBalance b = new PlenumBalance(machine(new Tolerances(0.1, 0, 0, 0)), LAWS);
    HoldSearch.Worst worst = HoldSearch.whole(new HoldStatics(b, true)).at(0.5 * Math.PI);
    double s = worst.least();
    Estimate own = new Estimate(s, 0.2 * s, 0, 0, 0.1 * s, Estimate.Trend.UNKNOWN);
    Estimate total = new InputBands(b, true).total(own, worst);
    assertThat(total.value() - total.low())
        .isCloseTo(s * Math.hypot(0.2, 0.1), withPercentage(0.1));
    assertThat(total.high() - total.value())
        .isCloseTo(s * Math.sqrt(0.2 * 0.2 + 0.1 * 0.1 + 0.1 * 0.1), withPercentage(0.1));
    PlenumBalance sure = new PlenumBalance(machine(Tolerances.NONE), LAWS);
    assertThat(new InputBands(sure, true).total(own, worst)).isSameAs(own);
  }
}
