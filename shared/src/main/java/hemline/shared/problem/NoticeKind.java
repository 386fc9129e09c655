package hemline.shared.problem;

import java.util.Arrays;
import java.util.List;

/**
 * What a notice can say. Kinds say what each means and its values in their order: names, then
 * numbers. Kinds whose sentences differ in a part alone share a code. Files keep the names of these
 * constants: add, never rename. The words are the viewer's.
 */
public enum NoticeKind {
  // ---- a section

  /** Stopped without a usable flow. */
  SOLVE_STOPPED_EARLY("solve.cancelled", 0, 0),
  /** Stopped with figures of some grids; grids with a flow, all grids. */
  SOLVE_STOPPED_PARTLY("solve.cancelled", 0, 2),
  /** Stopped while it was solved. */
  SOLVE_STOPPED("solve.cancelled", 0, 0),
  /** Stopped before it was begun. */
  SOLVE_NOT_BEGUN("solve.cancelled", 0, 0),
  /** A study was stopped; sections solved and kept, all sections. */
  STUDY_STOPPED("solve.cancelled", 0, 2),
  /** No grid could be solved. */
  SOLVE_NO_GRID("solve.failed", 0, 0),
  /** No grid has a usable flow; grids solved. */
  SOLVE_NO_FLOW("solve.failed", 0, 1),
  /** The solver broke off; its reason, a clause. */
  SOLVE_BROKEN("solve.failed", 1, 0),
  /** The flow may be laminar or turbulent; gap Reynolds number, lower and upper end of the band. */
  REGIME_TRANSITION("regime.transition", 0, 3),
  /** The same where the bands of the figures hold both flows; values likewise. */
  REGIME_SPANNED("regime.transition", 0, 3),
  /** The same where they reach towards the other flow; also the share of the way. */
  REGIME_REACHED("regime.transition", 0, 4),
  /** The flow model that belongs to the flow gave none; that one, the one used instead. */
  MODEL_LOST("model.lost", 2, 0),
  /** The flow model solved to compare gave no usable flow; that one. */
  MODEL_MISSING("model.missing", 1, 0),
  /** The finest grid holds two flows; C_d of the figures, C_d of the other. */
  FLOW_TWO_FOUND("flow.two-found", 0, 2),
  /** Ground against the leak, where two flows are possible; its speed over that of the jet. */
  FLOW_TWO_BRANCHES("flow.two-branches", 0, 1),
  /** The flow settled with more relaxation only; passes. */
  FLOW_HARD("flow.hard", 0, 1),
  /** No steady flow; key of the ending, passes per cycle, movement of the leak and leak, m²/s. */
  FLOW_UNSTEADY("flow.unsteady", 1, 3),
  /** The jet is too fast for incompressible air; Mach number, share of the leak that is missing. */
  JET_MACH("jet.mach", 0, 2),
  /** Some grids gave no usable flow; those that did, all grids. */
  GRIDS_INCOMPLETE("grids.incomplete", 0, 2),
  /** The same where the finest is among those that did not; values likewise. */
  GRIDS_WITHOUT_FINEST("grids.incomplete", 0, 2),
  /** The leak settles slowly over the grids. */
  GRIDS_SLOW("grids.slow", 0, 0),
  /** The leak does not settle over the grids. */
  GRIDS_DIVERGING("grids.diverging", 0, 0),
  /** A detail is left out of the grids; size below which, its x and y, m. */
  GRIDS_DETAIL("grids.detail", 0, 3),
  /** Several are; their number, then as for one, the place of the first. */
  GRIDS_DETAILS("grids.detail", 0, 4),
  /**
   * Figures hold a calibration; rig, factor, its half-width, offset of C_d, its half-width, points,
   * least and largest gap, m, least and largest suction, Pa, 1 for invented readings, else 0.
   */
  CALIBRATION_USED("calibration.used", 1, 10),
  /** The same for a section beyond what was measured; values likewise, as below. */
  CALIBRATION_BEYOND("calibration.used", 1, 10),
  /** The same for all sections of a lip in a ranking. */
  CALIBRATION_RANKED("calibration.used", 1, 10),
  /** What a measurement teaches. */
  CALIBRATION_LEARNT("calibration.used", 1, 10),
  /** A doubt of a search: no usable flow. */
  SEARCH_NO_FLOW("search.no-flow", 0, 0),
  /** A doubt of a search: no usable flow on the finest of its grids. */
  SEARCH_NOT_FINEST("search.not-finest", 0, 0),

