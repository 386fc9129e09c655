package hemline.solver.plenum;

import hemline.shared.problem.Notice;
import hemline.shared.result.Estimate;
import hemline.shared.vehicle.Machine;
import hemline.shared.vehicle.WheelLoads;
import java.util.ArrayList;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.function.ToDoubleFunction;
import org.jspecify.annotations.Nullable;

/**
 * Whether a machine holds still on level ground, slope, wall and ceiling, and where on the whole
 * sphere of tilts and headings it is closest to letting go.
 *
 * <p>The springs see weight and suction of every attitude, so gaps, suction and downforce are
 * solved anew for each.
 */
final class HoldStudy {
  static final int TILTS = 24;
  private static final int ROUNDS = 2;
  private static final double SAME_TILT = Math.toRadians(0.5);

  private final Machine machine;
  private final HoldSearch search;
  private final InputBands inputs;
  private final Map<String, HoldSearch.Worst> found = new LinkedHashMap<>();
  private final List<HoldSearch.Worst> byTilt = new ArrayList<>();

  HoldStudy(PlenumBalance balance) {
    this(balance, true);
  }

  /**
   * A study.
   *
   * @param powered false when only parked brakes hold
   */
  HoldStudy(PlenumBalance balance, boolean powered) {
    machine = balance.machine();
    search = HoldSearch.whole(new HoldStatics(balance, powered));
    inputs = new InputBands(balance, powered);
  }

  /** Level, slope, wall, ceiling and the worst of all, with the seal whole. */
  List<Hold> all() {
    List<Hold> holds = new ArrayList<>();
    found.clear();
    found.put("level", search.at(0));
    found.put("slope", search.at(machine.duty().slope()));
    found.put("wall", search.at(0.5 * Math.PI));
    found.put("ceiling", search.at(Math.PI));
    found.put("worst", worst());
    found.forEach((place, worst) -> holds.add(told(place, worst, search, inputs)));
    return holds;
  }

  /** What each of them hangs on, as last told; level ground left out. */
  List<Sensitivity> sensitivities() {
    SensitivityStudy study = new SensitivityStudy(search.statics().balance());
    // each knows nothing of the others
    return found.keySet().stream().filter(place -> !place.equals("level")).toList().parallelStream()
        .map(place -> study.whole(place, Objects.requireNonNull(found.get(place))))
        .filter(s -> !s.effects().isEmpty())
        .toList();
  }

  /** Least margins from level ground to the ceiling. */
  List<HoldPoint> overTilt() {
    List<HoldPoint> out = new ArrayList<>();
    for (HoldSearch.Worst w : byTilt()) {
      HoldSearch.Found f = w.worst();
      Estimate margin = HoldSearch.least(List.of(search.bands(f)), w);
      out.add(
          new HoldPoint(
              f.attitude().tilt(), f.attitude().heading(), limitedBy(f.margins()), margin));
    }
    return out;
  }

  private List<HoldSearch.Worst> byTilt() {
    if (byTilt.isEmpty()) {
      for (int k = 0; k <= TILTS; k++) {
        byTilt.add(search.among(search.headings(Math.PI * k / TILTS)));
      }
    }
    return byTilt;
  }

  /** The worst attitude of all for every margin, closed in over tilt and heading in turn. */
  private HoldSearch.Worst worst() {
    List<HoldSearch.Found> looked = new ArrayList<>();
    byTilt().forEach(w -> looked.addAll(w.looked()));
    List<HoldSearch.Found> columns = new ArrayList<>();
    for (ToDoubleFunction<HoldStatics.Margins> column : HoldSearch.COLUMNS) {
      HoldSearch.Found least = HoldSearch.least(column, looked);
      boolean exact =
          !least.margins().settles() || !Double.isFinite(column.applyAsDouble(least.margins()));
      columns.add(exact ? least : closedIn(column, least));
    }
    return HoldSearch.of(columns, looked);
  }

  private HoldSearch.Found closedIn(
      ToDoubleFunction<HoldStatics.Margins> column, HoldSearch.Found start) {
    HoldSearch.Found f = start;
    double step = Math.PI / TILTS;
    for (int k = 0; k < ROUNDS; k++) {
      double heading = f.attitude().downhill();
      f =
          search.closedIn(
              column,
              f,
              Math.max(0, f.attitude().tilt() - step),
              Math.min(Math.PI, f.attitude().tilt() + step),
              t -> new Attitude(t, heading));
      f = search.closedIn(column, f);
    }
    return f;
  }

