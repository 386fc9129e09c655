package hemline.solver.plenum;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.data.Percentage.withPercentage;

import hemline.shared.file.MachineFile;
import hemline.shared.problem.InputException;
import hemline.shared.vehicle.Axle;
import hemline.shared.vehicle.Load;
import hemline.shared.vehicle.Machine;
import hemline.shared.vehicle.Running;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

class HoldAndLaunchTest {
  private static final double G = 9.80665;
  private static final Map<String, LeakLaw> LAWS = Machines.constant(Machines.C, 0.01);

  /** Rigid, centre of gravity 50 mm high in the middle, wheels at ±0.1 m, grip 0.8. */
  @Test
  void holdsByTheClosedForms() {
    Machine m = Machines.round(Machines.quadratic(900, 6e4), Machines.RIGID);
    PlenumBalance balance = new PlenumBalance(m, LAWS);
    double force = Machines.settled(balance).parts().sum();
    double weight = 3 * G;
    List<Hold> holds = new HoldStudy(balance).all();
    assertThat(holds)
        .extracting(h -> h.place().name())
        .containsExactly("level", "slope", "wall", "ceiling", "worst");
    assertThat(holds.get(0).holds()).isTrue();
    assertThat(holds.get(0).margins().least()).isNull();
    Hold slope = holds.get(1);
    assertThat(Objects.requireNonNull(slope.margins().slip()).value())
        .isCloseTo(
            0.8 * (force + weight * Math.cos(Math.toRadians(30))) / (0.5 * weight),
            withPercentage(1e-4));
    Hold wall = holds.get(2);
    assertThat(Objects.requireNonNull(wall.margins().slip()).value())
        .isCloseTo(0.8 * force / weight, withPercentage(1e-4));
    assertThat(Objects.requireNonNull(wall.margins().sliding()).value())
        .isCloseTo(0.6 * force / weight, withPercentage(1e-4));
    assertThat(Objects.requireNonNull(wall.margins().tip()).value())
        .isCloseTo(force * 0.1 / (weight * 0.05), withPercentage(1e-4));
    assertThat(Objects.requireNonNull(wall.margins().axleLift()).value())
        .isCloseTo(force * 0.1 / (weight * 0.05), withPercentage(1e-4));
    Hold ceiling = holds.get(3);
    assertThat(Objects.requireNonNull(ceiling.margins().peelOff()).value())
        .isCloseTo(force / weight, withPercentage(1e-4));
    assertThat(ceiling.judgement().limitedBy()).isEqualTo("peel-off");
    double sum = ceiling.axleLoads().stream().mapToDouble(e -> e.value()).sum();
    assertThat(sum).isCloseTo(force - weight, withPercentage(1e-4));
  }

  /** Upside down, weight ahead of the suction: the front axle goes first, at 3/4 of the weight. */
  @Test
  void peelsOffAtTheHeavierAxle() {
    Machine m = Machines.round(Machines.quadratic(900, 6e4), Machines.RIGID);
    Machine nose = m.withLoad(new Load(3, 0.05, 0, 0.05));
    PlenumBalance balance = new PlenumBalance(nose, LAWS);
    double force = Machines.settled(balance).parts().sum();
    Hold ceiling = new HoldStudy(balance).all().get(3);
    assertThat(ceiling.judgement().limitedBy()).isEqualTo("axle lift");
    assertThat(Objects.requireNonNull(ceiling.margins().least()).value())
        .isCloseTo(0.5 * force / (0.75 * 3 * G), withPercentage(1e-4));
    assertThat(Objects.requireNonNull(ceiling.margins().peelOff()).value())
        .isCloseTo(force / (3 * G), withPercentage(1e-4));
  }

  @Test
  void fallsOffWithoutSuction() {
    Machine m = Machines.round(Machines.quadratic(20, 1e3), Machines.RIGID);
    List<Hold> holds = new HoldStudy(new PlenumBalance(m, LAWS)).all();
    assertThat(holds.get(0).holds()).isTrue();
    assertThat(holds.get(2).holds()).isFalse();
    assertThat(holds.get(2).judgement().limitedBy()).isEqualTo("slip");
    assertThat(holds.get(3).holds()).isFalse();
  }

