package hemline.solver.flow;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import hemline.shared.result.Ending.Attempt;
import hemline.shared.result.Ending.Reason;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class CourseTest {
  private static final int PASSES = 600;

  @Test
  void aResidualThatGoesOnFallingIsNoPlateau() {
    Course course = new Course(PASSES);
    for (int i = 0; i < PASSES; i++) {
      course.note(1, Math.exp(-i / 400.0));
      assertThat(course.stalled()).isFalse();
    }
  }

  @Test
  void aResidualThatStopsFallingIsAPlateau() {
    Course course = new Course(PASSES);
    int noticed = 0;
    for (int i = 0; i < PASSES && noticed == 0; i++) {
      course.note(1, Math.max(1e-2, Math.exp(-i / 20.0)));
      noticed = course.stalled() ? i : 0;
    }
    assertThat(noticed).isBetween(380, 420);
    assertThat(course.unsettled(0, 1e-3, Attempt.ACCELERATED).reason()).isEqualTo(Reason.STALLED);
  }

  @Test
  void passesAreIdleWhenTheLastOnesBringNothing() {
    Course course = new Course(PASSES);
    int noticed = 0;
    for (int i = 0; i < PASSES && noticed == 0; i++) {
      course.note(1, Math.max(1e-2, Math.exp(-i / 20.0)));
      noticed = course.idle(10, 25) ? i : 0;
    }
    // the floor is reached after 92 passes
    assertThat(noticed).isBetween(110, 125);
    assertThat(course.idle(course.passes() - 49, 25)).as("too few to tell").isFalse();
  }

  @Test
  void aSwingIsACycleOfItsPeriodAndItsMeanIsTheMiddle() {
    Course course = new Course(PASSES);
    for (int i = 0; i < PASSES; i++) {
      double ripple = 0.002 * Math.sin(2.9 * i);
      course.note(-5 - 0.1 * Math.sin(2 * Math.PI * i / 50) - ripple, 1e-2);
    }
    var ending = course.unsettled(100, 1e-3, Attempt.AVERAGED);
    assertThat(ending.reason()).isEqualTo(Reason.CYCLING);
    assertThat(ending.cycle()).isBetween(48, 52);
    assertThat(course.mean(100)).isEqualTo(-5, within(1e-3));
    assertThat(course.spread(100)).isEqualTo(0.2 / 5.1, within(2e-3));
  }

  @Test
  void aRandomWalkHasNoCycle() {
    SplittableRandom random = new SplittableRandom(11);
    Course course = new Course(PASSES);
    double figure = 5;
    for (int i = 0; i < PASSES; i++) {
      figure += 0.05 * (random.nextDouble() - 0.5);
      course.note(figure, 1e-2);
    }
    assertThat(course.unsettled(0, 1e-3, Attempt.AVERAGED).reason()).isEqualTo(Reason.WANDERING);
  }

  @Test
  void numbersThatRunAwayAreNoticed() {
    Course course = new Course(4);
    assertThat(course.note(1, 1)).isTrue();
    assertThat(course.note(1, 1e9)).isFalse();
    assertThat(course.note(Double.NaN, 1)).isFalse();
    assertThat(course.note(1, Double.NaN)).isFalse();
  }

  @Test
  void aFigureOfZeroSettlesWhenItsNoiseIsSmallAgainstItsLeastSize() {
    Course bare = new Course(4);
    Course sized = new Course(4, 0.01);
    for (double noise : new double[] {1e-15, -1e-15, 2e-15}) {
      bare.note(noise, 1e-9);
      sized.note(noise, 1e-9);
    }
    assertThat(bare.spread(0)).isGreaterThan(1);
    assertThat(sized.spread(0)).isLessThan(1e-12);
  }
}
