package hemline.solver.plenum;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.data.Percentage.withPercentage;

import hemline.shared.result.Estimate;
import hemline.shared.vehicle.Axle;
import hemline.shared.vehicle.Load;
import hemline.shared.vehicle.Machine;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

/** Worst headings and tilts where the downforce is given, so that formulas tell them. */
class HoldSearchTest {
  private static final double W = 3 * 9.80665;
  private static final double FORCE = 60;
  private static final double HEIGHT = 0.12;
  private static final double WALL = 0.5 * Math.PI;

  /** One wheel ahead, two behind: the wheels' polygon is a triangle. */
  private static Machine tricycle(double height) {
    Machine m = Machines.round(Machines.quadratic(900, 6e4), Machines.RIGID);
    return m.withLoad(new Load(3, 0, 0, height))
        .withRunning(
            m.running()
                .withAxles(
                    List.of(
                        new Axle("front", 0.15, 0, 1e11, true),
                        new Axle("rear", -0.15, 0.3, 1e11, true))));
  }

  private static PlenumState pressing(double force) {
    return new PlenumState(
        500,
        new PlenumState.Flows(0, 0, new double[2], 0, 0),
        new double[3],
        new double[] {force, 0, 0},
        new PlenumState.Parts(force, 0, 0, 0),
        new PlenumState.LeastGap(1e-3, 0),
        true,
        false);
  }

  private static HoldSearch search(Machine m, HoldSearch.States states) {
    return new HoldSearch(
        new HoldStatics(new PlenumBalance(m, Machines.constant(Machines.C, 0)), true), states);
  }

  private static HoldSearch steady(Machine m) {
    return search(m, (a, side, like) -> pressing(FORCE));
  }

  /** Four square headings, twenty between them every 15°, and those across oblique edges. */
  @Test
  void headingsToLookAt() {
    HoldSearch s = steady(tricycle(HEIGHT));
    List<Attitude> all = s.headings(WALL);
    assertThat(all).hasSize(26);
    assertThat(all.subList(0, 4))
        .extracting(Attitude::heading)
        .containsExactly("nose up", "nose down", "left side up", "right side up");
    assertThat(all).allMatch(a -> a.tilt() == WALL);
    List<Long> degrees =
        all.subList(0, 24).stream()
            .map(a -> Math.floorMod(Math.round(Math.toDegrees(a.downhill())), 360L))
            .sorted()
            .toList();
    for (int k = 0; k < 24; k++) {
      assertThat(degrees.get(k)).isEqualTo(15L * k);
    }
    double oblique = Math.atan2(2, 1);
    assertThat(all.subList(24, 26))
        .extracting(Attitude::downhill)
        .satisfiesExactlyInAnyOrder(
            d -> assertThat(d).isCloseTo(oblique, within(1e-12)),
            d -> assertThat(d).isCloseTo(-oblique, within(1e-12)));
    assertThat(s.headings(0)).hasSize(1);
    assertThat(s.headings(Math.PI)).hasSize(1);
  }

  /** It tips over the edge that is nearest: F r / (W h), r = 0.15 / √5, across it. */
  @Test
  void tipsAcrossTheNearestEdge() {
    HoldSearch.Worst worst = steady(tricycle(HEIGHT)).at(WALL);
    HoldSearch.Found tip = worst.columns().get(1);
    double reach = 0.15 / Math.sqrt(5);
    assertThat(tip.margins().tip()).isCloseTo(FORCE * reach / (W * HEIGHT), withPercentage(1e-6));
    assertThat(Math.abs(tip.attitude().downhill())).isCloseTo(Math.atan2(2, 1), within(0.01));
    assertThat(worst.looked()).hasSize(26);
    assertThat(worst.least()).isEqualTo(worst.worst().margins().least());
    assertThat(worst.attitudes()).doesNotHaveDuplicates().contains(tip.attitude());
  }

  /** Where all headings are alike the first, nose up, is told; sliding goes with slip. */
  @Test
  void alikeHeadingsAreToldAsNoseUp() {
    Machine m =
        Machines.round(Machines.quadratic(900, 6e4), Machines.RIGID).withLoad(new Load(3, 0, 0, 0));
    HoldSearch.Worst worst = steady(m).at(WALL);
    assertThat(worst.worst().attitude().heading()).isEqualTo("nose up");
    assertThat(worst.columns()).hasSize(5);
    assertThat(worst.columns().get(4)).isSameAs(worst.columns().get(0));
    assertThat(worst.least()).isCloseTo(0.8 * FORCE / W, withPercentage(1e-3));
  }

