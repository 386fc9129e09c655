package hemline.solver.rig;

import hemline.shared.rig.RigReading;
import java.util.ArrayList;
import java.util.List;

/**
 * Suction of a shut box that decays through a leak.
 *
 * <p>Mass balance of a box of volume V with air of polytropic exponent κ (1 isothermal, 1.4
 * adiabatic; taken as 1.2 within 0.2) and a leak of effective area A:
 *
 * <pre>
 *   dΔp/dt = −κ p₀ A √(2 Δp/ρ) / V,  so √Δp falls along a straight line of slope −κ p₀ A √(2/ρ) / (2 V)
 * </pre>
 *
 * @param gap m; not a number where the lip was taped shut
 * @param readings of one run, by rising time, at least 3
 */
record Decay(double gap, List<RigReading> readings) {
  private static final int FEWEST = 3;
  private static final double POLYTROPIC = 1.2;

  /** Half-width of the polytropic exponent. */
  static final double POLYTROPIC_SPREAD = 0.2;

  /** Runs of a rig: a new one begins where the gap changes or the time falls. */
  static List<Decay> of(List<RigReading> readings) {
    List<Decay> runs = new ArrayList<>();
    List<RigReading> run = new ArrayList<>();
    for (RigReading r : readings) {
      if (!run.isEmpty()) {
        RigReading last = run.get(run.size() - 1);
        if (Double.compare(last.gap(), r.gap()) != 0 || r.time() <= last.time()) {
          close(run, runs);
        }
      }
      run.add(r);
    }
    close(run, runs);
    return runs;
  }

  private static void close(List<RigReading> run, List<Decay> runs) {
    if (run.size() >= FEWEST) {
      runs.add(new Decay(run.get(0).gap(), List.copyOf(run)));
    }
    run.clear();
  }

  boolean taped() {
    return Double.isNaN(gap);
  }

  /** Effective area of the leak, m², once errors are taken off. */
  double area(FlowReader flow, Errors e, double volume) {
    double[] line = line(flow, e);
    RigReading first = readings.get(0);
    double kappa = POLYTROPIC + e.of(Errors.Shared.POLYTROPIC);
    double box =
        volume * (1 + e.of(Errors.Shared.BOX_VOLUME_SHARE)) + e.of(Errors.Shared.BOX_VOLUME_ZERO);
    double jet = Math.sqrt(2 / flow.density(first, e));
    double slope = line[0] * (1 + e.of(Errors.Shared.DECAY));
    return -2 * box * slope / (kappa * flow.barometer(first, e) * jet);
  }

  /** Standard error of the slope over the slope, from what the readings leave of the line. */
  double scatter(FlowReader flow) {
    double[] line = line(flow, Errors.none(0));
    return Math.abs(line[1] / line[0]);
  }

  /** Degrees of freedom of that. */
  double degreesOfFreedom() {
    return readings.size() - 2;
  }

  /** Slope of √Δp over time by least squares, and its standard error. */
  private double[] line(FlowReader flow, Errors e) {
    int n = readings.size();
    double[] t = new double[n];
    double[] y = new double[n];
    double tm = 0;
    double ym = 0;
    for (int k = 0; k < n; k++) {
      RigReading r = readings.get(k);
      t[k] = r.time() * (1 + e.of(Errors.Shared.TIME_SHARE));
      y[k] = Math.sqrt(Math.max(0, flow.sharedSuction(r, e)));
      tm += t[k] / n;
      ym += y[k] / n;
    }
    double tt = 0;
    double ty = 0;
    double yy = 0;
    for (int k = 0; k < n; k++) {
      tt += (t[k] - tm) * (t[k] - tm);
      ty += (t[k] - tm) * (y[k] - ym);
      yy += (y[k] - ym) * (y[k] - ym);
    }
    double slope = ty / tt;
    double left = Math.max(0, yy - slope * ty);
    return new double[] {slope, Math.sqrt(left / (n - 2) / tt)};
  }
}
