package hemline.shared.vehicle;

/**
 * A spring-loaded valve that lets air into the plenum above a set suction.
 *
 * <p>Lift x = (A Δp − F₀) / c between 0 and the largest lift; the air passes the curtain π d x
 * between disc and seat of diameter d, at most the seat area A: q = C_d min(π d x, A) √(2 Δp / ρ).
 *
 * @param seatArea A, m²
 * @param springRate c, N/m
 * @param preload F₀ of the closed spring, N
 * @param maximumLift m
 * @param dischargeCoefficient C_d: 0.60 to 0.65 at a sharp edge, 0.95 to 0.99 at a rounded one
 *     (from memory)
 * @param movingMass disc and a third of the spring, kg
 * @param dampingRatio damping over the critical one
 */
public record ReliefValve(
    double seatArea,
    double springRate,
    double preload,
    double maximumLift,
    double dischargeCoefficient,
    double movingMass,
    double dampingRatio) {
  public ReliefValve {
    if (!(seatArea > 0) || !(springRate > 0) || !(preload >= 0) || !(maximumLift > 0)) {
      throw new IllegalArgumentException(
          "a valve needs a positive seat area, spring rate and lift and a preload of 0 or more");
    }
  }

  /** Suction at which it begins to open, Pa. */
  public double openingSuction() {
    return preload / seatArea;
  }

  /** Lift at a suction, m. */
  public double lift(double suction) {
    return Math.max(0, Math.min(maximumLift, (seatArea * suction - preload) / springRate));
  }

  /** Flow area at a lift, m². */
  public double flowArea(double lift) {
    return Math.min(seatPerimeter() * lift, seatArea);
  }

  /** Flow into the plenum, m³/s. */
  public double flow(double suction, double density) {
    if (!(suction > 0)) {
      return 0;
    }
    return dischargeCoefficient * flowArea(lift(suction)) * Math.sqrt(2 * suction / density);
  }

  /** Lift at which the curtain is as large as the seat, m: a quarter of its diameter. */
  public double fullLift() {
    return Math.min(maximumLift, seatArea / seatPerimeter());
  }

  /** Circumference of the round seat, m. */
  public double seatPerimeter() {
    return 2 * Math.sqrt(Math.PI * seatArea);
  }

  /** The same valve with another preload, N. */
  public ReliefValve withPreload(double newPreload) {
    return new ReliefValve(
        seatArea,
        springRate,
        newPreload,
        maximumLift,
        dischargeCoefficient,
        movingMass,
        dampingRatio);
  }
}
