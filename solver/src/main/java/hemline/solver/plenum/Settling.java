package hemline.solver.plenum;

import hemline.shared.result.Estimate;
import hemline.shared.result.MachineFigure;
import hemline.shared.vehicle.Machine;
import hemline.shared.vehicle.PowerSupply;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.function.ToDoubleFunction;
import org.jspecify.annotations.Nullable;

/** Figures of the machine at its operating points, with bands. */
final class Settling {
  private Settling() {}

  /** The settled states on the three sides of the leaks; null when there is none as estimated. */
  static @Nullable Bands<PlenumState> settled(PlenumBalance balance, Stand stand) {
    PlenumState value = balance.settled(stand.at(Side.VALUE));
    if (value == null) {
      return null;
    }
    double[] shares = shares(balance, value);
    return new Bands<>(
        value,
        balance.settled(stand.at(Side.LOW)),
        balance.settled(stand.at(Side.HIGH)),
        shares[0],
        shares[1]);
  }

  /** Shares of grid and iteration in the band of the leak, weighted along the seal. */
  private static double[] shares(PlenumBalance balance, PlenumState state) {
    SealStrips strips = balance.strips();
    double grid = 0;
    double cycle = 0;
    double all = 0;
    for (int i = 0; i < strips.count; i++) {
      double h =
          strips.gap[i]
              - (state.sink()[0] + state.sink()[1] * strips.x[i] + state.sink()[2] * strips.y[i]);
      if (h > 0) {
        Estimate c = strips.law[i].estimate(h, state.suction());
        double weight = strips.lengthAt(i, h, Side.VALUE) * h;
        grid += weight * c.numerical();
        cycle += weight * c.iteration();
        all += weight * 0.5 * (c.high() - c.low());
        all +=
            0.5
                * (strips.lengthAt(i, h, Side.HIGH) - strips.lengthAt(i, h, Side.LOW))
                * h
                * c.value();
      }
    }
    return all > 0
        ? new double[] {Math.min(1, grid / all), Math.min(1, cycle / all)}
        : new double[2];
  }

  static List<OperatingPoint> points(PlenumBalance balance, Stand stand) {
    List<PlenumState> value = balance.points(stand.at(Side.VALUE));
    List<PlenumState> low = balance.points(stand.at(Side.LOW));
    List<PlenumState> high = balance.points(stand.at(Side.HIGH));
    PlenumState settled = balance.settled(stand.at(Side.VALUE));
    List<OperatingPoint> points = new ArrayList<>();
    for (PlenumState p : value) {
      double[] shares = shares(balance, p);
      Bands<PlenumState> b = new Bands<>(p, like(p, low), like(p, high), shares[0], shares[1]);
      points.add(
          new OperatingPoint(
              b.of(PlenumState::suction),
              new OperatingPoint.Flows(
                  b.of(s -> s.flows().fan()),
                  b.of(s -> s.flows().leak()),
                  b.of(s -> s.flows().valve()),
                  b.of(s -> s.flows().other())),
              p.stable(),
              p.stalled(),
              p.touches(),
              p.equals(settled)));
    }
    return points;
  }

  /** The point that answers to one among those of another side: the nearest of its kind. */
  private static @Nullable PlenumState like(PlenumState p, List<PlenumState> others) {
    PlenumState best = null;
    for (PlenumState o : others) {
      boolean alike = o.stable() == p.stable();
      if (alike
          && (best == null
              || Math.abs(o.flows().fan() - p.flows().fan())
                  < Math.abs(best.flows().fan() - p.flows().fan()))) {
        best = o;
      }
    }
    return best;
  }

