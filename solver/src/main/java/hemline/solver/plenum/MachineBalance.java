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
 * @param complete false when it was stopped or leaks could not be solved; the rest is then empty
 * @param operatingPoints at rest on level ground, by rising fan flow
 * @param rest figures where it settles at rest; null when it does not settle
 * @param travelling the same at the travel speed; null when it has none or does not settle
 * @param rideHeight margin against being drawn down; null when incomplete
 * @param valve setting of the relief valve; null when incomplete
 * @param holds level, slope, wall, ceiling and the worst of all tilts and headings
 * @param holdOverTilt least margin from level ground to the ceiling
 * @param holdEnds what ends each of them, where it holds
 * @param sensitivities what each tilted hold, and the least hold over dips and ledges, hangs on
 * @param steepestWithoutFan slope on which parked brakes hold with the fan off, rad
 * @param manoeuvres climbing, braking, turning; null when it does not settle
 * @param launch acceleration; null when it does not settle
 * @param steps dip under each edge; empty when none is asked
 * @param trades one change at a time, as it is first
 * @param lips the machine with other lips, by rank; empty when none are asked
 * @param fanCurve as it runs
 * @param leakCurves all leaks at fixed gaps
 * @param overGap downforce over the factor of the static gaps
 * @param overSpeed downforce over the factor of the fan speed
 * @param leakPoints sections behind the leak laws, each once
 * @param notices warnings
 */
public record MachineBalance(
    Machine machine,
    boolean complete,
    List<OperatingPoint> operatingPoints,
    @Nullable SettledFigures rest,
    @Nullable SettledFigures travelling,
    @Nullable RideHeight rideHeight,
    @Nullable ValveSetting valve,
    List<Hold> holds,
    List<HoldPoint> holdOverTilt,
    List<HoldEnd> holdEnds,
    List<Sensitivity> sensitivities,
    double steepestWithoutFan,
    @Nullable Manoeuvres manoeuvres,
    @Nullable Launch launch,
    List<StepCrossing> steps,
    List<Trade> trades,
    List<RankedLip> lips,
    @Nullable FlowCurve fanCurve,
    List<FlowCurve> leakCurves,
    List<DownforcePoint> overGap,
    List<DownforcePoint> overSpeed,
    List<LeakPoint> leakPoints,
    List<Notice> notices) {
  public MachineBalance {
    operatingPoints = List.copyOf(operatingPoints);
    holds = List.copyOf(holds);
    holdOverTilt = List.copyOf(holdOverTilt);
    holdEnds = List.copyOf(holdEnds);
    sensitivities = List.copyOf(sensitivities);
    steps = List.copyOf(steps);
    trades = List.copyOf(trades);
    lips = List.copyOf(lips);
    leakCurves = List.copyOf(leakCurves);
    overGap = List.copyOf(overGap);
    overSpeed = List.copyOf(overSpeed);
    leakPoints = List.copyOf(leakPoints);
    notices = List.copyOf(notices);
  }

  /** A balance without figures, because the leaks are not all known. */
  static MachineBalance without(Machine machine, List<LeakPoint> points, Notice reason) {
    return new MachineBalance(
        machine,
        false,
        List.of(),
        null,
        null,
        null,
        null,
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        0,
        null,
        null,
        List.of(),
        List.of(),
        List.of(),
        null,
        List.of(),
        List.of(),
        List.of(),
        points,
        List.of(reason));
  }
}