  /** Springs so soft that the floor lies on the ground: that is told, not a slip. */
  @Test
  void tellsWhereThereIsNoBalance() {
    Machine m = Machines.round(Machines.quadratic(900, 6e4), 2e3);
    List<Hold> holds = new HoldStudy(new PlenumBalance(m, LAWS)).all();
    assertThat(holds.get(0).holds()).isFalse();
    assertThat(holds.get(0).judgement().limitedBy()).isEqualTo("no balance");
  }

  /**
   * Constant force: t = v / a, s = v² / (2 a). Constant power: t = m v² / (2 P), s = m v³ / (3 P).
   */
  @Test
  void timesAStart() {
    TractionBudget.Start grip = TractionBudget.timed(5, false, 2, 1e9, 3);
    assertThat(grip.time()).isCloseTo(0.6, within(1e-9));
    assertThat(grip.distance()).isCloseTo(0.9, within(1e-9));
    TractionBudget.Start power = TractionBudget.timed(1e9, false, 2, 50, 3);
    assertThat(power.time()).isCloseTo(2 * 9 / 100.0, within(1e-6));
    assertThat(power.distance()).isCloseTo(2 * 27 / 150.0, within(1e-6));
    // both in turn, against small steps in time
    TractionBudget.Start both = TractionBudget.timed(5, false, 2, 15, 3);
    double v = 0;
    double s = 0;
    double t = 0;
    double dt = 1e-6;
    while (v < 3) {
      double a = Math.min(5, 15 / (2 * Math.max(v, 1e-9)));
      s += v * dt + 0.5 * a * dt * dt;
      v += a * dt;
      t += dt;
    }
    assertThat(both.time()).isCloseTo(t, within(1e-4));
    assertThat(both.distance()).isCloseTo(s, within(1e-4));
    assertThat(both.until()).isCloseTo(1.5, within(1e-12));
  }

  /** All wheels driven: a = μ (m g + F) / m until an axle lifts. */
  @Test
  void startsByItsGrip() {
    Machine m = Machines.round(Machines.quadratic(900, 6e4), Machines.RIGID);
    TractionBudget.Start start =
        TractionBudget.start(new PlenumBalance(m, LAWS), new double[] {60, 0, 0}, 0);
    assertThat(start.grip()).isCloseTo(0.8 * (3 * G + 60) / 3, withPercentage(1e-6));
    assertThat(start.lifts()).isFalse();
    assertThat(TractionBudget.start(new PlenumBalance(m, LAWS), new double[] {60, 0, 0}, 6).grip())
        .isCloseTo((0.8 * (3 * G + 60) + 6) / 3, withPercentage(1e-6));
  }

  /**
   * Rear wheels alone driven: they carry half of the load and gain m a h / wheelbase, so that a = μ
   * N / (m − μ m h / l). Front wheels alone driven lose it.
   */
  @Test
  void loadGoesToTheRearInAStart() {
    for (boolean rear : new boolean[] {true, false}) {
      Machine m = Machines.round(Machines.quadratic(900, 6e4), Machines.RIGID);
      Running r = m.running();
      m =
          m.withRunning(
              new Running(
                  List.of(
                      new Axle("front", 0.1, 0.2, 0.5 * Machines.RIGID, !rear),
                      new Axle("rear", -0.1, 0.2, 0.5 * Machines.RIGID, rear)),
                  r.peakFriction(),
                  r.slidingFriction(),
                  r.heaveStiffness(),
                  r.pitchStiffness(),
                  r.drivePower(),
                  r.topSpeed()));
      TractionBudget.Start start =
          TractionBudget.start(new PlenumBalance(m, LAWS), new double[] {60, 0, 0}, 6);
      // mass 3 kg at a height of 0.05 m, axles 0.2 m apart
      double gain = (rear ? 1 : -1) * 3 * 0.05 / 0.2;
      assertThat(start.grip())
          .isCloseTo((0.8 * 0.5 * (3 * G + 60) + 6) / (3 - 0.8 * gain), withPercentage(1e-6));
      assertThat(start.lifts()).isFalse();
    }
  }

