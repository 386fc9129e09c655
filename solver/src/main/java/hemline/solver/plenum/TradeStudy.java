package hemline.solver.plenum;

import hemline.shared.vehicle.FanCurve;
import hemline.shared.vehicle.FloorOutline;
import hemline.shared.vehicle.Machine;
import hemline.solver.plenum.Trade.Kind;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** Changes one thing of the machine at a time and solves its balance again. */
final class TradeStudy {
  private static final double[] SIZES = {0.8, 0.9, 1.1, 1.2};
  private static final double[] LENGTHS = {0.7, 0.85, 1.15, 1.3};
  private static final double[] SPEEDS = {0.8, 0.9, 1.1, 1.2};
  private static final double[] GAPS = {0.6, 0.8, 0.9, 1.1, 1.2, 1.4};

  /** Gaps over the static ones at which leak curves are drawn. */
  private static final double[] CURVES = {0.5, 0.75, 1, 1.25, 1.5};

  private static final int SAMPLES = 40;
  private static final int SERIES = 11;

  private final Machine machine;
  private final Map<String, LeakLaw> laws;

  TradeStudy(Machine machine, Map<String, LeakLaw> laws) {
    this.machine = machine;
    this.laws = laws;
  }

  List<Trade> sizes() {
    List<Trade> trades = new ArrayList<>();
    trades.add(trade(Kind.AS_IT_IS, "as it is", 1, machine));
    FloorOutline floor = machine.floor();
    for (double f : SIZES) {
      trades.add(trade(Kind.FLOOR_SIZE, "", f, machine.withFloor(floor.stretched(f, f))));
    }
    for (double f : LENGTHS) {
      double s = Math.sqrt(f);
      trades.add(trade(Kind.FLOOR_LENGTH, "", f, machine.withFloor(floor.stretched(s, 1 / s))));
    }
    for (double f : SPEEDS) {
      trades.add(trade(Kind.FAN_SPEED, "", f, atSpeed(f)));
    }
    for (double f : GAPS) {
      trades.add(trade(Kind.GAP, "", f, machine.withFloor(floor.withGaps(f))));
    }
    return trades;
  }

  /** The machine, whose edges all have the same lip, as one of the lips tried. */
  Trade lip(String name) {
    return trade(Kind.LIP, name, 1, machine);
  }

  private Machine atSpeed(double factor) {
    return machine.withFan(machine.fan().atSpeed(factor * machine.fan().speed()));
  }

  private Trade trade(Kind kind, String name, double factor, Machine changed) {
    PlenumBalance balance = new PlenumBalance(changed, laws);
    Bands<PlenumState> b = Settling.settled(balance, Stand.REST);
    if (b == null) {
      return new Trade(kind, name, factor, null, null, null, null, false);
    }
    double efficiency = changed.power().motorEfficiency();
    return new Trade(
        kind,
        name,
        factor,
        b.of(s -> s.parts().sum()),
        b.of(s -> Settling.shaftPower(balance, s)),
        b.of(s -> s.parts().sum() * efficiency / Settling.shaftPower(balance, s)),
        b.of(p -> p.least().gap()),
        beyond(balance, b.value()));
  }

  /** True when any gap or the suction lies beyond the solved points. */
  static boolean beyond(PlenumBalance balance, PlenumState state) {
    SealStrips strips = balance.strips();
    for (int i = 0; i < strips.count; i++) {
      double h =
          strips.gap[i]
              - (state.sink()[0] + state.sink()[1] * strips.x[i] + state.sink()[2] * strips.y[i]);
      if (h > 0 && !strips.law[i].holds(h, state.suction())) {
        return true;
      }
    }
    return false;
  }

  /** Demand of the seal, valve and other leaks at fixed gaps over the suction. */
  List<FlowCurve> leakCurves() {
    List<FlowCurve> curves = new ArrayList<>();
    for (double f : CURVES) {
      Machine changed = machine.withFloor(machine.floor().withGaps(f));
      PlenumBalance balance = new PlenumBalance(changed, laws);
      Stand held = Stand.REST.held(new double[3]);
      double peak = balance.fan().peakPressure();
      double[] suction = new double[SAMPLES];
      double[] flow = new double[SAMPLES];
      for (int k = 0; k < SAMPLES; k++) {
        // even steps of the flow, which goes with the root of the suction
        double share = (k + 1.0) / SAMPLES;
        suction[k] = 1.05 * peak * share * share;
        flow[k] = balance.at(0, suction[k], held).demand();
      }
      double least = Double.POSITIVE_INFINITY;
      for (var edge : changed.floor().edges()) {
        least = Math.min(least, edge.gap());
      }
      curves.add(new FlowCurve(f, least, flow, suction));
    }
    return curves;
  }

  /** The fan's curve as it runs. */
  FlowCurve fanCurve() {
    FanCurve fan = machine.fan().running(machine.duty().air().air().density());
    int n = 2 * SAMPLES + 1;
    double[] flow = new double[n];
    double[] pressure = new double[n];
    for (int k = 0; k < n; k++) {
      flow[k] = fan.largestFlow() * k / (n - 1);
      pressure[k] = fan.pressureAt(flow[k]);
    }
    return new FlowCurve(1, 0, flow, pressure);
  }

  List<DownforcePoint> overGap() {
    List<DownforcePoint> series = new ArrayList<>();
    for (int k = 0; k < SERIES; k++) {
      double f = 0.5 + k * 0.1;
      series.add(point(f, machine.withFloor(machine.floor().withGaps(f))));
    }
    return series;
  }

  List<DownforcePoint> overSpeed() {
    List<DownforcePoint> series = new ArrayList<>();
    for (int k = 0; k < SERIES; k++) {
      double f = 0.5 + k * 0.07;
      series.add(point(f, atSpeed(f)));
    }
    return series;
  }

  private DownforcePoint point(double factor, Machine changed) {
    PlenumBalance balance = new PlenumBalance(changed, laws);
    @Nullable Bands<PlenumState> b = Settling.settled(balance, Stand.REST);
    return new DownforcePoint(
        factor,
        b == null ? null : b.of(s -> s.parts().sum()),
        b == null ? null : b.of(PlenumState::suction));
  }
}