  static SettledFigures figures(PlenumBalance balance, Bands<PlenumState> b) {
    Machine machine = balance.machine();
    List<Estimate> axles = new ArrayList<>();
    for (int i = 0; i < machine.running().axles().size(); i++) {
      int axle = i;
      axles.add(b.of(s -> axleLoads(balance, s.load())[axle]));
    }
    List<Estimate> gaps = new ArrayList<>();
    List<Estimate> leaks = new ArrayList<>();
    for (int i = 0; i < machine.floor().edges().size(); i++) {
      int edge = i;
      gaps.add(b.of(s -> balance.leastGap(edge, s.sink())));
      leaks.add(b.of(s -> s.flows().edgeLeaks()[edge]));
    }
    return new SettledFigures(scalars(balance, b), axles, gaps, leaks, b.value().least().edge());
  }

  private static Map<MachineFigure, Estimate> scalars(PlenumBalance balance, Bands<PlenumState> b) {
    PowerSupply power = balance.machine().power();
    double drive = balance.machine().running().drivePower() / power.driveEfficiency();
    ToDoubleFunction<PlenumState> electrical =
        s -> shaftPower(balance, s) / power.motorEfficiency();
    Map<MachineFigure, Estimate> f = new EnumMap<>(MachineFigure.class);
    f.put(MachineFigure.SUCTION, b.of(PlenumState::suction));
    f.put(MachineFigure.DOWNFORCE, b.of(s -> s.parts().sum()));
    f.put(MachineFigure.FLOOR_FORCE, b.of(s -> s.parts().floor()));
    f.put(MachineFigure.LIP_FORCE, b.of(s -> s.parts().lips()));
    f.put(MachineFigure.FAN_THRUST, b.of(s -> s.parts().thrust()));
    f.put(MachineFigure.VALVE_FORCE, b.of(s -> s.parts().valve()));
    f.put(MachineFigure.CENTRE_X, b.of(s -> centreX(balance, s)));
    f.put(MachineFigure.CENTRE_Y, b.of(s -> s.load()[2] / s.load()[0]));
    f.put(MachineFigure.LEAST_GAP, b.of(p -> p.least().gap()));
    f.put(MachineFigure.HEAVE, b.of(s -> s.sink()[0]));
    f.put(MachineFigure.PITCH, b.of(s -> s.sink()[1]));
    f.put(MachineFigure.FAN_FLOW, b.of(p -> p.flows().fan()));
    f.put(MachineFigure.AIR_POWER, b.of(s -> s.suction() * s.flows().fan()));
    f.put(MachineFigure.SHAFT_POWER, b.of(s -> shaftPower(balance, s)));
    f.put(MachineFigure.ELECTRICAL_POWER, b.of(electrical));
    f.put(MachineFigure.RUN_TIME, b.of(s -> runTime(power, electrical.applyAsDouble(s))));
    f.put(
        MachineFigure.RUN_TIME_DRIVING,
        b.of(s -> runTime(power, electrical.applyAsDouble(s) + drive)));
    return f;
  }

  /** Centre of pressure without the moment of a sideways jet, m. */
  private static double centreX(PlenumBalance balance, PlenumState s) {
    double jet = balance.forwardThrust(s.flows().fan(), s.suction());
    return (s.load()[1] - jet * balance.machine().fan().outlet().height()) / s.load()[0];
  }

  static double shaftPower(PlenumBalance balance, PlenumState s) {
    return balance.machine().fan().shaftPower(balance.fan(), s.flows().fan(), s.suction());
  }

  private static double runTime(PowerSupply power, double electrical) {
    return power.batteryEnergy() * power.usableShare() / electrical;
  }

  /** Loads of the axles on level ground under weight and a load of suction, N. */
  static double[] axleLoads(PlenumBalance balance, double[] load) {
    return balance.wheels().byAxle(wheelLoads(balance, load));
  }

  /** Loads of the wheels on level ground under weight and a load of suction, N. */
  static double[] wheelLoads(PlenumBalance balance, double[] load) {
    double[] w = balance.wheels().weight();
    return balance.wheels().loads(new double[] {load[0] + w[0], load[1] + w[1], load[2] + w[2]});
  }
}