  /** Nothing presses but weight, and friction is high: the front lifts at a = g x / h. */
  @Test
  void theFrontLifts() {
    Machine m = Machines.round(Machines.quadratic(900, 6e4), Machines.RIGID);
    m = m.withLoad(new Load(3, 0, 0, 0.25));
    TractionBudget.Start start = TractionBudget.start(new PlenumBalance(m, LAWS), new double[3], 0);
    assertThat(start.lifts()).isTrue();
    assertThat(start.grip()).isCloseTo(G * 0.1 / 0.25, withPercentage(1e-6));
  }

  /** Weight 30 mm ahead, suction 20 mm behind the middle of axles at ±0.1 m, front wheels alone. */
  @Test
  void startsWithItsLoadAhead() {
    Machine m = Machines.round(Machines.quadratic(900, 6e4), Machines.RIGID);
    m =
        m.withLoad(new Load(3, 0.03, 0.01, 0.05))
            .withRunning(
                m.running()
                    .withAxles(
                        List.of(
                            new Axle("front", 0.1, 0.2, 0.5 * Machines.RIGID, true),
                            new Axle("rear", -0.1, 0.2, 0.5 * Machines.RIGID, false))));
    double[] suction = {60, 60 * -0.02, 60 * 0.01};
    double front = 3 * G * 0.13 / 0.2 + 60 * 0.08 / 0.2;
    TractionBudget.Start start = TractionBudget.start(new PlenumBalance(m, LAWS), suction, 0);
    assertThat(start.grip())
        .isCloseTo(0.8 * front / (3 + 0.8 * 3 * 0.05 / 0.2), withPercentage(1e-6));
  }

  /** Of rest and travel the one with less downforce counts. */
  @Test
  void theSlowerStartCounts() {
    Machine m = Machines.round(Machines.quadratic(900, 6e4), Machines.RIGID);
    PlenumBalance b = new PlenumBalance(m, LAWS);
    Bands<PlenumState> strong = same(b.at(0.05, 600, Stand.REST));
    Bands<PlenumState> weak = same(b.at(0.05, 300, Stand.REST));
    double fast = TractionBudget.of(b, strong).gripAcceleration().value();
    double slow = TractionBudget.of(b, weak).gripAcceleration().value();
    assertThat(slow).isLessThan(fast);
    assertThat(grip(TractionBudget.slower(b, strong, weak))).isEqualTo(slow);
    assertThat(grip(TractionBudget.slower(b, weak, strong))).isEqualTo(slow);
    assertThat(grip(TractionBudget.slower(b, strong, null))).isEqualTo(fast);
    assertThat(TractionBudget.slower(b, null, weak)).isNull();
  }

  private static Bands<PlenumState> same(PlenumState s) {
    return new Bands<>(s, s, s, 0, 0);
  }

  private static double grip(@Nullable Launch launch) {
    return Objects.requireNonNull(launch).gripAcceleration().value();
  }

  /**
   * Common practice, no source: a sealed floor holds about 2.5 kgf on a 1:10 machine, the thrust of
   * its fan is a few per cent of that (about 0.5 N against 25 N), and it starts at above 3 g on
   * smooth concrete.
   */
  @Test
  void theCartIsLikeOthersOfItsSize() throws InputException {
    Machine cart = MachineFile.read(Path.of("..", "profiles", "machines", "hill-climb-cart.json"));
    Map<String, LeakLaw> laws = new LinkedHashMap<>();
    LeakLaw law = Objects.requireNonNull(Machines.constant(0.7, 0.02).get("lip"));
    cart.floor().edges().forEach(e -> laws.put(e.lip().name(), law));
    PlenumBalance balance = new PlenumBalance(cart, laws);
    PlenumState s = Machines.settled(balance);
    assertThat(s.parts().sum() / G).isBetween(2.0, 3.0);
    assertThat(s.parts().thrust() / s.parts().sum()).isBetween(0.01, 0.05);
    Launch launch = TractionBudget.slower(balance, Settling.settled(balance, Stand.REST), null);
    assertThat(Objects.requireNonNull(launch).gripAcceleration().low() / G).isGreaterThan(3);
    assertThat(launch.withoutSuction() / G).isCloseTo(1, within(0.01));
  }
}
