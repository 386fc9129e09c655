package hemline.solver.plenum;

import hemline.shared.fluid.FluidState;
import hemline.shared.vehicle.FanCurve;
import hemline.shared.vehicle.FloorOutline;
import hemline.shared.vehicle.Machine;
import hemline.shared.vehicle.OtherLeak;
import hemline.shared.vehicle.ReliefValve;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * Operating points of a machine: flows of the fan at which all leaks take just what it moves.
 *
 * <p>At a fan flow Q the suction is p(Q), the springs then fix the sink of the floor and with it
 * every gap, and the leaks take D(Q) = Σ C_d h √(2 p / ρ) L + valve + others. Operating points are
 * the zeros of D(Q) − Q. Suction and sink go together, so a machine that can be drawn to the ground
 * shows as further zeros or none.
 */
final class PlenumBalance {
  /** Rounds of lip force and sink. */
  private static final int LIP_ROUNDS = 2;

  /** Least gap at which the lip's force is read, m; below it the lip touches. */
  private static final double LEAST_GAP = 1e-6;

  private final Machine machine;
  private final Map<String, LeakLaw> laws;
  private final SealStrips strips;
  private final FanCurve fan;
  private final FluidState air;
  private final double area;
  private final double[] centre;
  private final Wheels wheels;
  private final List<FloorOutline.Piece> pieces;
  private final double[] edgeLength;
  private final Guessed guessed;

  PlenumBalance(Machine machine, Map<String, LeakLaw> laws) {
    this(machine, laws, Guessed.USUAL);
  }

  private PlenumBalance(Machine machine, Map<String, LeakLaw> laws, Guessed guessed) {
    this.machine = machine;
    this.laws = laws;
    this.guessed = guessed;
    strips = new SealStrips(machine, laws);
    air = machine.duty().air().air();
    fan = machine.fan().running(air.density());
    area = machine.floor().area();
    centre = machine.floor().centre();
    wheels = new Wheels(machine);
    pieces = machine.floor().pieces();
    edgeLength = new double[machine.floor().edges().size()];
    for (FloorOutline.Piece p : pieces) {
      edgeLength[p.edge()] += p.length();
    }
  }

  /** The balance of a changed machine with the same leak laws. */
  PlenumBalance changed(Machine other) {
    return new PlenumBalance(other, laws, guessed);
  }

  /** The balance with other guesses. */
  PlenumBalance guessing(Guessed other) {
    return new PlenumBalance(machine, laws, other);
  }

  Machine machine() {
    return machine;
  }

  FanCurve fan() {
    return fan;
  }

  FluidState air() {
    return air;
  }

  SealStrips strips() {
    return strips;
  }

  double area() {
    return area;
  }

  /** All operating points, by rising fan flow. */
  List<PlenumState> points(Stand stand) {
    return new PointSearch(this, stand).all();
  }

  /** The point at which the machine settles as the fan runs up; null when there is none. */
  @Nullable PlenumState settled(Stand stand) {
    return new PointSearch(this, stand).settled();
  }

  /**
   * The same, looked for close to a state that differs little.
   *
   * @param like such a state; null when there is none
   */
  @Nullable PlenumState settled(Stand stand, @Nullable PlenumState like) {
    PlenumState near = like == null ? null : new PointSearch(this, stand).near(like.flows().fan());
    return near == null ? settled(stand) : near;
  }

  /**
   * The plenum at a fan flow and a suction, whether or not the flows agree.
   *
   * @param flow of the fan, m³/s
   * @param suction Pa, positive
   */
  PlenumState at(double flow, double suction, Stand stand) {
    double rho = air.density();
    double floor = suction * area;
    double thrust = thrust(flow, suction);
    double forwards = forwardThrust(flow, suction);
    ReliefValve valve = machine.openings().valve();
    double valveFlow = valve == null ? 0 : valve.flow(suction, rho);
    // a jet of Q_v that strikes the ground lifts by its momentum ρ Q_v √(2 Δp / ρ)
    double valveJet = -jetShare(stand.side()) * valveFlow * Math.sqrt(2 * suction * rho);
    double middle = floor + valveJet;
    double tx = machine.fan().outlet().x();
    double ty = machine.fan().outlet().y();
    double[] lips = {0, 0, 0};
    double[] held = stand.held();
    double[] sink = held == null ? new double[3] : held;
    double[] load = new double[3];
    for (int round = 0; round <= LIP_ROUNDS; round++) {
      // force down, and its moments about y and x: Σ F, Σ F x, Σ F y
      load[0] = middle + lips[0] + thrust;
      load[1] =
          middle * centre[0] + lips[1] + thrust * tx + forwards * machine.fan().outlet().height();
      load[2] = middle * centre[1] + lips[2] + thrust * ty;
      if (held == null) {
        sink = sink(load, stand);
      }
      if (round < LIP_ROUNDS) {
        lips = lipLoad(suction, sink, stand);
      }
    }
    double leak = 0;
    double[] edgeLeaks = new double[edgeLength.length];
    double jet = Math.sqrt(2 * suction / rho);
    double lnSuction = Math.log(suction);
    // D = Σ C_d h L √(2 Δp / ρ)
    for (int i = 0; i < strips.count; i++) {
      double part = stripLeak(i, gap(i, sink), lnSuction, stand) * jet;
      leak += part;
      edgeLeaks[strips.edge[i]] += part;
    }
    double other = 0;
    for (OtherLeak o : machine.openings().leaks()) {
      other += o.flow(suction, rho);
    }
    return new PlenumState(
        suction,
        new PlenumState.Flows(flow, leak, edgeLeaks, valveFlow, other),
        sink.clone(),
        load,
        new PlenumState.Parts(floor, lips[0], thrust, valveJet),
        leastGap(sink),
        false,
        false);
  }

