package hemline.viewer.cli;

import hemline.shared.fluid.Air;
import hemline.shared.fluid.FluidState;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;

/** Options for the ground's motion along the lip and the air. */
final class AirOptions {
  @Option(
      names = "--spanwise-speed",
      paramLabel = "Q",
      description = "Speed of the ground along the lip (default: 0).")
  @Nullable String spanwiseSpeed;

  @Option(
      names = "--temperature",
      paramLabel = "Q",
      description = "Temperature of the air at 1013.25 hPa (default: 15degC).")
  @Nullable String temperature;

  /** Speed of the ground along the lip, m/s. */
  double alongSpeed(Wanted wanted) {
    return wanted.speed("--spanwise-speed", spanwiseSpeed);
  }

  FluidState air(Wanted wanted) {
    return temperature == null
        ? Air.STANDARD
        : Air.at(wanted.temperature("--temperature", temperature), Air.STANDARD_PRESSURE);
  }

  /** True when any of these options was given. */
  boolean given() {
    return spanwiseSpeed != null || temperature != null;
  }
}
