package hemline.solver.plenum;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.data.Percentage.withPercentage;

import hemline.shared.geometry.Vertex;
import hemline.shared.result.Estimate;
import hemline.shared.vehicle.GroundStep;
import hemline.shared.vehicle.Machine;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Suction, downforce and holds over dips and ledges in closed form: a rigid round machine, so that
 * p = p₀ / (1 + a (C S)² 2 / ρ) with the open area S = L h + length × height of the step.
 */
class StepValuesTest {
  private static final double G = 9.80665;
  private static final double P0 = 900;
  private static final double A = 6e4;
  private static final double AREA = Math.PI * Machines.RADIUS * Machines.RADIUS;
  private static final double SEAL = 2 * Math.PI * Machines.RADIUS;
  private static final double WEIGHT = 3 * G;
  private static final Map<String, LeakLaw> LAWS = Machines.constant(Machines.C, 0);

  private static Machine round(double height, double length) {
    return Machines.round(Machines.quadratic(P0, A), Machines.RIGID)
        .withStep(new GroundStep(height, length));
  }

  private static double suction(double openArea) {
    double rho = Machines.round(Machines.quadratic(P0, A), 1).duty().air().air().density();
    double perRoot = Machines.C * openArea * Math.sqrt(2 / rho);
    return P0 / (1 + A * perRoot * perRoot);
  }

  private static List<StepCrossing> crossings(Machine m) {
    PlenumBalance b = new PlenumBalance(m, LAWS);
    Bands<PlenumState> rest = Objects.requireNonNull(Settling.settled(b, Stand.REST));
    return StepStudy.of(b, rest, new HoldStudy(b).all());
  }

  private static double value(@Nullable Estimate e) {
    return Objects.requireNonNull(e).value();
  }

  /**
   * Under one edge, both and a corner, up and down, with every hold at the suction that is left.
   */
  @Test
  void suctionAndHoldsOverEachCrossing() {
    double length = 0.1;
    double height = 1e-3;
    List<StepCrossing> all = crossings(round(height, length));
    assertThat(all)
        .extracting(StepCrossing::kind)
        .containsExactly(
            StepCrossing.Kind.DIP,
            StepCrossing.Kind.DIP,
            StepCrossing.Kind.GROOVE,
            StepCrossing.Kind.CORNER,
            StepCrossing.Kind.CORNER,
            StepCrossing.Kind.LEDGE,
            StepCrossing.Kind.LEDGE,
            StepCrossing.Kind.RIDGE,
            StepCrossing.Kind.LEDGE_CORNER,
            StepCrossing.Kind.LEDGE_CORNER);
    double before = suction(SEAL * Machines.GAP);
    for (StepCrossing c : all) {
      // a corner has half of the length under each of its two edges
      boolean two = c.kind() == StepCrossing.Kind.GROOVE || c.kind() == StepCrossing.Kind.RIDGE;
      double opened = (c.kind().ledge() ? -height : height) * (two ? 2 : 1) * length;
      double p = suction(SEAL * Machines.GAP + opened);
      String name = StepCrossing.named(c.kind(), c.edges());
      assertThat(c.strikes()).as(name).isEqualTo(StepCrossing.Strike.NOTHING);
      assertThat(value(c.suction())).as(name).isCloseTo(p, withPercentage(0.02));
      assertThat(value(c.downforce())).as(name).isCloseTo(p * AREA, withPercentage(0.02));
      assertThat(value(c.kept())).as(name).isCloseTo(p / before, withPercentage(0.02));
      assertThat(c.holds())
          .extracting(h -> h.place().name())
          .containsExactly("slope", "wall", "ceiling");
      Hold wall = Objects.requireNonNull(c.hold("wall"));
      assertThat(value(wall.margins().slip()))
          .as(name)
          .isCloseTo(0.8 * p * AREA / WEIGHT, withPercentage(0.02));
      assertThat(value(Objects.requireNonNull(c.hold("ceiling")).margins().peelOff()))
          .as(name)
          .isCloseTo(p * AREA / WEIGHT, withPercentage(0.02));
      double normal = p * AREA + WEIGHT * Math.cos(Math.toRadians(30));
      assertThat(value(Objects.requireNonNull(c.hold("slope")).margins().slip()))
          .as(name)
          .isCloseTo(0.8 * normal / (0.5 * WEIGHT), withPercentage(0.02));
      assertThat(c.hold("level")).isNull();
    }
    assertThat(all.get(0).edges()).containsExactly(0);
    assertThat(all.get(1).edges()).containsExactly(1);
    assertThat(all.get(2).edges()).containsExactly(0, 1);
    assertThat(all.get(3).edges()).containsExactly(0, 1);
  }

