package hemline.solver.flow;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import hemline.shared.result.Termination.Attempt;
import hemline.shared.result.Termination.Reason;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class CourseTest {
  private static final int PASSES = 600;

  @Test
  void aResidualThatGoesOnFallingIsNoPlateau() {
    ConvergenceMonitor monitor = new ConvergenceMonitor(PASSES);
    for (int i = 0; i < PASSES; i++) {
      monitor.note(1, Math.exp(-i / 400.0));
      assertThat(monitor.stalled()).isFalse();
    }
  }

  @Test
  void aResidualThatStopsFallingIsAPlateau() {
    ConvergenceMonitor monitor = new ConvergenceMonitor(PASSES);
    int noticed = 0;
    for (int i = 0; i < PASSES && noticed == 0; i++) {
      monitor.note(1, Math.max(1e-2, Math.exp(-i / 20.0)));
      noticed = monitor.stalled() ? i : 0;
    }
    assertThat(noticed).isBetween(380, 420);
    assertThat(monitor.unsettled(0, 1e-3, Attempt.ACCELERATED).reason()).isEqualTo(Reason.STALLED);
  }

  @Test
  void passesAreIdleWhenTheLastOnesBringNothing() {
    ConvergenceMonitor monitor = new ConvergenceMonitor(PASSES);
    int noticed = 0;
    for (int i = 0; i < PASSES && noticed == 0; i++) {
      monitor.note(1, Math.max(1e-2, Math.exp(-i / 20.0)));
      noticed = monitor.idle(10, 25) ? i : 0;
    }
    // the floor is reached after 92 passes
    assertThat(noticed).isBetween(110, 125);
    assertThat(monitor.idle(monitor.passes() - 49, 25)).as("too few to tell").isFalse();
  }

  @Test
  void aSwingIsACycleOfItsPeriodAndItsMeanIsTheMiddle() {
    ConvergenceMonitor monitor = new ConvergenceMonitor(PASSES);
    for (int i = 0; i < PASSES; i++) {
      double ripple = 0.002 * Math.sin(2.9 * i);
      monitor.note(-5 - 0.1 * Math.sin(2 * Math.PI * i / 50) - ripple, 1e-2);
    }
    var ending = monitor.unsettled(100, 1e-3, Attempt.AVERAGED);
    assertThat(ending.reason()).isEqualTo(Reason.CYCLING);
    assertThat(ending.cycle()).isBetween(48, 52);
    assertThat(monitor.mean(100)).isEqualTo(-5, within(1e-3));
    assertThat(monitor.spread(100)).isEqualTo(0.2 / 5.1, within(2e-3));
  }

  @Test
  void aRandomWalkHasNoCycle() {
    SplittableRandom random = new SplittableRandom(11);
    ConvergenceMonitor monitor = new ConvergenceMonitor(PASSES);
    double figure = 5;
    for (int i = 0; i < PASSES; i++) {
      figure += 0.05 * (random.nextDouble() - 0.5);
      monitor.note(figure, 1e-2);
    }
    assertThat(monitor.unsettled(0, 1e-3, Attempt.AVERAGED).reason()).isEqualTo(Reason.WANDERING);
  }

  @Test
  void numbersThatRunAwayAreNoticed() {
    ConvergenceMonitor monitor = new ConvergenceMonitor(4);
    assertThat(monitor.note(1, 1)).isTrue();
    assertThat(monitor.note(1, 1e9)).isFalse();
    assertThat(monitor.note(Double.NaN, 1)).isFalse();
    assertThat(monitor.note(1, Double.NaN)).isFalse();
  }

  @Test
  void aFigureOfZeroSettlesWhenItsNoiseIsSmallAgainstItsLeastSize() {
    ConvergenceMonitor bare = new ConvergenceMonitor(4);
    ConvergenceMonitor sized = new ConvergenceMonitor(4, 0.01);
    for (double noise : new double[] {1e-15, -1e-15, 2e-15}) {
      bare.note(noise, 1e-9);
      sized.note(noise, 1e-9);
    }
    assertThat(bare.spread(0)).isGreaterThan(1);
    assertThat(sized.spread(0)).isLessThan(1e-12);
  }
}
