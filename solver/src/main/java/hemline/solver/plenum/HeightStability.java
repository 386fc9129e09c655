package hemline.solver.plenum;

import hemline.shared.geometry.Vertex;
import hemline.shared.result.Estimate;
import hemline.shared.vehicle.Load;
import java.util.List;
import java.util.function.DoubleFunction;
import java.util.stream.Stream;
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
  private static final int STEPS = 18;
  private static final double SOFTEST = 1e4;

  /** Steps of a march: of the load that closes the gap twice, of the logarithm of softness. */
  private static final int LOADS = 12;

  private static final double SOFTER = 0.25;

  /** Load at which a march stops, N. */
  private static final double FARTHEST = 1e15;

  /** Parts in which the last stretch is looked through for jumps. */
  private static final int PARTS = 4;

  /** Fall of the smallest gap at once, over itself, that counts as a jump. */
  private static final double JUMP = 0.02;

  /** Gap at the end over the static gap below which the end is called a contact. */
  private static final double CLOSED = 0.05;

  private HeightStability() {}

  /**
   * Ends on one side of the leaks.
   *
   * @param force additional load until then at the centre of pressure, N; 0 when there is no
   *     operating point
   * @param atGravity the same at the centre of gravity, N
   * @param atCorner the same at the weakest corner of the floor, N
   * @param gap closed until then, m
   * @param softness factor of compliance that is just borne; infinite when any is
   * @param leastGap left at the end, m
   * @param edge that has it
   */
  private record Ends(
      double force,
      double atGravity,
      double atCorner,
      double gap,
      double softness,
      double leastGap,
      int edge) {}

  static RideHeight of(PlenumBalance balance, Stand stand) {
    // the longest part of a balance; the three know nothing of each other
    List<Ends> sides =
        Stream.of(Side.VALUE, Side.LOW, Side.HIGH)
            .parallel()
            .map(side -> ends(balance, stand.at(side)))
            .toList();
    Ends value = sides.get(0);
    Ends low = sides.get(1);
    Ends high = sides.get(2);
    Bands<Ends> bands = new Bands<>(value, low, high, 0, 0);
    double[] c = balance.centre();
    double[] unit = balance.sink(new double[] {1, c[0], c[1]}, Stand.REST);
    double stiffness = 1 / (unit[0] + unit[1] * c[0] + unit[2] * c[1]);
    boolean down = value.force() <= 0;
    PlenumState rest = down ? null : balance.settled(stand);
    boolean any = !Double.isFinite(value.softness());
    @Nullable Estimate required = any ? null : bands.of(e -> stiffness / e.softness());
    @Nullable Estimate factor =
        any ? null : bands.of(e -> Double.isFinite(e.softness()) ? e.softness() : SOFTEST);
    double staticGap =
        value.edge() < 0 ? 1 : balance.machine().floor().edges().get(value.edge()).gap();
    RideHeight.MarginEnd ending =
        down
            ? RideHeight.MarginEnd.DOWN
            : value.leastGap() < CLOSED * staticGap
                ? RideHeight.MarginEnd.CONTACT
                : RideHeight.MarginEnd.FOLD;
    return new RideHeight(
        new RideHeight.Heave(stiffness, required, factor),
        ending,
        value.edge(),
        new RideHeight.Bears(
            down ? null : bands.of(Ends::force),
            down ? null : bands.of(Ends::atGravity),
            down ? null : bands.of(Ends::atCorner),
            rest == null ? -1 : weakestCorner(balance, rest)),
        down ? null : bands.of(Ends::gap));
  }

  private static Ends ends(PlenumBalance balance, Stand stand) {
    PlenumState rest = balance.settled(stand);
    if (rest == null) {
      double bears = stiffening(balance, stand);
      PlenumState clear = balance.settled(stand.softened(stand.softness() * bears));
      return new Ends(0, 0, 0, 0, bears, 0, clear == null ? -1 : clear.least().edge());
    }
    double[] c = {rest.load()[1] / rest.load()[0], rest.load()[2] / rest.load()[0]};
    March load = loaded(balance, stand, rest, c);
    PlenumState last = load.last;
    Load mass = balance.machine().load();
    int corner = weakestCorner(balance, rest);
    Vertex v = balance.machine().floor().vertices().get(corner);
    return new Ends(
        load.bears,
        loaded(balance, stand, rest, new double[] {mass.x(), mass.y()}).bears,
        loaded(balance, stand, rest, new double[] {v.x(), v.y()}).bears,
        rest.least().gap() - last.least().gap(),
        softness(balance, stand, rest),
        last.least().gap(),
        last.least().edge());
  }

  /** Follows the machine under a growing load at a place. */
  private static March loaded(PlenumBalance balance, Stand stand, PlenumState rest, double[] c) {
    double most = closing(balance, rest, c, stand.softness());
    double closes = Math.min(2 / most, FARTHEST);
    March load = new March(rest, f -> balance.settled(pressed(stand, f, c)));
    for (int k = 1; k <= LOADS && !load.ended && load.goesOn(closes * k / LOADS); k++) {}
    for (int k = 2; !load.ended && closes * k < FARTHEST && load.goesOn(closes * k); k *= 2) {}
    return load;
  }

  /** Largest share of a gap under the seal that a load of 1 N at a place closes. */
  private static double closing(
      PlenumBalance balance, PlenumState rest, double[] c, double softness) {
    double[] unit = balance.sink(new double[] {1, c[0], c[1]}, Stand.REST.softened(softness));
    SealStrips strips = balance.strips();
    double most = 1e-12;
    for (int i = 0; i < strips.count; i++) {
      double[] s = rest.sink();
      double h = strips.gap[i] - (s[0] + s[1] * strips.x[i] + s[2] * strips.y[i]);
      most = Math.max(most, (unit[0] + unit[1] * strips.x[i] + unit[2] * strips.y[i]) / h);
    }
    return most;
  }

  /** The corner of the floor at which a load closes a gap first, suction unchanged. */
  static int weakestCorner(PlenumBalance balance, PlenumState rest) {
    int weakest = 0;
    double most = 0;
    List<Vertex> vertices = balance.machine().floor().vertices();
    for (int i = 0; i < vertices.size(); i++) {
      double share =
          closing(balance, rest, new double[] {vertices.get(i).x(), vertices.get(i).y()}, 1);
      if (share > most * (1 + 1e-9)) {
        most = share;
        weakest = i;
      }
    }
    return weakest;
  }

  /** Factor of compliance that is just borne; infinite when any is. */
  private static double softness(PlenumBalance balance, Stand stand, PlenumState rest) {
    March soft =
        new March(rest, x -> balance.settled(stand.softened(stand.softness() * Math.exp(x))));
    double most = Math.log(SOFTEST);
    for (double x = SOFTER; x < most && soft.goesOn(x); x += SOFTER) {}
    return soft.ended ? Math.exp(soft.bears) : Double.POSITIVE_INFINITY;
  }

  /** True when springs softer by a factor still hold the lips clear, wherever the leaks lie. */
  static boolean bears(PlenumBalance balance, double factor) {
    for (Side side : Side.values()) {
      Stand stand = Stand.REST.at(side);
      PlenumState rest = balance.settled(stand);
      if (rest == null) {
        return false;
      }
      March soft =
          new March(rest, x -> balance.settled(stand.softened(stand.softness() * Math.exp(x))));
      double most = Math.log(factor);
      for (double x = SOFTER; x < most && soft.goesOn(x); x += SOFTER) {}
      if (soft.ended || !soft.goesOn(most)) {
        return false;
      }
    }
    return true;
  }

  private static Stand pressed(Stand stand, double force, double[] at) {
    return stand.loaded(
        new double[] {
          stand.extra()[0] + force,
          stand.extra()[1] + force * at[0],
          stand.extra()[2] + force * at[1]
        });
  }

  /** Factor of compliance, below 1, at which a machine that is drawn down would stand clear. */
  private static double stiffening(PlenumBalance balance, Stand stand) {
    double bears = 1 / SOFTEST;
    double fails = 1;
    for (int k = 0; k < STEPS; k++) {
      double middle = Math.sqrt(bears * fails);
      if (balance.settled(stand.softened(stand.softness() * middle)) != null) {
        bears = middle;
      } else {
        fails = middle;
      }
    }
    return bears;
  }

  /**
   * Follows the settled state as one thing grows, until there is none or it jumps: near a fold the
   * next state may lie far down, just clear of the ground, and that is no continuation.
   */
  private static final class March {
    private final DoubleFunction<@Nullable PlenumState> at;
    private double bears;
    private PlenumState last;
    private double drop;
    private boolean ended;

    March(PlenumState first, DoubleFunction<@Nullable PlenumState> at) {
      this.last = first;
      this.at = at;
      this.drop = 0; // the first step is looked into
    }

    /** Goes on to a value; false when the march ends before it. */
    boolean goesOn(double x) {
      PlenumState next = at.apply(x);
      if (next == null) {
        toItsEnd(x);
        return false;
      }
      double fall = last.least().gap() - next.least().gap();
      if (fall > 1.2 * drop && jumps(x, next)) {
        return false;
      }
      bears = x;
      last = next;
      drop = fall;
      return true;
    }

    /** Goes to the last value that has a state, looking for jumps on the way. */
    private void toItsEnd(double beyond) {
      double low = bears;
      double high = beyond;
      for (int k = 0; k < STEPS; k++) {
        double middle = 0.5 * (low + high);
        if (at.apply(middle) == null) {
          high = middle;
        } else {
          low = middle;
        }
      }
      double from = bears;
      drop = 0;
      for (int k = 1; k <= PARTS && !ended && low > from; k++) {
        goesOn(from + (low - from) * k / PARTS);
      }
      ended = true;
    }

    /** Narrows an interval down to a jump; false when it holds none. */
    private boolean jumps(double beyond, PlenumState there) {
      double low = bears;
      double high = beyond;
      PlenumState above = last;
      PlenumState below = there;
      for (int k = 0; k < STEPS; k++) {
        double middle = 0.5 * (low + high);
        PlenumState s = at.apply(middle);
        if (s != null
            && s.least().gap() - below.least().gap() > above.least().gap() - s.least().gap()) {
          low = middle;
          above = s;
        } else if (s != null) {
          high = middle;
          below = s;
        } else {
          return false;
        }
        if (above.least().gap() - below.least().gap() < JUMP * last.least().gap()) {
          return false;
        }
      }
      bears = low;
      last = above;
      ended = true;
      return true;
    }
  }
}
