package hemline.solver.flow;

/**
 * Relaxation of the segregated iteration.
 *
 * @param velocityFactor momentum relaxation, 0 to 1
 * @param pressureFactor share of the pressure correction applied to pressure, 0 to 1
 * @param closureFactor relaxation of the closure's equations, 0 to 1
 * @param momentumSweeps Gauss–Seidel sweeps per momentum solve
 * @param pressureReduction residual reduction of each pressure solve
 */
public record IterationSettings(
    double velocityFactor,
    double pressureFactor,
    double closureFactor,
    int momentumSweeps,
    double pressureReduction) {
  public static final IterationSettings DEFAULT = new IterationSettings(0.8, 0.5, 0.7, 2, 1e-2);
}
