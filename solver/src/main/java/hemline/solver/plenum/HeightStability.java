package hemline.solver.plenum;

import hemline.shared.result.Estimate;
import org.jspecify.annotations.Nullable;

/**
 * Finds the ends of equilibrium by asking the whole balance again and again with more load or
 * softer springs: heave, pitch and roll, the fan's curve and the valve all take part, and whichever
 * edge closes first ends it.
 *
 * <p>For one spring of stiffness k, a floor of area A and a leak that gives the suction p(h), the
 * end is where k + A dp/dh = 0 (from the balance k (h₀ − h) = A p(h)).
 */
final class HeightStability {
  private static final int STEPS = 24;
  private static final double SOFTEST = 1e4;

  /** Gap at the end over the static gap below which the end is called a contact. */
  private static final double CLOSED = 0.05;

  private HeightStability() {}

  /**
   * Ends on one side of the leaks.
   *
   * @param force additional load until then, N; 0 when there is no operating point
   * @param gap closed until then, m
   * @param softness factor of compliance that is just borne; infinite when any is
   * @param leastGap left at the end, m
   * @param edge that has it
   */
  private record Ends(double force, double gap, double softness, double leastGap, int edge) {}

  static RideHeight of(PlenumBalance balance, Stand stand) {
    Ends value = ends(balance, stand.at(Side.VALUE));
    Ends low = ends(balance, stand.at(Side.LOW));
    Ends high = ends(balance, stand.at(Side.HIGH));
    Bands<Ends> bands = new Bands<>(value, low, high, 0, 0);
    double[] c = balance.centre();
    double[] unit = balance.sink(new double[] {1, c[0], c[1]}, Stand.REST);
    double stiffness = 1 / (unit[0] + unit[1] * c[0] + unit[2] * c[1]);
    boolean down = value.force() <= 0;
    boolean any = !Double.isFinite(value.softness());
    @Nullable Estimate required = any ? null : bands.of(e -> stiffness / e.softness());
    @Nullable Estimate factor =
        any ? null : bands.of(e -> Double.isFinite(e.softness()) ? e.softness() : SOFTEST);
    double staticGap =
        value.edge() < 0 ? 1 : balance.machine().floor().edges().get(value.edge()).gap();
    RideHeight.Ending ending =
        down
            ? RideHeight.Ending.DOWN
            : value.leastGap() < CLOSED * staticGap
                ? RideHeight.Ending.CONTACT
                : RideHeight.Ending.FOLD;
    return new RideHeight(
        stiffness,
        ending,
        value.edge(),
        down ? null : bands.of(Ends::force),
        down ? null : bands.of(Ends::gap),
        required,
        factor);
  }

  private static Ends ends(PlenumBalance balance, Stand stand) {
    PlenumState rest = balance.settled(stand);
    double softness = softness(balance, stand, rest != null);
    if (rest == null) {
      return new Ends(0, 0, softness, 0, -1);
    }
    double[] c = {rest.load()[1] / rest.load()[0], rest.load()[2] / rest.load()[0]};
    double bears = 0;
    PlenumState last = rest;
    double fails = Math.max(1e-3, rest.load()[0]);
    for (int k = 0; k < 60; k++) {
      PlenumState s = balance.settled(pressed(stand, fails, c));
      if (s == null) {
        break;
      }
      bears = fails;
      last = s;
      fails *= 2;
    }
    for (int k = 0; k < STEPS; k++) {
      double middle = 0.5 * (bears + fails);
      PlenumState s = balance.settled(pressed(stand, middle, c));
      if (s == null) {
        fails = middle;
      } else {
        bears = middle;
        last = s;
      }
    }
    return new Ends(
        bears, rest.leastGap() - last.leastGap(), softness, last.leastGap(), last.leastEdge());
  }

  private static Stand pressed(Stand stand, double force, double[] at) {
    return stand.loaded(
        new double[] {
          stand.extra()[0] + force,
          stand.extra()[1] + force * at[0],
          stand.extra()[2] + force * at[1]
        });
  }

  /** Largest factor of compliance that leaves an operating point clear of the ground. */
  private static double softness(PlenumBalance balance, Stand stand, boolean stands) {
    double bears = stands ? 1 : 1 / SOFTEST;
    double fails = stands ? 2 : 1;
    while (stands && fails < SOFTEST && clear(balance, stand, fails)) {
      bears = fails;
      fails *= 2;
    }
    if (fails >= SOFTEST) {
      return Double.POSITIVE_INFINITY;
    }
    for (int k = 0; k < STEPS; k++) {
      double middle = Math.sqrt(bears * fails);
      if (clear(balance, stand, middle)) {
        bears = middle;
      } else {
        fails = middle;
      }
    }
    return bears;
  }

  private static boolean clear(PlenumBalance balance, Stand stand, double softness) {
    return balance.settled(stand.softened(stand.softness() * softness)) != null;
  }
}
