package hemline.solver.plenum;

import hemline.shared.fluid.FluidState;
import hemline.shared.vehicle.FanCurve;
import hemline.shared.vehicle.FloorOutline;
import hemline.shared.vehicle.GroundStep;
import hemline.shared.vehicle.Machine;
import hemline.shared.vehicle.OtherLeak;
import hemline.shared.vehicle.ReliefValve;
import java.util.ArrayList;
import java.util.Collections;
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
 *
 * <p>A point is stable when at its height a rise of the suction draws in more than the fan gains
 * (static condition of surge, p′(Q) dD/dp < 1), and when the same holds with the springs following.
 */
final class PlenumBalance {
  private static final int SCAN = 36;
  private static final int ROOT_STEPS = 60;
  private static final int DIP_STEPS = 30;
  private static final double GOLDEN = 0.5 * (Math.sqrt(5) - 1);
  private static final int LIP_ROUNDS = 2;
  private static final double SMALL = 1e-6;
  private static final double ROOT_WIDTH = 1e-11;

  /** Suctions below this share of the fan's peak are taken as none. */
  private static final double LEAST_SUCTION = 1e-4;

  private final Machine machine;
  private final Map<String, LeakLaw> laws;
  private final SealStrips strips;
  private final FanCurve fan;
  private final FluidState air;
  private final double area;
  private final double[] centre;
  private final double[][] compliance = new double[3][];
  private final List<FloorOutline.Piece> pieces;
  private final double[] edgeLength;

  PlenumBalance(Machine machine, Map<String, LeakLaw> laws) {
    this.machine = machine;
    this.laws = laws;
    strips = new SealStrips(machine, laws);
    air = machine.air().air();
    fan = machine.fan().running(air.density());
    area = machine.floor().area();
    centre = machine.floor().centre();
    for (int i = 0; i < 3; i++) {
      double[] unit = new double[3];
      unit[i] = 1;
      compliance[i] = Stand.sink(machine, unit, 1);
    }
    pieces = machine.floor().pieces();
    edgeLength = new double[machine.floor().edges().size()];
    for (FloorOutline.Piece p : pieces) {
      edgeLength[p.edge()] += p.length();
    }
  }

  /** The balance of a changed machine with the same leak laws. */
  PlenumBalance changed(Machine other) {
    return new PlenumBalance(other, laws);
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
    List<PlenumState> points = scan(stand, false);
    Collections.reverse(points);
    return points;
  }

  /** The point at which the machine settles as the fan runs up; null when there is none. */
  @Nullable PlenumState settled(Stand stand) {
    for (PlenumState p : scan(stand, true)) {
      if (settles(p)) {
        return p;
      }
    }
    return null;
  }

  /**
   * Operating points by falling fan flow.
   *
   * @param first true to stop at the first that is stable and clear of the ground
   */
  private List<PlenumState> scan(Stand stand, boolean first) {
    List<PlenumState> points = new ArrayList<>();
    double step = fan.largestFlow() / SCAN;
    double beforeLast = Double.NaN;
    double last = residual(fan.largestFlow(), stand);
    for (int k = SCAN - 1; k >= 0; k--) {
      double flow = k * step;
      double r = residual(flow, stand);
      if (last > 0 != r > 0) {
        points.add(judged(root(flow, flow + step, r, stand), stand));
      } else if (last > 0 == beforeLast > 0
          && Math.abs(last) < Math.abs(r)
          && Math.abs(last) < Math.abs(beforeLast)) {
        dip(flow, flow + 2 * step, last, stand, points);
      }
      if (first && points.stream().anyMatch(PlenumBalance::settles)) {
        return points;
      }
      beforeLast = last;
      last = r;
    }
    return points;
  }

  private static boolean settles(PlenumState p) {
    return p.stable() && !p.touches();
  }

