package hemline.solver.rig;

import hemline.shared.fluid.Expansibility;
import hemline.shared.problem.InputException;
import hemline.shared.rig.Rig;
import hemline.shared.rig.RigReading;
import java.util.ArrayList;
import java.util.List;

/**
 * What the readings of a rig say about the lip, as a function of the errors of its instruments.
 *
 * <pre>  C_d = (q − q_box(Δp)) / (ε h L √(2 Δp / ρ)),  ρ = p / (R T)</pre>
 *
 * <p>q flow as ambient air, q_box leaks of the box at the same suction, ε expansion of the air (one
 * dimension, {@link Expansibility}), h gap, L length of the lip. Every reading is corrected by an
 * absolute and a relative error that all readings of the instrument share, and by one of the
 * resolution for each point.
 */
final class RigModel {
  private final List<RigPoint> points;
  private final int places;
  private final Rig rig;
  private final BoxLeak box;
  private final List<Decay> decays;
  private final double volume;
  private final FlowReader flow;
  private final List<InputQuantity> inputs;
  private final double largestFlow;
  private final double suctionThere;
  private final double scatter;

  /**
   * A model.
   *
   * @throws InputException if a reading gives no flow
   */
  RigModel(Rig rig) throws InputException {
    points = RigPoint.of(rig.of(RigReading.Kind.LIP));
    List<RigPoint> taped = RigPoint.of(rig.of(RigReading.Kind.TAPED));
    places = points.size() + taped.size();
    decays = Decay.of(rig.of(RigReading.Kind.DECAY));
    volume = rig.boxVolume();
    box = new BoxLeak(taped, decays, volume);
    flow = new FlowReader(rig);
    this.rig = rig;
    Errors none = Errors.none(places);
    double largest = 0;
    double suction = 0;
    for (RigReading r : rig.of(RigReading.Kind.LIP)) {
      double out = flow.flow(r, r.suction(), none, 0);
      if (out > largest) {
        largest = out;
        suction = r.suction();
      }
    }
    largestFlow = largest;
    suctionThere = suction;
    List<double[]> groups = new ArrayList<>();
    for (int k = 0; k < points.size(); k++) {
      groups.add(single(k, none));
    }
    Scatter read = Scatter.of(groups);
    scatter = read.share();
    inputs = ErrorList.of(rig, points, taped, box, flow, read);
  }

  /**
   * What one point says.
   *
   * @param gap m
   * @param suction Pa
   * @param discharge discharge coefficient
   */
  record Reduced(double gap, double suction, double discharge) {}

  List<RigPoint> points() {
    return points;
  }

  List<InputQuantity> inputs() {
    return inputs;
  }

  /** Standard deviation of single readings of a point, as a share. */
  double scatter() {
    return scatter;
  }

  /** True where no flow is known, only how it changes from point to point. */
  boolean relative() {
    return flow.relative();
  }

  /** Leaks by the runs in which the suction decayed. */
  List<DecayLeak> decays() {
    List<DecayLeak> leaks = new ArrayList<>();
    for (Decay decay : decays) {
      BoxLeak alone =
          new BoxLeak(List.of(), List.of(new Decay(Double.NaN, decay.readings())), volume);
      List<InputQuantity> errors =
          ErrorList.of(rig, List.of(), List.of(), alone, flow, Scatter.NONE);
      Propagated area =
          Propagation.of(errors, x -> new double[] {decay.area(flow, new Errors(x), volume)});
      leaks.add(
          new DecayLeak(
              decay.gap(),
              decay.readings().size(),
              area.value(0),
              area.expanded(0, ComparisonStudy.PROBABILITY)));
    }
    return leaks;
  }

  /** A size of a fault that is small but matters, SI. */
  double scale(Fault fault) {
    RigPoint first = points.get(0);
    return switch (fault) {
      case EXTRA_AREA -> 0.01 * first.gap() * flow.lipLength(Errors.none(places));
      case GAP_OFFSET -> 0.01 * first.gap();
      case GAUGE_ZERO -> 0.01 * first.suction();
      case FLOW_SCALE, HOSE -> 0.01;
    };
  }

  /** Number of errors that the inputs list. */
  int size() {
    return inputs.size();
  }

  /** Discharge coefficients of the single readings of a point. */
  private double[] single(int point, Errors errors) {
    BoxLeak.Law leak = box.law(flow, errors, points.size());
    return points.get(point).readings().stream()
        .mapToDouble(r -> reduced(r, point, errors, leak, FaultSizes.NONE).discharge())
        .toArray();
  }

  /** All points, once errors are taken off. */
  List<Reduced> at(Errors errors) {
    return at(errors, FaultSizes.NONE);
  }

  /** All points, once errors and faults are taken off. */
  List<Reduced> at(Errors errors, FaultSizes faults) {
    BoxLeak.Law leak = box.law(flow, errors, points.size());
    List<Reduced> all = new ArrayList<>();
    for (int k = 0; k < points.size(); k++) {
      double gap = 0;
      double suction = 0;
      double discharge = 0;
      int n = points.get(k).readings().size();
      for (RigReading r : points.get(k).readings()) {
        Reduced one = reduced(r, k, errors, leak, faults);
        gap += one.gap() / n;
        suction += one.suction() / n;
        discharge += one.discharge() / n;
      }
      all.add(new Reduced(gap, suction, discharge * (1 + errors.of(k, Errors.Own.SCATTER))));
    }
    return all;
  }

  private Reduced reduced(RigReading r, int place, Errors e, BoxLeak.Law leak, FaultSizes faults) {
    double gap = flow.gap(r, e, place) + faults.of(Fault.GAP_OFFSET);
    double read = flow.suction(r, e, place) - faults.of(Fault.GAUGE_ZERO);
    double suction = read;
    double out = flow.flow(r, read, e, place);
    if (faults.of(Fault.HOSE) != 0) {
      double part = out / largestFlow;
      double lost = faults.of(Fault.HOSE) * suctionThere * part * part;
      if (Double.isNaN(r.flow())) {
        // the fan works against the hose too
        out = flow.flow(r, read + lost, e, place);
      } else {
        suction = read - lost;
      }
    }
    out /= 1 + faults.of(Fault.FLOW_SCALE);
    double density = flow.density(r, e);
    double jet = Expansibility.jetSpeed(suction, density);
    double area = gap * flow.lipLength(e);
    double through = out - leak.at(suction) - faults.of(Fault.EXTRA_AREA) * jet;
    double factor = Expansibility.factor(suction, flow.barometer(r, e));
    double doubt = 1 + (1 - factor) * e.of(Errors.Shared.EXPANSION);
    return new Reduced(gap, suction, through / (factor * doubt * area * jet));
  }
}
