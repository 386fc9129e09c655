package hemline.solver.plenum;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.data.Percentage.withPercentage;

import hemline.shared.geometry.Vertex;
import hemline.shared.result.Estimate;
import hemline.shared.vehicle.Machine;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class HeightStabilityTest {
  private static final Map<String, LeakLaw> LAWS = Machines.constant(Machines.C, 0);
  private static final double P0 = 900;
  private static final double AREA = Math.PI * Machines.RADIUS * Machines.RADIUS;

  /** Leak per gap and root of the suction: Q = K h √p. */
  private static double leakPerGap() {
    return Machines.C * 2 * Math.PI * Machines.RADIUS * Math.sqrt(2 / 1.225);
  }

  /**
   * p = p₀ / (1 + β h²) with β = a K². With β (h₀/2)² = 1 the fold k + A dp/dh = 0 of k (h₀ − h) =
   * A p lies at h = h₀/2 and k = A p₀ / h₀.
   */
  private static Machine folding(double stiffness) {
    double half = 0.5 * Machines.GAP;
    double a = 1 / (half * half * leakPerGap() * leakPerGap());
    return Machines.round(Machines.quadratic(P0, a), stiffness);
  }

  @ParameterizedTest
  @ValueSource(doubles = {1.05, 1.2, 2, 5})
  void findsTheFoldOfASpring(double times) {
    double critical = AREA * P0 / Machines.GAP;
    double stiffness = times * critical;
    RideHeight r = HeightStability.of(new PlenumBalance(folding(stiffness), LAWS), Stand.REST);
    assertThat(r.heave().stiffness()).isCloseTo(stiffness, withPercentage(1e-6));
    assertThat(Objects.requireNonNull(r.heave().required()).value())
        .isCloseTo(critical, withPercentage(0.1));
    assertThat(Objects.requireNonNull(r.heave().factor()).value())
        .isCloseTo(times, withPercentage(0.1));

    // the load k (h₀ − h) − A p(h) that each gap bears, from the settled one down to the first most
    double half = 0.5 * Machines.GAP;
    double most = 0;
    double at = Machines.GAP;
    for (double h = Machines.GAP; h > 0; h -= 1e-8) {
      double bears = stiffness * (Machines.GAP - h) - AREA * P0 / (1 + h * h / (half * half));
      if (most > 0 && bears < most) {
        break;
      }
      most = Math.max(0, bears);
      at = most > 0 ? h : at;
    }
    assertThat(Objects.requireNonNull(r.bears().force()).value())
        .isCloseTo(most, withPercentage(0.2));
    // the slope −A dp/dh is at most 1.3 A p₀ / h₀: stiffer springs are only pressed to contact
    assertThat(r.ending())
        .isEqualTo(times < 1.29 ? RideHeight.MarginEnd.FOLD : RideHeight.MarginEnd.CONTACT);
    assertThat(at > 1e-4).isEqualTo(times < 1.29);
  }

  /** Springs twice as stiff as the fold asks bear to be softened by less than two. */
  @Test
  void bearsSpringsThatAreSofterByLessThanTheMargin() {
    double critical = AREA * P0 / Machines.GAP;
    PlenumBalance balance = new PlenumBalance(folding(2 * critical), LAWS);
    for (double factor : new double[] {1, 1.2, 1.9, 1.99}) {
      assertThat(HeightStability.bears(balance, factor)).as("%s", factor).isTrue();
    }
    for (double factor : new double[] {2.01, 2.1, 4}) {
      assertThat(HeightStability.bears(balance, factor)).as("%s", factor).isFalse();
    }
    PlenumBalance down = new PlenumBalance(folding(0.8 * critical), LAWS);
    assertThat(HeightStability.bears(down, 1)).isFalse();
  }

  @Test
  void tellsAMachineThatIsDrawnDown() {
    double critical = AREA * P0 / Machines.GAP;
    RideHeight r = HeightStability.of(new PlenumBalance(folding(0.8 * critical), LAWS), Stand.REST);
    assertThat(r.ending()).isEqualTo(RideHeight.MarginEnd.DOWN);
    assertThat(r.bears().force()).isNull();
    assertThat(Objects.requireNonNull(r.heave().required()).value())
        .isCloseTo(critical, withPercentage(0.1));
  }

  @Test
  void strongerSpringsGiveMoreMargin() {
    double before = 0;
    for (double k = 1e5; k < 2e6; k *= 1.7) {
      RideHeight r = HeightStability.of(new PlenumBalance(folding(k), LAWS), Stand.REST);
      double force = Objects.requireNonNull(r.bears().force()).value();
      assertThat(force).as("stiffness %s", k).isGreaterThan(before);
      before = force;
    }
  }

  /** Suction that acts behind the axles' middle closes the rear edge first. */
  @Test
  void pitchClosesOneEdgeFirst() {
    List<Vertex> rearward =
        List.of(
            new Vertex(0.05, -0.1),
            new Vertex(0.05, 0.1),
            new Vertex(-0.25, 0.1),
            new Vertex(-0.25, -0.1));
    Machine m = Machines.with(Machines.quadratic(P0, 1e5), 4e5, rearward, 3);
    PlenumBalance balance = new PlenumBalance(m, LAWS);
    PlenumState s = Machines.settled(balance);
    assertThat(balance.leastGap(2, s.sink())).isEqualTo(s.least().gap());
    assertThat(balance.leastGap(0, s.sink())).isGreaterThan(s.least().gap() + 1e-4);
    // closed form: force F at x = −0.1 on two axles of k/2 at ±0.1: z = F/k, a = −0.1 F / (0.01 k)
    double force = s.parts().sum();
    assertThat(s.sink()[0]).isCloseTo(force / 4e5, withPercentage(1e-6));
    assertThat(s.sink()[1]).isCloseTo(-10 * force / 4e5, withPercentage(1e-6));
  }

  /** Whether none or all of the valve's jet strikes the ground lies within every band. */
  @Test
  void bandsHoldEveryShareOfTheValvesJet() {
    Machine m = Objects.requireNonNull(HoldMachines.kinds().get("valve open"));
    PlenumBalance b = new PlenumBalance(m, HoldMachines.laws("lip"));
    Estimate factor = Objects.requireNonNull(HeightStability.of(b, Stand.REST).heave().factor());
    Bands<PlenumState> rest = Objects.requireNonNull(Settling.settled(b, Stand.REST));
    Estimate force = rest.of(s -> s.parts().sum());
    Hold wall = wall(b);
    assertThat(factor.high() / factor.low()).isGreaterThan(1.01);
    for (double share : new double[] {0, 1}) {
      PlenumBalance other = b.guessing(Guessed.USUAL.withValveJet(share));
      double f =
          Objects.requireNonNull(HeightStability.of(other, Stand.REST).heave().factor()).value();
      assertThat(f).isBetween(factor.low(), factor.high());
      double n = Machines.settled(other).parts().sum();
      assertThat(n).isBetween(force.low(), force.high());
      Estimate margin = Objects.requireNonNull(wall.margins().least());
      assertThat(Objects.requireNonNull(wall(other).margins().least()).value())
          .isBetween(margin.low(), margin.high());
    }
  }

  private static Hold wall(PlenumBalance b) {
    return new HoldStudy(b)
        .all().stream().filter(h -> h.place().name().equals("wall")).findFirst().orElseThrow();
  }
}
