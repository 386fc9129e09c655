package hemline.viewer.model;

import hemline.shared.fluid.Air;
import hemline.shared.fluid.FluidState;
import hemline.shared.profile.LipProfile;
import hemline.shared.result.SectionResult;
import hemline.shared.section.GroundMotion;
import hemline.shared.section.SealSection;
import hemline.shared.section.SectionLimits;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Conditions a lip works under, SI units.
 *
 * @param gap between lip and ground, m, positive
 * @param suction Pa
 * @param groundSpeed towards the plenum, m/s
 * @param spanwiseSpeed along the seal, m/s
 * @param temperature of the air, K, from {@link Air#COLDEST} to {@link Air#HOTTEST}
 */
public record Setting(
    double gap, double suction, double groundSpeed, double spanwiseSpeed, double temperature) {
  /** The demonstration: silo-wall inspection crawler, 2 mm gap and 600 Pa; invented figures. */
  public static final Setting USUAL = new Setting(2e-3, 600, 0, 0, Air.STANDARD_TEMPERATURE);

  public Setting {
    if (!(gap > 0) || !Double.isFinite(gap + suction + groundSpeed + spanwiseSpeed)) {
      throw new IllegalArgumentException("a setting needs a positive gap and finite numbers");
    }
    if (!(temperature >= Air.COLDEST && temperature <= Air.HOTTEST)) {
      throw new IllegalArgumentException(
          "air is known here from 200 K to 500 K, got " + temperature + " K");
    }
  }

  /**
   * The conditions of a solved section.
   *
   * @param air at the pressure of sea level
   */
  public static Setting of(SectionResult section, FluidState air) {
    return new Setting(
        section.conditions().gap(),
        section.conditions().suction(),
        section.conditions().groundSpeed(),
        section.conditions().spanwiseSpeed(),
        temperature(air));
  }

  /** Temperature of air at the pressure of sea level, K. */
  public static double temperature(FluidState air) {
    double kelvin = Air.STANDARD_PRESSURE / (Air.GAS_CONSTANT * air.density());
    // whole microkelvin, so that air goes in and out with the same bits
    return Math.max(Air.COLDEST, Math.min(Air.HOTTEST, Math.rint(1e6 * kelvin) / 1e6));
  }

  /** All values by their names, to be kept. */
  public Map<String, Double> numbers() {
    return Map.of(
        "gap", gap,
        "suction", suction,
        "groundSpeed", groundSpeed,
        "spanwiseSpeed", spanwiseSpeed,
        "temperature", temperature);
  }

  /** Conditions that were kept by their names; empty where they are none that may be asked for. */
  public static Optional<Setting> of(Map<String, Double> numbers) {
    double gap = numbers.getOrDefault("gap", Double.NaN);
    double suction = numbers.getOrDefault("suction", Double.NaN);
    double ground = numbers.getOrDefault("groundSpeed", Double.NaN);
    double spanwise = numbers.getOrDefault("spanwiseSpeed", Double.NaN);
    double temperature = numbers.getOrDefault("temperature", Double.NaN);
    boolean right =
        SectionLimits.gap(gap).isEmpty()
            && SectionLimits.suction(suction).isEmpty()
            && SectionLimits.speed(ground).isEmpty()
            && SectionLimits.speed(spanwise).isEmpty()
            && temperature >= Air.COLDEST
            && temperature <= Air.HOTTEST;
    return right
        ? Optional.of(new Setting(gap, suction, ground, spanwise, temperature))
        : Optional.empty();
  }

  public Setting withGap(double other) {
    return new Setting(other, suction, groundSpeed, spanwiseSpeed, temperature);
  }

  public Setting withSuction(double other) {
    return new Setting(gap, other, groundSpeed, spanwiseSpeed, temperature);
  }

  public Setting withGroundSpeed(double other) {
    return new Setting(gap, suction, other, spanwiseSpeed, temperature);
  }

  public Setting withSpanwiseSpeed(double other) {
    return new Setting(gap, suction, groundSpeed, other, temperature);
  }

  /** The same in air of another temperature, K. */
  public Setting withTemperature(double other) {
    return new Setting(gap, suction, groundSpeed, spanwiseSpeed, other);
  }

  /** The ground's motion. */
  public GroundMotion ground() {
    return new GroundMotion(groundSpeed, spanwiseSpeed);
  }

  /** The air, at the pressure of sea level. */
  public FluidState air() {
    return Air.at(temperature, Air.STANDARD_PRESSURE);
  }

  /** A lip under these conditions. */
  public SealSection section(LipProfile profile) {
    return new SealSection(profile, gap, suction, ground(), air(), List.of());
  }
}
