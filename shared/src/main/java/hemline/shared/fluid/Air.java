package hemline.shared.fluid;

/**
 * Dry air as an ideal gas with Sutherland's viscosity.
 *
 * <p>Constants of the standard atmosphere, ISO 2533:1975 (from memory): R = 287.05287 J/(kg K), μ =
 * 1.458·10⁻⁶ T^1.5 / (T + 110.4) Pa s, g = 9.80665 m/s², 15 °C and 101325 Pa at sea level, lapse
 * rate 6.5 K/km up to 11 km. At sea level they give 1.2250 kg/m³ and 1.4607·10⁻⁵ m²/s.
 */
public final class Air {
  /** Gas constant of dry air, J/(kg K). */
  public static final double GAS_CONSTANT = 287.05287;

  /** Ratio of the specific heats of dry air, ISO 2533:1975 (from memory). */
  public static final double HEAT_RATIO = 1.4;

  /**
   * Standard gravity, m/s², exact by definition: 3rd General Conference on Weights and Measures
   * 1901.
   */
  public static final double GRAVITY = 9.80665;

  /** Pressure at sea level, Pa. */
  public static final double STANDARD_PRESSURE = 101325;

  /** Temperature at sea level, K: 15 °C. */
  public static final double STANDARD_TEMPERATURE = 288.15;

  /**
   * Lowest temperature that questions may ask for, K; Sutherland's formula holds below it still.
   */
  public static final double COLDEST = 200;

  /** Highest temperature that questions may ask for, K; far below where air stops being ideal. */
  public static final double HOTTEST = 500;

  /** Air at 15 °C and 101325 Pa. */
  public static final FluidState STANDARD = at(STANDARD_TEMPERATURE, STANDARD_PRESSURE);

  private static final double SUTHERLAND_FACTOR = 1.458e-6;
  private static final double SUTHERLAND_TEMPERATURE = 110.4;
  private static final double LAPSE_RATE = 6.5e-3;
  private static final double TROPOPAUSE = 11000;

  private Air() {}

  /**
   * Air at a temperature and pressure.
   *
   * @param temperature K, positive
   * @param pressure Pa, absolute, positive
   */
  public static FluidState at(double temperature, double pressure) {
    double density = density(temperature, pressure);
    return new FluidState(density, viscosity(temperature) / density);
  }

  /** Density of the ideal gas p / (R T), kg/m³. */
  public static double density(double temperature, double pressure) {
    if (!(temperature > 0) || !(pressure > 0)) {
      throw new IllegalArgumentException(
          "air needs a positive temperature and pressure, got "
              + temperature
              + " K and "
              + pressure
              + " Pa");
    }
    return pressure / (GAS_CONSTANT * temperature);
  }

  /** Dynamic viscosity by Sutherland's formula with the constants of ISO 2533, Pa s. */
  public static double viscosity(double temperature) {
    return SUTHERLAND_FACTOR * Math.pow(temperature, 1.5) / (temperature + SUTHERLAND_TEMPERATURE);
  }

  /**
   * Pressure of the standard atmosphere, ISO 2533: p₀ (1 − L H / T₀)^(g / (R L)).
   *
   * @param altitude geopotential altitude, m, from −2000 to 11000
   * @return Pa
   */
  public static double pressureAtAltitude(double altitude) {
    return STANDARD_PRESSURE
        * Math.pow(
            temperatureAtAltitude(altitude) / STANDARD_TEMPERATURE,
            GRAVITY / (GAS_CONSTANT * LAPSE_RATE));
  }

  /**
   * Temperature of the standard atmosphere, ISO 2533, K.
   *
   * @param altitude geopotential altitude, m, from −2000 to 11000
   */
  public static double temperatureAtAltitude(double altitude) {
    if (!(altitude >= -2000 && altitude <= TROPOPAUSE)) {
      throw new IllegalArgumentException(
          "altitude must lie between -2000 m and 11000 m, got " + altitude + " m");
    }
    return STANDARD_TEMPERATURE - LAPSE_RATE * altitude;
  }
}