  /** Between two values: slip μ (F + W cos α) / (W sin α) is least at cos α = −W / F. */
  @Test
  void closesInOnTheWorstTilt() {
    Machine m =
        Machines.round(Machines.quadratic(900, 6e4), Machines.RIGID).withLoad(new Load(3, 0, 0, 0));
    HoldSearch s = steady(m);
    HoldSearch.Found start = s.found(new Attitude(2.2, Math.PI), null);
    HoldSearch.Found least =
        s.closedIn(HoldStatics.Margins::slip, start, 1.7, 2.7, t -> new Attitude(t, Math.PI));
    double k = FORCE / W;
    assertThat(least.attitude().tilt()).isCloseTo(Math.acos(-1 / k), within(2e-3));
    assertThat(least.margins().slip()).isCloseTo(0.8 * Math.sqrt(k * k - 1), withPercentage(1e-3));
    // where the start is the least it stays
    HoldSearch.Found best = s.found(new Attitude(Math.acos(-1 / k), Math.PI), null);
    assertThat(s.closedIn(HoldStatics.Margins::slip, best, 1.7, 2.7, t -> new Attitude(t, Math.PI)))
        .isSameAs(best);
  }

  /** A downforce that falls towards a heading between the steps: found to a thousandth. */
  @Test
  void closesInOnAHeadingBetweenTheSteps() {
    Machine m =
        Machines.round(Machines.quadratic(900, 6e4), Machines.RIGID).withLoad(new Load(3, 0, 0, 0));
    double at = Math.toRadians(52);
    HoldSearch s = search(m, (a, side, like) -> pressing(FORCE - 20 * Math.cos(a.downhill() - at)));
    HoldSearch.Worst rough = s.among(s.headings(WALL));
    assertThat(Math.toDegrees(rough.worst().attitude().downhill())).isCloseTo(45, within(1e-9));
    HoldSearch.Worst worst = s.at(WALL);
    assertThat(worst.worst().attitude().downhill()).isCloseTo(at, within(1e-3));
    assertThat(worst.least()).isCloseTo(0.8 * (FORCE - 20) / W, withPercentage(1e-3));
  }

  /** One heading without balance is the worst of all, and no more are asked. */
  @Test
  void noBalanceEndsTheSearch() {
    List<Double> asked = new ArrayList<>();
    HoldSearch s =
        search(
            tricycle(HEIGHT),
            (a, side, like) -> {
              asked.add(a.downhill());
              return asked.size() == 3 ? null : pressing(FORCE);
            });
    HoldSearch.Worst worst = s.at(WALL);
    assertThat(asked).hasSize(3);
    assertThat(worst.least()).isZero();
    assertThat(worst.worst().margins().settles()).isFalse();
    assertThat(worst.looked()).hasSize(3);
    assertThat(worst.attitudes()).hasSize(1);
  }

  /** Each heading is looked for close to the one before. */
  @Test
  void looksCloseToTheStateBefore() {
    List<PlenumState> given = new ArrayList<>();
    List<@Nullable PlenumState> likes = new ArrayList<>();
    HoldSearch s =
        search(
            tricycle(HEIGHT),
            (a, side, like) -> {
              likes.add(like);
              given.add(pressing(FORCE + given.size()));
              return given.get(given.size() - 1);
            });
    s.among(s.headings(WALL));
    assertThat(likes.get(0)).isNull();
    for (int k = 1; k < likes.size(); k++) {
      assertThat(likes.get(k)).isSameAs(given.get(k - 1));
    }
  }

  /** Leaks low and high move the downforce: the band of a margin is theirs, lost sides are 0. */
  @Test
  void bandsOfAMargin() {
    Machine m =
        Machines.round(Machines.quadratic(900, 6e4), Machines.RIGID).withLoad(new Load(3, 0, 0, 0));
    HoldSearch s =
        search(
            m,
            (a, side, like) -> pressing(side == Side.VALUE ? FORCE : side == Side.LOW ? 66 : 57));
    HoldSearch.Worst worst = s.at(WALL);
    List<Bands<HoldStatics.Margins>> bands = worst.columns().stream().map(s::bands).toList();
    Estimate e = Objects.requireNonNull(HoldSearch.least(bands, worst));
    assertThat(e.value()).isCloseTo(0.8 * 60 / W, withPercentage(1e-3));
    assertThat(e.low()).isCloseTo(0.8 * 57 / W, withPercentage(1e-3));
    assertThat(e.high()).isCloseTo(0.8 * 66 / W, withPercentage(1e-3));
    Estimate slip =
        Objects.requireNonNull(HoldSearch.estimate(bands.get(0), HoldStatics.Margins::slip));
    assertThat(slip.low()).isCloseTo(0.8 * 57 / W, withPercentage(1e-3));
    assertThat(HoldSearch.estimate(bands.get(0), HoldStatics.Margins::peel)).isNull();
    HoldSearch lost = search(m, (a, side, like) -> side == Side.HIGH ? null : pressing(FORCE));
    HoldSearch.Worst one = lost.at(WALL);
    Estimate none =
        Objects.requireNonNull(
            HoldSearch.least(one.columns().stream().map(lost::bands).toList(), one));
    assertThat(none.low()).isCloseTo(0, within(1e-9));
    HoldSearch.Worst level = s.at(0);
    assertThat(HoldSearch.least(level.columns().stream().map(s::bands).toList(), level)).isNull();
  }

  @Test
  void marginsCountUpToAThousand() {
    assertThat(HoldSearch.finite(2000)).isEqualTo(1000);
    assertThat(HoldSearch.finite(-2000)).isEqualTo(-1000);
    assertThat(HoldSearch.finite(1.5)).isEqualTo(1.5);
  }
}
