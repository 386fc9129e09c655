package hemline.solver.flow;

import hemline.shared.section.DuctSection;
import hemline.shared.section.SealSection;
import hemline.shared.section.Section;
import hemline.solver.grid.GridDesign.Domain;
import hemline.solver.grid.GridLines;

/** A section as a flow problem: domain and boundaries, and what its flow starts from. */
public sealed interface FlowSetup permits SectionSetup, DuctSetup {
  /** Prepares a section of either kind. */
  static FlowSetup of(Section section) {
    if (section instanceof SealSection lip) {
      return new SectionSetup(lip);
    }
    return new DuctSetup((DuctSection) section);
  }

  /** The section as it was drawn. */
  Section drawn();

  /** Flow domain with the solids in it. */
  Domain domain();

  /** Pressure over density at the outlet to start from, m²/s². */
  double startPressure();

  /** Flow rate to start from, m²/s; 0 where pressure drives or only the walls do. */
  double startFlow();

  /** Pressure over density that pressures are given against, m²/s². */
  double referencePressure(FlowSolution flow);

  /**
   * The flow problem on given grid lines.
   *
   * @param lines of the grid
   * @param closure never AUTO
   */
  default FlowProblem problem(GridLines lines, Closure closure) {
    return problem(lines, closure, new CancelToken());
  }

  /**
   * The flow problem on given grid lines.
   *
   * @param lines of the grid
   * @param closure never AUTO
   * @param cancel stops at once
   * @throws java.util.concurrent.CancellationException when stopped
   */
  FlowProblem problem(GridLines lines, Closure closure, CancelToken cancel);
}