  /** Looks for a pair of points where the residual comes close to zero and turns back. */
  private void dip(double low, double high, double middle, Stand stand, List<PlenumState> points) {
    double sign = Math.signum(middle);
    double a = low;
    double b = high;
    double c = b - GOLDEN * (b - a);
    double d = a + GOLDEN * (b - a);
    double fc = sign * residual(c, stand);
    double fd = sign * residual(d, stand);
    for (int k = 0; k < DIP_STEPS && fc > 0 && fd > 0; k++) {
      if (fc < fd) {
        b = d;
        d = c;
        fd = fc;
        c = b - GOLDEN * (b - a);
        fc = sign * residual(c, stand);
      } else {
        a = c;
        c = d;
        fc = fd;
        d = a + GOLDEN * (b - a);
        fd = sign * residual(d, stand);
      }
    }
    if (fc <= 0 || fd <= 0) {
      double at = fc <= 0 ? c : d;
      points.add(judged(root(at, high, -middle, stand), stand));
      points.add(judged(root(low, at, middle, stand), stand));
    }
  }

  private double residual(double flow, Stand stand) {
    return least(fan.pressureAt(flow))
        ? -flow
        : at(flow, fan.pressureAt(flow), stand).demand() - flow;
  }

  private boolean least(double suction) {
    return suction < LEAST_SUCTION * fan.peakPressure();
  }

  /** Zero of the residual between two flows, by regula falsi with the Illinois change. */
  private double root(double low, double high, double atLow, Stand stand) {
    double a = low;
    double b = high;
    double fa = atLow;
    double fb = residual(high, stand);
    int side = 0;
    for (int k = 0; k < ROOT_STEPS && b - a > ROOT_WIDTH * high; k++) {
      double m = fa == fb ? 0.5 * (a + b) : (a * fb - b * fa) / (fb - fa);
      if (!(m > a && m < b)) {
        m = 0.5 * (a + b);
      }
      double fm = residual(m, stand);
      if (Math.abs(fm) < ROOT_WIDTH * high) {
        return m;
      }
      if (fm > 0 == fa > 0) {
        a = m;
        fa = fm;
        fb = side == 1 ? 0.5 * fb : fb;
        side = 1;
      } else {
        b = m;
        fb = fm;
        fa = side == -1 ? 0.5 * fa : fa;
        side = -1;
      }
    }
    return 0.5 * (a + b);
  }

  private PlenumState judged(double flow, Stand stand) {
    double p = fan.pressureAt(flow);
    PlenumState here = at(flow, p, stand);
    double slope = fan.slopeAt(flow);
    double step = SMALL * p;
    Stand fixed = stand.over(stand.step(), here.sink());
    double atHeight =
        (at(flow, p + step, fixed).demand() - at(flow, p - step, fixed).demand()) / (2 * step);
    double free =
        (at(flow, p + step, stand).demand() - at(flow, p - step, stand).demand()) / (2 * step);
    boolean stable = slope * atHeight < 1 && slope * free < 1;
    return here.judged(stable, slope > 0);
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
    double thrust = thrust(flow);
    ReliefValve valve = machine.valve();
    double valveFlow = valve == null ? 0 : valve.flow(suction, rho);
    double valveJet = -0.5 * valveFlow * Math.sqrt(2 * suction * rho);
    double middle = floor + valveJet;
    double tx = machine.fan().x();
    double ty = machine.fan().y();
    double[] lips = {0, 0, 0};
    double[] held = stand.held();
    double[] sink = held == null ? new double[3] : held;
    double[] load = new double[3];
    for (int round = 0; round <= LIP_ROUNDS; round++) {
      load[0] = middle + lips[0] + thrust;
      load[1] = middle * centre[0] + lips[1] + thrust * tx;
      load[2] = middle * centre[1] + lips[2] + thrust * ty;
      if (held == null) {
        sink = sink(load, stand);
      }
      if (round < LIP_ROUNDS) {
        lips = lipLoad(suction, sink, stand.side());
      }
    }
    double least = Double.POSITIVE_INFINITY;
    int leastEdge = -1;
    double leak = 0;
    double[] edgeLeaks = new double[edgeLength.length];
    double jet = Math.sqrt(2 * suction / rho);
    double lnSuction = Math.log(suction);
    for (int i = 0; i < strips.count; i++) {
      double h = gap(i, sink);
      if (h < least) {
        least = h;
        leastEdge = strips.edge[i];
      }
      double part = stripLeak(i, h, lnSuction, stand) * jet;
      leak += part;
      edgeLeaks[strips.edge[i]] += part;
    }
    for (FloorOutline.Piece p : pieces) {
      double h0 = machine.floor().edges().get(p.edge()).gap();
      double h = h0 - (sink[0] + sink[1] * p.x0() + sink[2] * p.y0());
      double h1 = h0 - (sink[0] + sink[1] * p.x1() + sink[2] * p.y1());
      if (Math.min(h, h1) < least) {
        least = Math.min(h, h1);
        leastEdge = p.edge();
      }
    }
    double other = 0;
    for (OtherLeak o : machine.otherLeaks()) {
      other += o.flow(suction, rho);
    }
    return new PlenumState(
        suction,
        flow,
        leak,
        edgeLeaks,
        valveFlow,
        other,
        sink.clone(),
        load,
        new PlenumState.Parts(floor, lips[0], thrust, valveJet),
        least,
        leastEdge,
        false,
        false);
  }