  /** A step longer than the edge lies under all of it and no more. */
  @Test
  void aLongStepCoversItsEdge() {
    StepCrossing dip = crossings(round(1e-3, 5)).get(0);
    assertThat(value(dip.suction()))
        .isCloseTo(suction(SEAL * Machines.GAP + 0.5 * SEAL * 1e-3), withPercentage(0.02));
  }

  /** A dip so long and deep that the fan reaches no balance leaves no figure, and no hold. */
  @Test
  void nothingIsLeftWhereTheFanCannotKeepUp() {
    StepCrossing dip = crossings(round(5, 0.5)).get(0);
    assertThat(dip.strikes()).isEqualTo(StepCrossing.Strike.NOTHING);
    assertThat(dip.suction()).isNull();
    assertThat(dip.downforce()).isNull();
    assertThat(dip.kept()).isNull();
    Hold wall = Objects.requireNonNull(dip.hold("wall"));
    assertThat(wall.holds()).isFalse();
    assertThat(wall.judgement().limitedBy()).isEqualTo("no balance");
  }

  /** Edges whose outward sides point away from each other within 25° are crossed together. */
  @ParameterizedTest
  @CsvSource({"0.20, 2", "0.13, 2", "0.08, 1"})
  void findsEdgesThatFaceEachOther(double rear, int pairs) {
    // a trapezium 0.4 m long, 0.4 m wide at the nose and 2 × rear at the back
    List<Vertex> outline =
        List.of(
            new Vertex(0.2, -0.2),
            new Vertex(0.2, 0.2),
            new Vertex(-0.2, rear),
            new Vertex(-0.2, -rear));
    double slant = Math.atan2(0.2 - rear, 0.4);
    assertThat(-Math.cos(2 * slant) < -0.9).isEqualTo(pairs == 2);
    Machine m =
        Machines.with(Machines.quadratic(P0, A), Machines.RIGID, outline, 3)
            .withStep(new GroundStep(1e-3, 0.1));
    assertThat(crossings(m))
        .filteredOn(c -> c.kind() == StepCrossing.Kind.GROOVE)
        .hasSize(pairs)
        .first()
        .satisfies(c -> assertThat(c.edges()).containsExactly(0, 2));
  }

  /** Springs: the ride height before the dip counts for the figures told on level ground. */
  @Test
  void figuresAreAtTheRideHeightBefore() {
    double k = 1e5;
    Machine m = Machines.round(Machines.quadratic(P0, A), k).withStep(new GroundStep(1e-3, 0.1));
    PlenumState before = Machines.settled(new PlenumBalance(m, LAWS));
    double gap = Machines.GAP - AREA * before.suction() / k;
    assertThat(before.least().gap()).isCloseTo(gap, within(1e-9));
    StepCrossing dip = crossings(m).get(0);
    assertThat(value(dip.suction())).isCloseTo(suction(SEAL * gap + 1e-4), withPercentage(0.02));
    // a ledge as high as all that is left strikes, a lower one passes
    assertThat(crossings(m.withStep(new GroundStep(0.99 * gap, 0.1))).get(5).strikes())
        .isEqualTo(StepCrossing.Strike.NOTHING);
    assertThat(crossings(m.withStep(new GroundStep(1.01 * gap, 0.1))).get(5).strikes())
        .isEqualTo(StepCrossing.Strike.LIP);
  }

  @Test
  void theGapLeftOverACrossing() {
    PlenumBalance b = new PlenumBalance(round(1e-3, 0.1), LAWS);
    PlenumState s = b.at(0.01, 100, Stand.REST.held(new double[] {5e-4, 1e-3, 0}));
    // the nose sinks by 0.2 mm more, the rear by as much less
    assertThat(new Crossing(-1e-3, 0.1, Set.of(0), -1).leastGap(b, s))
        .isCloseTo(2e-3 - 0.7e-3 - 1e-3, within(1e-12));
    assertThat(new Crossing(1e-3, 0.1, Set.of(1), -1).leastGap(b, s))
        .isCloseTo(2e-3 - 0.7e-3 + 1e-3, within(1e-12));
    assertThat(new Crossing(1e-3, 0.1, Set.of(), -1).leastGap(b, s)).isInfinite();
  }
}
