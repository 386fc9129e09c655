package hemline.validation.exact;

/**
 * Flow behind a row of bodies: u = 1 − exp(λx) cos 2πy, v = λ/(2π) exp(λx) sin 2πy, p = (1 −
 * exp(2λx))/2 with λ = Re/2 − √(Re²/4 + 4π²).
 *
 * <p>Source: L. I. G. Kovasznay 1948, "Laminar flow behind a two-dimensional grid", Proc. Camb.
 * Phil. Soc. 44, 58–62.
 *
 * @param reynolds 1 over the viscosity, positive
 */
public record Kovasznay(double reynolds) implements PlaneFlow {
  private static final double TURN = 2 * Math.PI;

  private double lambda() {
    return 0.5 * reynolds - Math.sqrt(0.25 * reynolds * reynolds + TURN * TURN);
  }

  @Override
  public double u(double x, double y) {
    return 1 - Math.exp(lambda() * x) * Math.cos(TURN * y);
  }

  @Override
  public double v(double x, double y) {
    return lambda() / TURN * Math.exp(lambda() * x) * Math.sin(TURN * y);
  }

  @Override
  public double streamfunction(double x, double y) {
    return y - Math.exp(lambda() * x) * Math.sin(TURN * y) / TURN;
  }

  @Override
  public double pressure(double x, double y) {
    return 0.5 * (1 - Math.exp(2 * lambda() * x));
  }
}
