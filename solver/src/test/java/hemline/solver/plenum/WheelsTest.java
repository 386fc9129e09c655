package hemline.solver.plenum;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import hemline.shared.vehicle.Axle;
import hemline.shared.vehicle.Load;
import hemline.shared.vehicle.Machine;
import hemline.shared.vehicle.Running;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Tyres and frame under load by hand: axles at 0.2 and −0.1 m, tracks 0.2 m, 5e4 N/m each. */
class WheelsTest {
  private static final double K = 1e5;
  private static final double W = 3 * Wheels.GRAVITY;

  private static Machine machine(double heave, double pitch) {
    Machine m = Machines.round(Machines.quadratic(900, 6e4), K);
    Running r = m.running();
    return m.withLoad(new Load(3, 0.02, 0.01, 0.05))
        .withRunning(
            new Running(
                List.of(
                    new Axle("front", 0.2, 0.2, 0.5 * K, true),
                    new Axle("rear", -0.1, 0.2, 0.5 * K, true)),
                r.peakFriction(),
                r.slidingFriction(),
                heave,
                pitch,
                r.drivePower(),
                r.topSpeed()));
  }

  private static final double STIFF = Double.POSITIVE_INFINITY;

  /** The plane through the four springs: middle at 0.05 m, Σ k x² = k 0.15² about it. */
  private static double[] tyres(double n, double mx, double my) {
    double slope = (mx - 0.05 * n) / (K * 0.15 * 0.15);
    return new double[] {n / K - 0.05 * slope, slope, my / (K * 0.01)};
  }

  @Test
  void sinksByTyresAndFrame() {
    double[] load = {40, 1.2, -0.6};
    Wheels rigid = new Wheels(machine(STIFF, STIFF));
    assertThat(rigid.sink(load, 1)).containsExactly(tyres(40, 1.2, -0.6), within(1e-12));
    assertThat(rigid.sink(load, 2)[0]).isCloseTo(2 * tyres(40, 1.2, -0.6)[0], within(1e-12));
    // frame: 4e4 N/m in heave, 500 N m in pitch about the middle of the axles
    double[] t = tyres(40, 1.2, -0.6);
    double heave = 40 / 4e4;
    double pitch = (1.2 - 0.05 * 40) / 500;
    double[] s = new Wheels(machine(4e4, 500)).sink(load, 3);
    assertThat(s[0]).isCloseTo(3 * (t[0] + heave - 0.05 * pitch), within(1e-12));
    assertThat(s[1]).isCloseTo(3 * (t[1] + pitch), within(1e-12));
    assertThat(s[2]).isCloseTo(3 * t[2], within(1e-12));
    assertThat(rigid.sink(new double[3], 1)).containsExactly(new double[3], within(1e-12));
  }

  @Test
  void loadsOfWheelsAxlesAndSides() {
    Wheels wheels = new Wheels(machine(STIFF, STIFF));
    assertThat(wheels.weight()).containsExactly(new double[] {W, 0.02 * W, 0.01 * W}, within(1e-9));
    double[] all = {W + 40, 0.02 * W + 1.2, 0.01 * W - 0.6};
    double front = (all[1] + 0.1 * all[0]) / 0.3;
    for (double[] n : List.of(wheels.loads(all), wheels.pressed(all), wheels.bonded(all))) {
      assertThat(wheels.byAxle(n))
          .containsExactly(new double[] {front, all[0] - front}, within(1e-9));
      double left = 0.5 * all[0] + all[2] / 0.2;
      assertThat(wheels.bySide(n))
          .containsExactly(new double[] {left, all[0] - left}, within(1e-9));
    }
  }

  /** A wheel in the middle counts half on each side. */
  @Test
  void aMiddleWheelIsOnBothSides() {
    Machine m = Machines.round(Machines.quadratic(900, 6e4), K);
    Wheels wheels =
        new Wheels(
            m.withRunning(
                m.running()
                    .withAxles(
                        List.of(
                            new Axle("front", 0.1, 0, K, true),
                            new Axle("rear", -0.1, 0.2, K, true)))));
    assertThat(wheels.bySide(new double[] {10, 4, 2})).containsExactly(9.0, 7.0);
    assertThat(wheels.byAxle(new double[] {10, 4, 2})).containsExactly(10.0, 6.0);
  }

  /** One wheel hangs free: the other three carry all; pulled off, nothing presses. */
  @Test
  void wheelsDoNotPull() {
    Wheels wheels = new Wheels(machine(STIFF, STIFF));
    // over the front left corner, within the wheels: 30 N at (0.17, 0.08)
    double[] corner = {30, 30 * 0.17, 30 * 0.08};
    double[] pressed = wheels.pressed(corner);
    double sum = 0;
    double mx = 0;
    double my = 0;
    double[] x = {0.2, 0.2, -0.1, -0.1};
    double[] y = {0.1, -0.1, 0.1, -0.1};
    for (int i = 0; i < 4; i++) {
      assertThat(pressed[i]).isNotNegative();
      sum += pressed[i];
      mx += pressed[i] * x[i];
      my += pressed[i] * y[i];
    }
    assertThat(sum).isCloseTo(30, within(1e-6));
    assertThat(mx).isCloseTo(30 * 0.17, within(1e-6));
    assertThat(my).isCloseTo(30 * 0.08, within(1e-6));
    assertThat(pressed[3]).isZero();
    assertThat(wheels.bonded(corner)[3]).isNegative();
    assertThat(wheels.loads(corner)).containsExactly(pressed, within(1e-9));
    // ahead of the wheels it tips: the front ones share what presses
    double[] ahead = {30, 30 * 0.3, 0};
    assertThat(wheels.pressed(ahead)).containsExactly(new double[] {15, 15, 0, 0}, within(1e-9));
    assertThat(wheels.byAxle(wheels.loads(ahead)))
        .containsExactly(new double[] {40, -10}, within(1e-9));
    assertThat(wheels.pressed(new double[] {-5, 0, 0}))
        .containsExactly(new double[4], within(1e-9));
  }
}