  private static Hold told(
      String place, HoldSearch.Worst worst, HoldSearch search, InputBands inputs) {
    return told(place, worst, search, inputs, null);
  }

  /**
   * What is told of the worst heading of one tilt.
   *
   * @param crossing ground under the seal; null for even ground
   */
  static Hold told(
      String place,
      HoldSearch.Worst worst,
      HoldSearch search,
      @Nullable InputBands inputs,
      @Nullable Crossing crossing) {
    HoldSearch.Found f = worst.worst();
    HoldStatics.Margins value = f.margins();
    Map<HoldSearch.Found, Bands<HoldStatics.Margins>> known = new IdentityHashMap<>();
    List<Bands<HoldStatics.Margins>> b =
        worst.columns().stream().map(c -> known.computeIfAbsent(c, search::bands)).toList();
    Bands<HoldStatics.Margins> here = known.computeIfAbsent(f, search::bands);
    Estimate margin = HoldSearch.least(b, worst);
    Estimate total = margin == null || inputs == null ? margin : inputs.total(margin, worst);
    Estimate sliding = HoldSearch.estimate(b.get(4), HoldStatics.Margins::sliding);
    Machine machine = search.statics().balance().machine();
    double wanted = machine.duty().terms().safetyFactor();
    boolean enough = value.settles() && (total == null || total.low() >= wanted);
    List<Notice> reasons =
        enough
            ? HoldLimits.overstepped(
                search.statics().balance(),
                worst.looked().stream().map(HoldSearch.Found::state).toList(),
                crossing)
            : List.of();
    List<Estimate> axles = new ArrayList<>();
    for (int i = 0; i < value.loads().axles().length; i++) {
      int axle = i;
      axles.add(here.of(m -> m.loads().axles()[axle]));
    }
    return new Hold(
        new Hold.Place(
            place, f.attitude().tilt(), f.attitude().heading(), f.attitude().noseFromUphill()),
        new Hold.Judgement(
            verdict(enough, reasons, sliding),
            reasons,
            margin == null ? "nothing" : limitedBy(value)),
        new Hold.Margins(
            margin,
            total,
            HoldSearch.estimate(b.get(0), HoldStatics.Margins::slip),
            sliding,
            HoldSearch.estimate(b.get(1), HoldStatics.Margins::tip),
            HoldSearch.estimate(b.get(2), HoldStatics.Margins::lift),
            HoldSearch.estimate(b.get(3), HoldStatics.Margins::peel)),
        new Hold.Headings(
            heading(worst, 0), heading(worst, 1), heading(worst, 2), heading(worst, 3)),
        axles,
        free(machine, value));
  }

  /** Heading of a column, with its tilt where that is not the worst one's. */
  private static String heading(HoldSearch.Worst worst, int column) {
    Attitude a = worst.columns().get(column).attitude();
    boolean same = Math.abs(a.tilt() - worst.worst().attitude().tilt()) < SAME_TILT;
    return same ? a.heading() : Math.round(Math.toDegrees(a.tilt())) + "\u00b0, " + a.heading();
  }

  private static HoldVerdict verdict(
      boolean enough, List<Notice> reasons, @Nullable Estimate sliding) {
    if (!enough) {
      return HoldVerdict.NO;
    }
    if (!reasons.isEmpty()) {
      return HoldVerdict.NOT_SHOWN;
    }
    return sliding == null || sliding.low() >= 1 ? HoldVerdict.YES : HoldVerdict.UNTIL_IT_SLIPS;
  }

  private static List<String> free(Machine machine, HoldStatics.Margins m) {
    List<String> out = new ArrayList<>();
    List<WheelLoads.Wheel> wheels = WheelLoads.wheels(machine.running().axles());
    for (int i = 0; m.settles() && i < wheels.size(); i++) {
      if (m.loads().wheels()[i] <= 0) {
        WheelLoads.Wheel w = wheels.get(i);
        String side = w.y() > 0 ? " left" : w.y() < 0 ? " right" : "";
        out.add(machine.running().axles().get(w.axle()).name() + side);
      }
    }
    return out;
  }

  /** Name of the smallest margin. */
  static String limitedBy(HoldStatics.Margins m) {
    double least = m.least();
    double alike = least + 1e-6 * Math.abs(least);
    if (!m.settles()) {
      return "no balance";
    }
    if (!Double.isFinite(least)) {
      return "nothing";
    }
    return least == m.slip()
        ? m.brakes() ? "brakes" : "slip"
        : least == m.tip() ? "tip" : m.peel() > alike ? "axle lift" : "peel-off";
  }
}
