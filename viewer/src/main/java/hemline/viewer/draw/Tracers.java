package hemline.viewer.draw;

import hemline.shared.fluid.Expansibility;
import hemline.shared.fluid.FluidState;
import hemline.shared.section.GroundMotion;
import hemline.viewer.model.Shown;
import java.util.SplittableRandom;
import org.jspecify.annotations.Nullable;

/** Particles that drift with the air, slowed down so that the eye can follow. */
public final class Tracers {
  /** Particles on the board. */
  private static final int COUNT = 320;

  private static final double LONGEST_LIFE = 6;

  /** Time in which the fastest air crosses the lip's surroundings, s. */
  private static final double CROSSING = 1.6;

  private static final long SEED = 20;
  private final Shown shown;
  private final double through;
  private final SplittableRandom chance = new SplittableRandom(SEED);
  private final double[] x = new double[COUNT];
  private final double[] y = new double[COUNT];
  private final double[] age = new double[COUNT];
  private final double[] speed = new double[COUNT];
  private final double slowing;
  private final double fastest;

  /** Particles of a flow, spread over it. */
  public Tracers(Shown shown, double through) {
    this.shown = shown;
    this.through = through;
    double most = 0;
    for (int c = 0; c < shown.field().u().length; c++) {
      most = Math.max(most, Math.hypot(shown.field().u()[c], shown.field().v()[c]));
    }
    fastest = Math.max(most, 1e-9);
    slowing =
        slowing(
            shown.section().gap(),
            shown.section().suction(),
            shown.section().ground(),
            shown.section().fluid(),
            shown.placement().right() - shown.placement().left());
    for (int k = 0; k < COUNT; k++) {
      spawn(k);
      age[k] = LONGEST_LIFE * chance.nextDouble();
    }
  }

  /**
   * Seconds of the flow for one second on the board.
   *
   * @param gap m
   * @param suction Pa
   * @param width of the lip, m
   */
  public static double slowing(
      double gap, double suction, GroundMotion ground, FluidState air, double width) {
    double jet = Expansibility.jetSpeed(Math.abs(suction), air.density());
    double fastest = Math.max(0.1, Math.max(jet, Math.abs(ground.speed())));
    return (width + 12 * gap) / CROSSING / fastest;
  }

  public int count() {
    return COUNT;
  }

  /** In the flow's frame, m. */
  public double x(int k) {
    return x[k];
  }

  public double y(int k) {
    return y[k];
  }

  /** Speed over the fastest of the flow. */
  public double speed(int k) {
    return speed[k] / fastest;
  }

  /** Fades in and out over a particle's life, 0 to 1. */
  public double opacity(int k) {
    return Math.max(0, Math.min(1, Math.min(2 * age[k], 2 * (LONGEST_LIFE - age[k]))));
  }

  /** Moves all particles. */
  public void step(double seconds) {
    double dt = seconds * slowing;
    for (int k = 0; k < COUNT; k++) {
      age[k] += seconds;
      Probe here = Probe.at(shown, through, x[k], y[k]);
      if (here == null || age[k] > LONGEST_LIFE) {
        spawn(k);
        continue;
      }
      // the midpoint rule keeps particles on their streamlines
      double mx = x[k] + 0.5 * dt * here.u();
      double my = y[k] + 0.5 * dt * here.v();
      Probe middle = Probe.at(shown, through, mx, my);
      Probe by = middle == null ? here : middle;
      x[k] += dt * by.u();
      y[k] += dt * by.v();
      speed[k] = Math.hypot(by.u(), by.v());
    }
  }

  private void spawn(int k) {
    double gap = shown.section().gap();
    double width = shown.placement().right() - shown.placement().left();
    double height = shown.placement().high() - shown.placement().low() + gap;
    for (int attempt = 0; attempt < 20; attempt++) {
      double px = -5 * gap + (width + 11 * gap) * chance.nextDouble();
      // more of them near the ground, where the air moves
      double t = chance.nextDouble();
      double py = height * t * t;
      @Nullable Probe probe = Probe.at(shown, through, px, py);
      if (probe != null) {
        x[k] = px;
        y[k] = py;
        age[k] = 0;
        speed[k] = Math.hypot(probe.u(), probe.v());
        return;
      }
    }
  }
}
