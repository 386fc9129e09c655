package hemline.solver.plenum;

import hemline.shared.problem.Notice;
import hemline.shared.result.LeakPoint;
import hemline.shared.vehicle.Machine;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Everything the balance of a machine tells.
 *
 * @param machine as read
 * @param operation where it settles at rest and when it travels
 * @param drawDown how far it is from being drawn down; without parts when incomplete
 * @param holding on tilted ground
 * @param driving climbing, braking, turning and crossing
 * @param changes what other sizes and lips would give
 * @param leakPoints sections behind the leak laws, each once
 * @param notices warnings
 */
public record MachineBalance(
    Machine machine,
    Operation operation,
    DrawDown drawDown,
    Holding holding,
    Driving driving,
    Changes changes,
    List<LeakPoint> leakPoints,
    List<Notice> notices) {

  /**
   * The fan against the leaks on level ground.
   *
   * @param points at rest, by rising fan flow
   * @param rest figures where it settles at rest; null when it does not settle
   * @param travelling the same at the travel speed; null when it has none or does not settle
   * @param fanCurve as it runs; null when incomplete
   * @param leakCurves all leaks at fixed gaps
   */
  public record Operation(
      List<OperatingPoint> points,
      @Nullable SettledFigures rest,
      @Nullable SettledFigures travelling,
      @Nullable FlowCurve fanCurve,
      List<FlowCurve> leakCurves) {
    static final Operation NONE = new Operation(List.of(), null, null, null, List.of());

    public Operation {
      points = List.copyOf(points);
      leakCurves = List.copyOf(leakCurves);
    }
  }

  /**
   * How far the machine is from being drawn down to the ground.
   *
   * @param margin against it; null when incomplete
   * @param valve setting of the relief valve that guards it; null when incomplete
   */
  public record DrawDown(@Nullable RideHeight margin, @Nullable ValveSetting valve) {}

  /**
   * Whether it stays on tilted ground.
   *
   * @param holds level, slope, wall, ceiling and the worst of all tilts and headings
   * @param overTilt least margin from level ground to the ceiling
   * @param ends what ends each of the holds, where it holds
   * @param sensitivities what each tilted hold, and the least hold over dips and ledges, hangs on
   * @param steepestWithoutFan slope on which parked brakes hold with the fan off, rad
   */
  public record Holding(
      List<Hold> holds,
      List<HoldPoint> overTilt,
      List<HoldEnd> ends,
      List<Sensitivity> sensitivities,
      double steepestWithoutFan) {
    static final Holding NONE = new Holding(List.of(), List.of(), List.of(), List.of(), 0);

    public Holding {
      holds = List.copyOf(holds);
      overTilt = List.copyOf(overTilt);
      ends = List.copyOf(ends);
      sensitivities = List.copyOf(sensitivities);
    }
  }

  /**
   * The machine on the move.
   *
   * @param manoeuvres climbing, braking, turning; null when it does not settle
   * @param launch acceleration; null when it does not settle
   * @param steps dip under each edge; empty when none is asked
   */
  public record Driving(
      @Nullable Manoeuvres manoeuvres, @Nullable Launch launch, List<StepCrossing> steps) {
    static final Driving NONE = new Driving(null, null, List.of());

    public Driving {
      steps = List.copyOf(steps);
    }
  }

  /**
   * What changes of the machine would give.
   *
   * @param trades one change at a time, as it is first
   * @param lips the machine with other lips, by rank; empty when none are asked
   * @param overGap downforce over the factor of the static gaps
   * @param overSpeed downforce over the factor of the fan speed
   */
  public record Changes(
      List<Trade> trades,
      List<RankedLip> lips,
      List<DownforcePoint> overGap,
      List<DownforcePoint> overSpeed) {
    static final Changes NONE = new Changes(List.of(), List.of(), List.of(), List.of());

    public Changes {
      trades = List.copyOf(trades);
      lips = List.copyOf(lips);
      overGap = List.copyOf(overGap);
      overSpeed = List.copyOf(overSpeed);
    }
  }

  public MachineBalance {
    leakPoints = List.copyOf(leakPoints);
    notices = List.copyOf(notices);
  }

  /** False when it was stopped or leaks could not be solved; there are no figures then. */
  public boolean complete() {
    return drawDown.margin != null;
  }

  /** A balance without figures, because the leaks are not all known. */
  static MachineBalance without(Machine machine, List<LeakPoint> points, Notice reason) {
    return new MachineBalance(
        machine,
        Operation.NONE,
        new DrawDown(null, null),
        Holding.NONE,
        Driving.NONE,
        Changes.NONE,
        points,
        List.of(reason));
  }
}
