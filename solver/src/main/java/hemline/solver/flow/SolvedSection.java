package hemline.solver.flow;

import hemline.solver.field.FlowState;
import org.jspecify.annotations.Nullable;

/**
 * A section with its converged flow on the coarsest grid, from which a similar section can start.
 *
 * @param setup the section
 * @param flow its flow
 * @param compared true when it may also start a laminar flow that it is compared with
 */
public record SolvedSection(SectionSetup setup, FlowSolution flow, boolean compared) {
  /** A flow that starts flows of the same model only. */
  public SolvedSection(SectionSetup setup, FlowSolution flow) {
    this(setup, flow, false);
  }

  /** Gaps and velocities may differ by this factor; cold starts settle more surely beyond. */
  private static final double NEAR = 2;

  /** Ground speeds may differ by this share of the reference velocity. */
  private static final double NEAR_GROUND = 0.5;

  /** The same flow as the start of another one that it is compared with. */
  public SolvedSection toCompare() {
    return new SolvedSection(setup, flow, true);
  }

  /** True when a flow under this model may start from here. */
  public boolean starts(Closure other) {
    return closure() == other || compared && other == Closure.LAMINAR;
  }

  /** Flow model of the flow. */
  public Closure closure() {
    return flow.problem().closure();
  }

  /**
   * Start of another section from this flow.
   *
   * @param other the section to start
   * @param problem its problem on its coarsest grid
   * @return null when the two are too different or have different flow models
   */
  public @Nullable FlowState startOf(SectionSetup other, FlowProblem problem) {
    FlowProblem.Scales here = flow.problem().scales();
    FlowProblem.Scales there = problem.scales();
    double ground = setup.groundDistance(other);
    boolean similar =
        starts(problem.closure())
            && setup.sameDirection(other)
            && near(here.length(), there.length())
            && near(here.velocity(), there.velocity())
            && ground <= NEAR_GROUND * Math.min(here.velocity(), there.velocity());
    return similar
        ? StateTransfer.transfer(
            flow.problem(), flow.state(), problem, PlaceMap.between(other, setup))
        : null;
  }

  private static boolean near(double a, double b) {
    return a <= NEAR * b && b <= NEAR * a;
  }
}
