package hemline.solver.plenum;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.data.Percentage.withPercentage;

import hemline.shared.vehicle.Axle;
import hemline.shared.vehicle.Machine;
import hemline.shared.vehicle.OtherLeak;
import hemline.shared.vehicle.ReliefValve;
import hemline.shared.vehicle.Running;
import java.util.List;
import java.util.Objects;
import java.util.function.ToDoubleFunction;
import org.junit.jupiter.api.Test;

/** Each input moves what it names, by as much as it is told, and nothing else is left out. */
class UncertainInputTest {
  private static final double SHARE = 0.3;

  private static Machine machine() {
    Machine open = Objects.requireNonNull(HoldMachines.kinds().get("valve open"));
    List<Axle> axles = open.running().axles();
    return open.withRunning(
            new Running(
                List.of(axles.get(0).withBrake(50), axles.get(1)), 0.8, 0.7, 4e5, 9e3, 30, 0.5))
        .withFan(open.fan().withExitArea(5e-3))
        .withOtherLeaks(List.of(new OtherLeak("cable hole", 6e-5, 0.62)));
  }

  private static Machine moved(String name, double by) {
    return UncertainInput.of(new PlenumBalance(machine(), HoldMachines.laws("lip"))).stream()
        .filter(input -> input.name().equals(name))
        .findFirst()
        .orElseThrow()
        .moved()
        .apply(by)
        .machine();
  }

  private static void shareMoves(String name, ToDoubleFunction<Machine> of) {
    assertThat(of.applyAsDouble(moved(name, SHARE)))
        .as(name)
        .isCloseTo((1 + SHARE) * of.applyAsDouble(machine()), withPercentage(1e-9));
  }

  @Test
  void sharesMoveWhatTheyName() {
    shareMoves("mass", m -> m.load().mass());
    shareMoves("friction", m -> m.running().peakFriction());
    shareMoves("height of the centre of gravity", m -> m.load().height());
    shareMoves("stiffness of the tyres", m -> m.running().axles().get(1).stiffness());
    shareMoves("stiffness of the frame", m -> m.running().heaveStiffness());
    shareMoves("stiffness of the frame", m -> m.running().pitchStiffness());
    shareMoves("torque of the brakes", m -> m.running().axles().get(0).brakeForce());
    shareMoves("fan pressure", m -> m.fan().curve().peakPressure());
    shareMoves("fan flow", m -> m.fan().curve().largestFlow());
    shareMoves("fan speed", m -> m.fan().speed());
    shareMoves("density of the air", m -> m.duty().air().air().density());
    shareMoves("area of the outlet", m -> m.fan().outlet().area());
    shareMoves("preload of the valve", m -> valve(m).preload());
    shareMoves("other leaks", m -> m.openings().leaks().get(0).area());
  }

  private static ReliefValve valve(Machine m) {
    return Objects.requireNonNull(m.openings().valve());
  }

  @Test
  void placesMoveByLengths() {
    Machine m = machine();
    assertThat(moved("centre of gravity, forwards", 3e-3).load().x())
        .isCloseTo(m.load().x() + 3e-3, within(1e-15));
    assertThat(moved("centre of gravity, to the left", 3e-3).load().y())
        .isCloseTo(m.load().y() + 3e-3, within(1e-15));
    assertThat(moved("gap", 1e-4).floor().edges().get(0).gap())
        .isCloseTo(m.floor().edges().get(0).gap() + 1e-4, within(1e-15));
  }

  @Test
  void stepsAreTenths() {
    PlenumBalance balance = new PlenumBalance(machine(), HoldMachines.laws("lip"));
    List<Axle> axles = machine().running().axles();
    double base = Math.abs(axles.get(0).x() - axles.get(1).x());
    for (UncertainInput input : UncertainInput.of(balance)) {
      double step =
          switch (input.name()) {
            case "centre of gravity, forwards" -> 0.05 * base;
            case "centre of gravity, to the left" -> 0.05 * axles.get(0).track();
            case "gap" -> 0.1 * machine().floor().edges().get(0).gap();
            default -> 0.1;
          };
      assertThat(input.step()).as(input.name()).isCloseTo(step, withPercentage(1e-9));
      assertThat(input.unit()).isEqualTo(step == 0.1 ? "1" : "m");
    }
  }

  /** What a machine does not have is no input of its. */
  @Test
  void whatIsNotThereIsNotListed() {
    Machine bare = HoldMachines.plain();
    PlenumBalance balance = new PlenumBalance(bare, HoldMachines.laws("lip"));
    assertThat(UncertainInput.of(balance))
        .extracting(UncertainInput::name)
        .doesNotContain(
            "preload of the valve",
            "other leaks",
            "torque of the brakes",
            "stiffness of the frame");
    assertThat(UncertainInput.of(new PlenumBalance(machine(), HoldMachines.laws("lip"))))
        .filteredOn(UncertainInput::assumed)
        .extracting(UncertainInput::name)
        .containsExactly(
            "leak under the lips",
            "force of the air on the lips",
            "allowance for corners",
            "share of the valve's jet that strikes the ground");
  }
}