  /** Sink {z, a, b} under a load and the extra load of the stand. */
  double[] sink(double[] load, Stand stand) {
    double[] sink = new double[3];
    for (int i = 0; i < 3; i++) {
      for (int j = 0; j < 3; j++) {
        sink[j] += stand.softness() * compliance[i][j] * (load[i] + stand.extra()[i]);
      }
    }
    return sink;
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

  private double gap(int i, double[] sink) {
    return strips.gap[i] - (sink[0] + sink[1] * strips.x[i] + sink[2] * strips.y[i]);
  }

  /** Leak of a strip over the jet reference speed, m²: effective gap times length. */
  private double stripLeak(int i, double h, double lnSuction, Stand stand) {
    GroundStep step = machine.step();
    double length = strips.lengthAt(i, Math.max(0, h), stand.side());
    if (stand.step() != strips.edge[i] || step == null || strips.turn[i] > 0) {
      return effective(i, h, lnSuction, stand) * length;
    }
    double all = edgeLength[strips.edge[i]];
    double share = Math.min(1, step.length() / all);
    return length
        * ((1 - share) * effective(i, h, lnSuction, stand)
            + share * effective(i, h + step.height(), lnSuction, stand));
  }

  private double effective(int i, double h, double lnSuction, Stand stand) {
    return h <= 0
        ? 0
        : h
            * strips.law[i].discharge(
                Math.log(h), lnSuction, stand.moving(), strips.facing[i], stand.side());
  }

  private double[] lipLoad(double suction, double[] sink, Side side) {
    double[] out = new double[3];
    double lnSuction = Math.log(suction);
    for (int i = 0; i < strips.count; i++) {
      if (strips.length[i] > 0) {
        double h = Math.max(gap(i, sink), 1e-6);
        double down =
            -strips.law[i].lift(Math.log(h), lnSuction, side) * suction * strips.length[i];
        out[0] += down;
        out[1] += down * strips.x[i];
        out[2] += down * strips.y[i];
      }
    }
    return out;
  }

  /** Thrust of the fan's jet towards the ground, N: ρ Q² / A sin(exit angle). */
  double thrust(double flow) {
    double exit = machine.fan().exitArea();
    return exit > 0 ? air.density() * flow * flow / exit * Math.sin(machine.fan().exitAngle()) : 0;
  }

  /** Thrust of the fan's jet forwards, N. */
  double forwardThrust(double flow) {
    double exit = machine.fan().exitArea();
    return exit > 0 ? air.density() * flow * flow / exit * Math.cos(machine.fan().exitAngle()) : 0;
  }
}