  // ---- a ranking; what many sections share: those sections, all, least and largest gap, m

  /** Transition band. */
  MANY_TRANSITION("regime.transition", 0, 4),
  /** The leak does not settle over the grids. */
  MANY_DIVERGING("grids.diverging", 0, 4),
  /** The leak settles slowly over the grids. */
  MANY_SLOW("grids.slow", 0, 4),
  /** Details are left out of the grids. */
  MANY_DETAIL("grids.detail", 0, 4),
  /** Grids without a usable flow. */
  MANY_INCOMPLETE("grids.incomplete", 0, 4),
  /** No flow of the model solved to compare. */
  MANY_MISSING("model.missing", 0, 4),
  /** Fast jets. */
  MANY_MACH("jet.mach", 0, 4),
  /** A lip has no place; it, the baseline. */
  RANKING_LEFT_OUT("ranking.left-out", 2, 0),
  /** A lip cannot be compared at some gaps; pairs of it and a gap, m. */
  RANKING_GAPS_MISSING("ranking.gaps-missing"),
  /** Sections were not solved; pairs of a lip and a gap, m, lip by lip. */
  RANKING_CANCELLED("ranking.cancelled"),
  /** Sections have no steady flow; pairs likewise. */
  RANKING_UNSTEADY("ranking.unsteady"),
  /** Two lips may swap places; they, the gap, m. */
  RANKING_SWAP("ranking.crossings", 2, 1),
  /** Several pairs may; their number. */
  RANKING_SWAPS("ranking.crossings", 0, 1),

  // ---- a machine

  /** No section has a usable flow. */
  LEAK_NONE("leak.failed", 0, 0),
  /** Sections without a usable flow; those, all. */
  LEAK_FAILED("leak.failed", 0, 2),
  /** Sections without a steady flow; those, all. */
  LEAK_UNSTEADY("leak.unsteady", 0, 2),
  /** Leaks may be laminar or turbulent; least, largest gap Reynolds number, ends of the band. */
  LEAK_TRANSITION("regime.transition", 0, 4),
  /** As {@link #JET_MACH}. */
  LEAK_MACH("jet.mach", 0, 2),
  /** A gap or the suction lies beyond the solved sections. */
  LEAK_BEYOND("leak.beyond", 0, 0),
  /** The machine is faster than the jets. */
  LEAK_FAST("leak.fast", 0, 0),
  /** Air under the floor takes suction; share of it. */
  PLENUM_LOW("plenum.low", 0, 1),
  /** Drawn down to the ground. */
  MACHINE_DOWN("machine.down", 0, 0),
  /** The leaks are beyond the fan's curve. */
  MACHINE_LEAKS("machine.leaks", 0, 0),
  /** No stable operating point. */
  MACHINE_UNSTABLE("machine.unstable", 0, 0),
  /** It does not settle with the leaks at the low end of their band. */
  MACHINE_EDGE_LOW("machine.edge", 0, 0),
  /** The same at the high end. */
  MACHINE_EDGE_HIGH("machine.edge", 0, 0),
  /** The suction lifts an axle; its name. */
  MACHINE_LIFTS("machine.lifts", 1, 0),
  /** The fan works on the stall side of its curve. */
  FAN_STALLED("fan.stall", 0, 0),
  /** The fan works near its stall; share of the flow at the peak that it has more. */
  FAN_NEAR_STALL("fan.stall", 0, 1),
  /** Several stable operating points; their number. */
  FAN_SEVERAL("fan.several", 0, 1),
  /** The fan runs fast; share of its largest speed. */
  FAN_SPEED("fan.speed", 0, 1),

