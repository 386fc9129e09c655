package hemline.viewer.cli;

import hemline.shared.fluid.Air;
import hemline.shared.fluid.FluidState;
import hemline.shared.section.GroundMotion;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;

/** Options for the ground's motion and the air. */
final class GroundOptions {
  @Option(
      names = "--ground-speed",
      paramLabel = "Q",
      description = "Speed of the ground across the lip, positive towards the plenum (default: 0).")
  @Nullable String groundSpeed;

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

  GroundMotion motion(Wanted wanted) {
    return new GroundMotion(
        wanted.speed("--ground-speed", groundSpeed),
        wanted.speed("--spanwise-speed", spanwiseSpeed));
  }

  /** The motion where a sweep sets the speed across the lip. */
  GroundMotion alongOnly(Wanted wanted) {
    return new GroundMotion(0, wanted.speed("--spanwise-speed", spanwiseSpeed));
  }

  FluidState air(Wanted wanted) {
    return temperature == null
        ? Air.STANDARD
        : Air.at(wanted.temperature("--temperature", temperature), Air.STANDARD_PRESSURE);
  }

  /** True when any of these options was given. */
  boolean given() {
    return groundSpeed != null || spanwiseSpeed != null || temperature != null;
  }
}
