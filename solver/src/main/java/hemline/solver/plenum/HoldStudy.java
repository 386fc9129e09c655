package hemline.solver.plenum;

import hemline.shared.result.Estimate;
import hemline.shared.vehicle.Machine;
import hemline.shared.vehicle.WheelLoads;
import java.util.ArrayList;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * Whether a machine holds still on level ground, slope, wall and ceiling, and where on the whole
 * sphere of tilts and headings it is closest to letting go.
 *
 * <p>The springs see weight and suction of every attitude, so gaps, suction and downforce are
 * solved anew for each.
 */
final class HoldStudy {
  private static final int TILTS = 24;
  private static final int ROUNDS = 2;

  private final Machine machine;
  private final HoldSearch search;
  private final InputBands inputs;
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
    holds.add(at("level", 0));
    holds.add(at("slope", machine.slope()));
    holds.add(at("wall", 0.5 * Math.PI));
    holds.add(at("ceiling", Math.PI));
    holds.add(told("worst", worst(), search, inputs));
    return holds;
  }

  /** The worst heading on ground of one tilt. */
  Hold at(String place, double tilt) {
    return told(place, search.at(tilt), search, inputs);
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

  /** The worst attitude of all, closed in over tilt and heading in turn. */
  private HoldSearch.Worst worst() {
    HoldSearch.Worst least = byTilt().get(0);
    for (HoldSearch.Worst w : byTilt()) {
      least = w.least() < least.least() ? w : least;
    }
    HoldSearch.Found f = least.worst();
    if (!f.margins().settles() || !Double.isFinite(f.margins().least())) {
      return least;
    }
    for (int k = 0; k < ROUNDS; k++) {
      double heading = f.attitude().downhill();
      double step = Math.PI / TILTS;
      f =
          search.closedIn(
              HoldStatics.Margins::least,
              f,
              Math.max(0, f.attitude().tilt() - step),
              Math.min(Math.PI, f.attitude().tilt() + step),
              t -> new Attitude(t, heading));
      HoldSearch.Worst here = search.at(f.attitude().tilt());
      f = here.least() < f.margins().least() ? here.worst() : f;
    }
    HoldSearch.Worst here = search.at(f.attitude().tilt());
    return here.least() <= f.margins().least()
        ? here
        : new HoldSearch.Worst(List.of(f, f, f, f), f);
  }

  /** What is told of the worst heading of one tilt. */
  static Hold told(
      String place, HoldSearch.Worst worst, HoldSearch search, @Nullable InputBands inputs) {
    HoldSearch.Found f = worst.worst();
    HoldStatics.Margins value = f.margins();
    Map<HoldSearch.Found, Bands<HoldStatics.Margins>> known = new IdentityHashMap<>();
    List<Bands<HoldStatics.Margins>> b =
        worst.columns().stream().map(c -> known.computeIfAbsent(c, search::bands)).toList();
    Bands<HoldStatics.Margins> here = known.computeIfAbsent(f, search::bands);
    Estimate margin = HoldSearch.least(b, worst);
    Estimate total = margin == null || inputs == null ? margin : inputs.total(margin, worst);
    Estimate sliding = HoldSearch.estimate(b.get(0), HoldStatics.Margins::sliding);
    Machine machine = search.statics().balance().machine();
    double wanted = machine.terms().safetyFactor();
    boolean enough = value.settles() && (total == null || total.low() >= wanted);
    PlenumState state = f.state();
    List<String> reasons =
        enough && state != null
            ? HoldLimits.overstepped(search.statics().balance(), state).stream()
                .map(HoldLimits.Limit::text)
                .toList()
            : List.of();
    List<Estimate> axles = new ArrayList<>();
    for (int i = 0; i < value.axles().length; i++) {
      int axle = i;
      axles.add(here.of(m -> m.axles()[axle]));
    }
    return new Hold(
        place,
        f.attitude().tilt(),
        f.attitude().heading(),
        f.attitude().noseFromUphill(),
        verdict(enough, reasons, sliding),
        reasons,
        margin == null ? "nothing" : limitedBy(value),
        margin,
        total,
        HoldSearch.estimate(b.get(0), HoldStatics.Margins::slip),
        sliding,
        HoldSearch.estimate(b.get(1), HoldStatics.Margins::tip),
        HoldSearch.estimate(b.get(2), HoldStatics.Margins::lift),
        HoldSearch.estimate(b.get(3), HoldStatics.Margins::peel),
        new Hold.Headings(
            worst.columns().get(0).attitude().heading(),
            worst.columns().get(1).attitude().heading(),
            worst.columns().get(2).attitude().heading(),
            worst.columns().get(3).attitude().heading()),
        axles,
        free(machine, value),
        inputs == null ? "" : inputs.mostSensitive(worst));
  }

  private static HoldVerdict verdict(
      boolean enough, List<String> reasons, @Nullable Estimate sliding) {
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
      if (m.wheels()[i] <= 0) {
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
        ? "slip"
        : least == m.tip() ? "tip" : m.peel() > alike ? "axle lift" : "peel-off";
  }
}