  // ---- why no hold is shown

  /** The jet is too fast; Mach number. */
  HOLD_MACH("hold.mach", 0, 1),
  /** A gap is too thin; it, m. */
  HOLD_THIN("hold.thin", 0, 1),
  /** The relief valve is at its stop. */
  HOLD_VALVE("hold.valve", 0, 0),
  /** The fan cannot blow through its outlet. */
  FAN_OUTLET("fan.outlet", 0, 0),
  /** Too much for the motor; power of the fan, most of the motor, W. */
  POWER_MOTOR("power.motor", 0, 2),
  /** Too much for the battery; power of the fan, most of the battery, W. */
  POWER_BATTERY("power.battery", 0, 2),
  /** The same of fan and drive together; their power, most of the battery, W. */
  POWER_TOGETHER("power.together", 0, 2),

  // ---- a lip, a drawing, a rig

  /** A wall is hard to print; its body, empty for the main one, corner, its x, y, least wall, m. */
  LIP_THIN("lip.thin", 1, 4),
  /** A slot may close in print; values likewise, least slot, m. */
  LIP_NARROW("lip.narrow", 1, 4),
  /** Elements of an SVG file were passed over; which, their number. */
  SVG_SKIPPED("drawing.skipped", 1, 1),
  /** Entities of a DXF file were; values likewise. */
  DXF_SKIPPED("drawing.skipped", 1, 1),
  /** An SVG drawing has no size. */
  SVG_UNIT("drawing.unit", 0, 0),
  /** A DXF drawing names no unit. */
  DXF_UNIT("drawing.unit", 0, 0),
  /** Edges were drawn twice; their number. */
  DRAWING_TWINS("drawing.twins", 0, 1),
  /** A drawing that is written does not keep the mount edge. */
  DRAWING_MOUNT_EDGE("drawing.mountEdge", 0, 0),
  /** The temperature of the air has no accuracy; what is taken, K. */
  RIG_TEMPERATURE_UNSURE("rig.air", 0, 1),
  /** The temperature was not read; half-width and value taken, K. */
  RIG_TEMPERATURE_UNREAD("rig.air", 0, 2),
  /** The barometer has no accuracy; what is taken, Pa. */
  RIG_BAROMETER_UNSURE("rig.air", 0, 1),
  /** The barometer was not read; half-width and value taken, Pa. */
  RIG_BAROMETER_UNREAD("rig.air", 0, 2),
  /** The leaks of the box were not measured. */
  RIG_BOX("rig.box", 0, 0),

  // ---- kept by a former version

  /** A notice of which the sentence alone is known; it. */
  FORMER("former", 1, 0);

  private static final int PAIRS = -1;

  private final String code;
  private final int names;
  private final int numbers;

  NoticeKind(String code, int names, int numbers) {
    this.code = code;
    this.names = names;
    this.numbers = numbers;
  }

  /** A kind with any number of pairs of a name and a number. */
  NoticeKind(String code) {
    this(code, PAIRS, PAIRS);
  }

  /** Stable short name, such as {@code regime.transition}. */
  public String code() {
    return code;
  }

  /** True for as many names and numbers as this kind has. */
  public boolean takes(int ofNames, int ofNumbers) {
    return names == PAIRS
        ? ofNames > 0 && ofNames == ofNumbers
        : ofNames == names && ofNumbers == numbers;
  }

  /** A notice with numbers alone. */
  public Notice of(double... values) {
    return of(List.of(), values);
  }

  /** A notice with one name. */
  public Notice of(String name, double... values) {
    return of(List.of(name), values);
  }

  /** A notice. */
  public Notice of(List<String> ofNames, double... values) {
    return new Notice(this, "", ofNames, Arrays.stream(values).boxed().toList());
  }
}
