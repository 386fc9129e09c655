package hemline.solver.plenum;

import hemline.shared.fluid.Air;
import hemline.shared.result.Estimate;
import hemline.shared.result.MachineFigure;
import hemline.shared.vehicle.Machine;
import hemline.shared.vehicle.OtherLeak;
import hemline.shared.vehicle.ReliefValve;
import org.jspecify.annotations.Nullable;

/**
 * Sets the relief valve.
 *
 * <p>With the suction pinned at p the floor sinks by C A p and no further, so no lip touches before
 * the springs are softer by the factor at which the smallest gap is used up. The largest p for a
 * wanted factor is the cap, at most the fan's peak. To pin it whatever the gap, the valve must pass
 * at the cap all that the fan moves there when the seal is closed; at the peak it need not open.
 *
 * <p>Chatter: plenum of volume V (filling V / (κ p₀) per pascal) with the disc on its spring,
 * linearised: C ṗ = −G p − g x, m ẍ + c ẋ + k x = A p. Growing oscillations begin where the
 * criterion of Routh and Hurwitz fails: (C c + G m)(C k + G c) = C m (G k + g A).
 */
final class ValveStudy {
  private static final int STEPS = 50;

  private ValveStudy() {}

  static ValveSetting of(PlenumBalance balance, double factor, @Nullable Estimate margin) {
    Machine machine = balance.machine();
    PlenumBalance without = balance.changed(machine.withValve(null));
    Bands<Double> cap =
        new Bands<>(
            cap(without, factor, Side.VALUE),
            cap(without, factor, Side.LOW),
            cap(without, factor, Side.HIGH),
            0,
            0);
    double capSuction = cap.value();
    Bands<Double> flow = cap.map(p -> flowAt(balance, p));
    // the margin of a machine with its valve holds without it only where there is none
    boolean needed =
        machine.openings().valve() == null
            ? margin != null && margin.low() < factor
            : !HeightStability.bears(without, factor);
    ReliefValve valve = machine.openings().valve();
    return new ValveSetting(
        factor,
        needed,
        cap.of(Double::doubleValue),
        flow.of(Double::doubleValue),
        valve == null ? null : setting(balance, valve, capSuction, flow.value()));
  }

  /** Largest suction, up to the fan's peak, at which the smallest gap is not used up, Pa. */
  private static double cap(PlenumBalance balance, double factor, Side side) {
    Stand soft = Stand.REST.at(side).softened(factor);
    double clear = 0;
    double touches = balance.fan().peakPressure();
    if (balance.at(0, touches, soft).least().gap() > 0) {
      return touches;
    }
    for (int k = 0; k < STEPS; k++) {
      double middle = 0.5 * (clear + touches);
      if (balance.at(0, middle, soft).least().gap() > 0) {
        clear = middle;
      } else {
        touches = middle;
      }
    }
    return clear;
  }

  /** What is left of the fan's flow at a suction when only the other leaks take air. */
  private static double flowAt(PlenumBalance balance, double suction) {
    if (suction >= balance.fan().peakPressure()) {
      return 0;
    }
    double low = balance.fan().peakFlow();
    double high = balance.fan().largestFlow();
    if (balance.fan().pressureAt(high) > suction) {
      low = high;
    } else {
      for (int k = 0; k < STEPS; k++) {
        double middle = 0.5 * (low + high);
        if (balance.fan().pressureAt(middle) > suction) {
          low = middle;
        } else {
          high = middle;
        }
      }
    }
    double other = 0;
    for (OtherLeak leak : balance.machine().openings().leaks()) {
      other += leak.flow(suction, balance.air().density());
    }
    return Math.max(0, low - other);
  }

  private static ValveSetting.Setting setting(
      PlenumBalance balance, ReliefValve valve, double cap, double flow) {
    double jet = valve.dischargeCoefficient() * Math.sqrt(2 * cap / balance.air().density());
    double largest = jet * valve.flowArea(valve.fullLift());
    double lift = Math.min(valve.fullLift(), flow / (jet * valve.seatPerimeter()));
    double preload = Math.max(0, cap * valve.seatArea() - valve.springRate() * lift);
    boolean fits = flow <= largest && cap * valve.seatArea() >= valve.springRate() * lift;
    ReliefValve set = valve.withPreload(preload);
    PlenumBalance with = balance.changed(balance.machine().withValve(set));
    Bands<PlenumState> settled = Settling.settled(with, Stand.REST);
    SettledFigures figures = settled == null ? null : Settling.figures(with, settled);
    PlenumState now = balance.settled(Stand.REST);
    PlenumState free = balance.changed(balance.machine().withValve(null)).settled(Stand.REST);
    double room = free == null ? 0 : Math.max(0, cap - free.suction());
    double softSpring = lift > 0 ? room * valve.seatArea() / lift : 0;
    return new ValveSetting.Setting(
        new ValveSetting.Spring(preload, set.openingSuction(), softSpring),
        new ValveSetting.Seat(fits, lift, largest, flow / jet),
        new ValveSetting.Settled(
            figures == null ? null : figures.get(MachineFigure.SUCTION),
            figures == null ? null : figures.get(MachineFigure.DOWNFORCE)),
        chatter(balance, valve, now));
  }

  private static ValveSetting.Chatter chatter(
      PlenumBalance balance, ReliefValve valve, @Nullable PlenumState state) {
    double omega = Math.sqrt(valve.springRate() / valve.movingMass());
    double frequency = omega / (2 * Math.PI);
    double lift = state == null ? 0 : valve.lift(state.suction());
    if (state == null || lift <= 0 || lift >= valve.fullLift()) {
      return new ValveSetting.Chatter(
          state != null && lift > 0, 0, valve.dampingRatio(), frequency, 0);
    }
    double rho = balance.air().density();
    double p = state.suction();
    double jet = valve.dischargeCoefficient() * Math.sqrt(2 * p / rho);
    double fan = -1 / balance.fan().slopeAt(state.flows().fan());
    double leaks = (state.flows().leak() + state.flows().other()) / (2 * p);
    double own = fan + leaks;
    double bigG = own + state.flows().valve() / (2 * p);
    double g = jet * valve.seatPerimeter();
    double volume = balance.area() * balance.machine().floor().ceilingHeight();
    double filling = volume / (Air.HEAT_RATIO * balance.machine().duty().air().pressure());
    double needed = needed(valve, bigG, g, filling);
    double slope = g * valve.seatArea() / valve.springRate();
    return new ValveSetting.Chatter(
        true, needed, valve.dampingRatio(), frequency, own > 0 ? slope / own : 0);
  }

  /** Damping ratio at which the criterion turns: positive root of a quadratic in c. */
  static double needed(ReliefValve valve, double bigG, double g, double filling) {
    double m = valve.movingMass();
    double k = valve.springRate();
    double a = filling * bigG;
    double b = filling * filling * k + bigG * bigG * m;
    double c = bigG * m * filling * k - filling * m * (bigG * k + g * valve.seatArea());
    double root = (-b + Math.sqrt(b * b - 4 * a * c)) / (2 * a);
    return root / (2 * Math.sqrt(k * m));
  }
}
