package hemline.viewer.cli;

import hemline.shared.fluid.FluidState;
import hemline.shared.section.GroundMotion;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Options for the ground's motion and the air. */
final class GroundOptions {
  @Option(
      names = "--ground-speed",
      paramLabel = "Q",
      description = "Speed of the ground across the lip, positive towards the plenum (default: 0).")
  @Nullable String groundSpeed;

  @Mixin AirOptions air = new AirOptions();

  GroundMotion motion(Wanted wanted) {
    return new GroundMotion(wanted.speed("--ground-speed", groundSpeed), air.alongSpeed(wanted));
  }

  /** The motion where a sweep sets the speed across the lip. */
  GroundMotion alongOnly(Wanted wanted) {
    return new GroundMotion(0, air.alongSpeed(wanted));
  }

  FluidState air(Wanted wanted) {
    return air.air(wanted);
  }

  /** True when any of these options was given. */
  boolean given() {
    return groundSpeed != null || air.given();
  }
}
