package hemline.solver.flow;

import hemline.solver.field.FlowState;
import org.jspecify.annotations.Nullable;

/**
 * A section with its converged flow on the coarsest grid, from which a similar section can start.
 *
 * @param setup the section
 * @param problem that was solved
 * @param state its flow. Read-only by agreement.
 * @param compared true when it may also start flows of other models that it is compared with
 */
public record SolvedSection(
    SectionSetup setup, FlowProblem problem, FlowState state, boolean compared) {
  /** A flow that starts flows of the same model only. */
  public SolvedSection(SectionSetup setup, FlowProblem problem, FlowState state) {
    this(setup, problem, state, false);
  }

  /** Gaps and velocities may differ by this factor; cold starts settle more surely beyond. */
  private static final double NEAR = 2;

  /** Ground speeds may differ by this share of the reference velocity. */
  private static final double NEAR_GROUND = 0.5;

  /** The same flow as the start of another one that it is compared with. */
  public SolvedSection toCompare() {
    return new SolvedSection(setup, problem, state, true);
  }

  /** True when a flow under this model may start from here. */
  public boolean starts(Closure other) {
    return closure() == other || compared && closure() != Closure.LAMINAR;
  }

  /** Flow model of the flow. */
  public Closure closure() {
    return problem.closure();
  }

  /**
   * Start of another section from this flow.
   *
   * @param other the section to start
   * @param wanted its problem on its coarsest grid
   * @return null when the two are too different or have different flow models
   */
  public @Nullable FlowState startOf(SectionSetup other, FlowProblem wanted) {
    FlowProblem.Scales here = problem.scales();
    FlowProblem.Scales there = wanted.scales();
    double ground = setup.groundDistance(other);
    boolean similar =
        starts(wanted.closure())
            && setup.sameDirection(other)
            && near(here.length(), there.length())
            && near(here.velocity(), there.velocity())
            && ground <= NEAR_GROUND * Math.min(here.velocity(), there.velocity());
    return similar
        ? StateTransfer.transfer(problem, state, wanted, PlaceMap.between(other, setup))
        : null;
  }

  private static boolean near(double a, double b) {
    return a <= NEAR * b && b <= NEAR * a;
  }
}
