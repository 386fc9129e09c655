package hemline.solver.flow;

/**
 * When to stop.
 *
 * @param accelerated most iterations of each accelerated attempt
 * @param plain iterations of the attempt without acceleration; the second half is averaged
 * @param window iterations over which the figure must stand still
 * @param figureWindow largest relative spread of the figure in the window
 * @param momentum largest momentum residual, over gap times reference pressure
 * @param drive largest relative miss of the operating point
 */
public record StoppingLimits(
    int accelerated, int plain, int window, double figureWindow, double momentum, double drive) {
  public static final StoppingLimits DEFAULT = new StoppingLimits(1000, 1000, 30, 5e-4, 1e-3, 5e-4);

  /** Most passes of a whole solve, all attempts together. */
  public int most() {
    return SteadyFlowSolver.NEWTON_STEPS + (SteadyFlowSolver.RUNGS + 1) * accelerated + plain;
  }
}
