package hemline.solver.flow;

/**
 * When to stop.
 *
 * @param accelerated most iterations of each accelerated attempt
 * @param plain iterations of the attempt without acceleration; the second half is averaged
 * @param window iterations over which the figure must stand still
 * @param figureWindow largest relative spread of the figure in the window
 * @param momentum largest momentum residual, over gap times reference pressure
 * @param newton the same for Newton's method, which gains more digits with each step
 * @param drive largest relative miss of the operating point
 */
public record StoppingLimits(
    int accelerated,
    int plain,
    int window,
    double figureWindow,
    double momentum,
    double newton,
    double drive) {
  /**
   * For leaks and forces of lips: what is left of the iteration is near a tenth of the numerical
   * band. Against {@link #FIELD} C_d of 135 sections moves by 0.06 % in nine of ten and by 0.3 % at
   * most, and a third of the work is saved.
   */
  public static final StoppingLimits LEAK =
      new StoppingLimits(1000, 1000, 30, 1e-3, 5e-3, 1e-6, 5e-4);

  /**
   * For ducts, where profiles, friction and lengths of eddies count: they settle later. The core of
   * a cavity's vortex hardly shows in the residual: at Re 3200 1e-5 leaves its strength 2 % low.
   */
  public static final StoppingLimits FIELD =
      new StoppingLimits(1000, 1000, 30, 5e-4, 1e-3, 1e-6, 5e-4);

  /** Limits under which Newton's method goes on to a hundredth of the others' residual. */
  public StoppingLimits(
      int accelerated, int plain, int window, double figureWindow, double momentum, double drive) {
    this(accelerated, plain, window, figureWindow, momentum, 0.01 * momentum, drive);
  }
}
