package hemline.solver.plenum;

import hemline.shared.problem.NoticeKind;
import hemline.shared.profile.LipProfile;
import hemline.shared.result.Estimate;
import hemline.shared.result.LeakPoint;
import hemline.shared.result.SolveStatus;
import hemline.shared.section.SealSection;
import hemline.shared.vehicle.Machine;
import hemline.solver.flow.CancelToken;
import hemline.solver.flow.ProgressListener;
import hemline.solver.rig.Calibrations;
import hemline.solver.study.LeakStudy;
import hemline.solver.study.RunOptions;
import java.util.ArrayList;
import java.util.Collections;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** Balance of a machine: solves the leaks it needs, then everything that follows from them. */
public final class MachineStudy {
  /** Share of the value by which a stand-in for a failed section may be off. */
  private static final double STAND_IN = 1.0 / 3;

  private final LeakStudy leaks;
  private final Calibrations calibrations;

  public MachineStudy(LeakStudy leaks) {
    this(leaks, Calibrations.NONE);
  }

  /** A study whose leaks are calibrated where their lips were measured. */
  public MachineStudy(LeakStudy leaks, Calibrations calibrations) {
    this.leaks = leaks;
    this.calibrations = calibrations;
  }

  /**
   * The balance.
   *
   * @param machine as read
   * @param others lips to try all round in its place; may be empty
   * @param factor by which the springs may be softer before a lip touches, for the valve setting
   * @param options how sections are solved
   */
  public MachineBalance of(
      Machine machine,
      List<LipProfile> others,
      double factor,
      RunOptions options,
      CancelToken cancel,
      ProgressListener progress) {
    LeakLattice own = new LeakLattice(machine);
    List<LeakLattice> lattices = new ArrayList<>(List.of(own));
    List<SealSection> sections = new ArrayList<>(own.sections());
    for (LipProfile lip : others) {
      LeakLattice lattice = new LeakLattice(atRest(machine, lip));
      lattices.add(lattice);
      sections.addAll(lattice.sections());
    }
    List<LeakPoint> points =
        calibrations.applied(leaks.points(sections, options, cancel, progress), sections);
    if (points.stream().anyMatch(p -> p.status() == SolveStatus.CANCELLED)) {
      List<LeakPoint> once = once(points);
      long done = once.stream().filter(p -> p.status() != SolveStatus.CANCELLED).count();
      return MachineBalance.without(machine, once, NoticeKind.STUDY_STOPPED.of(done, once.size()));
    }
    List<LeakPoint> filled = filled(points);
    if (filled.isEmpty()) {
      return MachineBalance.without(machine, once(points), NoticeKind.LEAK_NONE.of());
    }
    List<List<LeakPoint>> byLattice = new ArrayList<>();
    int from = 0;
    for (LeakLattice lattice : lattices) {
      byLattice.add(filled.subList(from, from + lattice.sections().size()));
      from += lattice.sections().size();
    }
    LipContest contest = new LipContest(machine, new LipContest.Entry("", own, byLattice.get(0)));
    List<LipContest.Entry> entries = new ArrayList<>();
    for (int k = 0; k < others.size(); k++) {
      entries.add(
          new LipContest.Entry(
              others.get(k).name(), lattices.get(k + 1), byLattice.get(k + 1), others.get(k)));
    }
    return balance(
        machine,
        contest.ranked(entries),
        factor,
        own.laws(byLattice.get(0)),
        points.subList(0, own.sections().size()),
        once(points));
  }

  /** Each section once; one asked twice is the same object, which is found faster than its like. */
  private static List<LeakPoint> once(List<LeakPoint> points) {
    Set<LeakPoint> seen = Collections.newSetFromMap(new IdentityHashMap<>());
    return points.stream().filter(seen::add).toList();
  }

  /** The machine at rest with one lip all round. */
  private static Machine atRest(Machine m, LipProfile lip) {
    return m.withFloor(m.floor().withLip(lip)).atTravelSpeed(0);
  }

  private static MachineBalance balance(
      Machine machine,
      List<RankedLip> lips,
      double factor,
      Map<String, LeakLaw> laws,
      List<LeakPoint> own,
      List<LeakPoint> points) {
    PlenumBalance balance = new PlenumBalance(machine, laws);
    List<OperatingPoint> operating = Settling.points(balance, Stand.REST);
    Bands<PlenumState> rest = Settling.settled(balance, Stand.REST);
    boolean travels = machine.duty().travelSpeed() > 0;
    Bands<PlenumState> moving =
        travels ? Settling.settled(balance, Stand.REST.travelling(true)) : null;
    RideHeight height = HeightStability.of(balance, Stand.REST);
    @Nullable Estimate margin = height.heave().factor();
    HoldStudy holding = new HoldStudy(balance);
    List<Hold> holds = holding.all();
    StepStudy steps = rest == null ? null : new StepStudy(balance, rest, holds);
    List<Sensitivity> sensitivities = new ArrayList<>(holding.sensitivities());
    if (steps != null) {
      sensitivities.addAll(steps.sensitivities());
    }
    TradeStudy trades = new TradeStudy(machine, laws);
    return new MachineBalance(
        machine,
        new MachineBalance.Operation(
            operating,
            rest == null ? null : Settling.figures(balance, rest),
            moving == null ? null : Settling.figures(balance, moving),
            trades.fanCurve(),
            trades.leakCurves()),
        new MachineBalance.DrawDown(height, ValveStudy.of(balance, factor, margin)),
        new MachineBalance.Holding(
            holds,
            holding.overTilt(),
            HoldEndStudy.of(balance, holds),
            sensitivities,
            HoldEndStudy.steepestWithoutFan(balance)),
        new MachineBalance.Driving(
            rest == null ? null : ManoeuvreStudy.of(balance, rest),
            TractionBudget.slower(balance, rest, moving),
            steps == null ? List.of() : steps.all()),
        new MachineBalance.Changes(trades.sizes(), lips, trades.overGap(), trades.overSpeed()),
        points,
        BalanceNotices.of(balance, rest, own, operating, travels));
  }

  /**
   * Points with stand-ins for those that failed: the nearest usable one of the same lip and motion
   * in the logarithms of gap and suction. Empty when some point has none.
   */
  private static List<LeakPoint> filled(List<LeakPoint> points) {
    List<LeakPoint> out = new ArrayList<>();
    for (LeakPoint p : points) {
      LeakPoint nearest = p.usable() ? p : nearest(p, points);
      if (nearest == null) {
        return List.of();
      }
      if (p.usable()) {
        out.add(p);
        continue;
      }
      Estimate c = nearest.discharge();
      double width = STAND_IN * Math.abs(c.value());
      out.add(
          p.with(
              new Estimate(
                  c.value(),
                  c.numerical() + width,
                  c.iteration(),
                  c.modelLow(),
                  c.modelHigh(),
                  c.trend()),
              nearest.lift()));
    }
    return out;
  }

  private static @Nullable LeakPoint nearest(LeakPoint p, List<LeakPoint> points) {
    LeakPoint best = null;
    double least = Double.POSITIVE_INFINITY;
    for (LeakPoint o : points) {
      boolean alike =
          o.usable()
              && o.lip().equals(p.lip())
              && o.conditions().groundSpeed() == p.conditions().groundSpeed()
              && o.conditions().spanwiseSpeed() == p.conditions().spanwiseSpeed();
      double distance =
          Math.hypot(
              Math.log(o.conditions().gap() / p.conditions().gap()),
              Math.log(o.conditions().suction() / p.conditions().suction()));
      if (alike && distance < least) {
        least = distance;
        best = o;
      }
    }
    return best;
  }
}