  /** The least gap over all strips and the ends of all pieces. */
  private PlenumState.LeastGap leastGap(double[] sink) {
    double least = Double.POSITIVE_INFINITY;
    int edge = -1;
    for (int i = 0; i < strips.count; i++) {
      double h = gap(i, sink);
      if (h < least) {
        least = h;
        edge = strips.edge[i];
      }
    }
    for (FloorOutline.Piece p : pieces) {
      double h0 = machine.floor().edges().get(p.edge()).gap();
      double h = h0 - (sink[0] + sink[1] * p.x0() + sink[2] * p.y0());
      double h1 = h0 - (sink[0] + sink[1] * p.x1() + sink[2] * p.y1());
      if (Math.min(h, h1) < least) {
        least = Math.min(h, h1);
        edge = p.edge();
      }
    }
    return new PlenumState.LeastGap(least, edge);
  }

  /** Sink {z, a, b} under a load and the extra load of the stand. */
  double[] sink(double[] load, Stand stand) {
    double[] extra = stand.extra();
    return wheels.sink(
        new double[] {load[0] + extra[0], load[1] + extra[1], load[2] + extra[2]},
        stand.softness());
  }

  Wheels wheels() {
    return wheels;
  }

  /** Smallest gap along an edge at a sink, m. */
  double leastGap(int edge, double[] sink) {
    double h0 = machine.floor().edges().get(edge).gap();
    double least = Double.POSITIVE_INFINITY;
    for (FloorOutline.Piece p : pieces) {
      if (p.edge() == edge) {
        least = Math.min(least, h0 - (sink[0] + sink[1] * p.x0() + sink[2] * p.y0()));
        least = Math.min(least, h0 - (sink[0] + sink[1] * p.x1() + sink[2] * p.y1()));
      }
    }
    return least;
  }

  double[] centre() {
    return centre.clone();
  }

  /** h = h₀ - (z + a x + b y). */
  private double gap(int i, double[] sink) {
    return strips.gap[i] - (sink[0] + sink[1] * strips.x[i] + sink[2] * strips.y[i]);
  }

  /** Leak of a strip over the jet reference speed, m²: effective gap times length. */
  private double stripLeak(int i, double h, double lnSuction, Stand stand) {
    double length = length(i, Math.max(0, h), stand.side());
    Crossing crossing = stand.crossing();
    if (crossing == null) {
      return effective(i, h, lnSuction, stand) * length;
    }
    double share =
        strips.vertex[i] < 0
            ? crossing.share(strips.edge[i], edgeLength[strips.edge[i]])
            : crossing.corner(strips.vertex[i]);
    if (share == 0) {
      return effective(i, h, lnSuction, stand) * length;
    }
    double over = h + crossing.height();
    double part = strips.vertex[i] < 0 ? length : length(i, over, stand.side());
    // the part that hangs over the step leaks through h + step
    return (1 - share) * effective(i, h, lnSuction, stand) * length
        + share * effective(i, over, lnSuction, stand) * part;
  }

  private double length(int i, double h, Side side) {
    double more = side == Side.VALUE ? (guessed.corner() - 1) * strips.turn[i] * h : 0;
    return strips.lengthAt(i, h, side) + more;
  }

  /** Effective gap C_d h, m. */
  private double effective(int i, double h, double lnSuction, Stand stand) {
    return h <= 0
        ? 0
        : guessed.leak()
            * h
            * strips.law[i].discharge(
                Math.log(h), lnSuction, stand.moving(), strips.facing[i], stand.side());
  }

  /** Force of the lips down and its moments: -Σ c_y Δp L, with c_y lift over suction. */
  private double[] lipLoad(double suction, double[] sink, Stand stand) {
    double[] out = new double[3];
    double lnSuction = Math.log(suction);
    for (int i = 0; i < strips.count; i++) {
      if (strips.length[i] > 0) {
        double h = Math.max(gap(i, sink), LEAST_GAP);
        double down =
            -guessed.lipForce()
                * strips.law[i].lift(
                    Math.log(h), lnSuction, stand.moving(), strips.facing[i], stand.side())
                * suction
                * strips.length[i];
        out[0] += down;
        out[1] += down * strips.x[i];
        out[2] += down * strips.y[i];
      }
    }
    return out;
  }

  /** Thrust of the fan's jet towards the ground, N: ρ Q v sin(exit angle). */
  double thrust(double flow, double suction) {
    return jet(flow, suction) * Math.sin(machine.fan().outlet().angle());
  }

  /** Thrust of the fan's jet forwards, N. */
  double forwardThrust(double flow, double suction) {
    return jet(flow, suction) * Math.cos(machine.fan().outlet().angle());
  }

  /** ρ Q v, N. */
  private double jet(double flow, double suction) {
    return air.density() * flow * machine.fan().jetSpeed(fan, flow, suction);
  }

  /** Share of the valve's jet that strikes the ground: unknown, so half with a band of all. */
  private double jetShare(Side side) {
    return switch (side) {
      case LOW -> 0;
      case VALUE -> guessed.valveJet();
      case HIGH -> 1;
    };
  }
}
