package hemline.shared.file;

import static hemline.shared.units.QuantityKind.ANGLE;
import static hemline.shared.units.QuantityKind.AREA;
import static hemline.shared.units.QuantityKind.DENSITY;
import static hemline.shared.units.QuantityKind.INERTIA;
import static hemline.shared.units.QuantityKind.LENGTH;
import static hemline.shared.units.QuantityKind.TURNING_SPEED;

import hemline.shared.problem.InputException;
import hemline.shared.problem.Problem;
import hemline.shared.vehicle.Fan;
import hemline.shared.vehicle.FanCurve;
import java.nio.file.Path;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Reads the fan of a machine file with its curve. */
final class FanReader {
  /** Standard air of fan practice, ISO 5801 (from memory). */
  private static final double FAN_PRACTICE_DENSITY = 1.2;

  private final Path folder;
  private final List<Problem> problems;

  FanReader(Path folder, List<Problem> problems) {
    this.folder = folder;
    this.problems = problems;
  }

  /** The fan, or null after a problem. */
  @Nullable Fan read(JsonKeys fan, double ceiling) {
    fan.allow(
        "curve",
        "curveSpeed",
        "curveDensity",
        "speed",
        "maximumSpeed",
        "efficiency",
        "exitArea",
        "exitAngle",
        "x",
        "y",
        "height",
        "rotorInertia");
    List<FanCurve.Point> points = curve(fan);
    double curveSpeed = QuantityKeys.needed(fan, "curveSpeed", TURNING_SPEED, "10rpm", "1e6rpm");
    double density =
        QuantityKeys.optional(
            fan, "curveDensity", DENSITY, "0.1kg/m3", "10kg/m3", FAN_PRACTICE_DENSITY);
    double speed =
        QuantityKeys.optional(fan, "speed", TURNING_SPEED, "10rpm", "1e6rpm", curveSpeed);
    double most =
        QuantityKeys.optional(
            fan, "maximumSpeed", TURNING_SPEED, "10rpm", "1e6rpm", Double.POSITIVE_INFINITY);
    if (speed > most) {
      fan.fault(
          "machine.fanSpeed",
          "speed",
          "is above the maximumSpeed of the maker; a wheel may burst: run it slower");
    }
    double efficiency = QuantityKeys.share(fan, "efficiency", 0.02, 0.95, "static efficiency", 0.4);
    double exitArea = QuantityKeys.optional(fan, "exitArea", AREA, "1mm2", "10m2", 0);
    double exitAngle =
        QuantityKeys.optional(fan, "exitAngle", ANGLE, "-90deg", "90deg", Math.PI / 2);
    double x = MachineReader.place(fan, "x");
    double y = MachineReader.place(fan, "y");
    double height =
        QuantityKeys.optional(fan, "height", LENGTH, "0mm", MachineReader.FARTHEST, ceiling);
    double inertia = QuantityKeys.optional(fan, "rotorInertia", INERTIA, "0.001gcm2", "10kgm2", 0);
    if (points == null || !(curveSpeed > 0) || !(density > 0) || !(speed > 0)) {
      return null;
    }
    FanCurve curve = new FanCurve(points, curveSpeed, density);
    if (!curve.hasPower() && !fan.has("efficiency")) {
      fan.missing(
          "efficiency", "the static efficiency, such as 0.4, since the curve has no shaft power");
    }
    return new Fan(
        curve, speed, most, efficiency, new Fan.Outlet(exitArea, exitAngle, x, y, height), inertia);
  }

  private @Nullable List<FanCurve.Point> curve(JsonKeys fan) {
    String name = fan.text("curve", "fan.csv");
    if (name.isEmpty()) {
      return null;
    }
    try {
      return FanCurveFile.read(folder.resolve(name));
    } catch (InputException e) {
      fan.fault("curve", folder.resolve(name), e);
    } catch (java.nio.file.InvalidPathException e) {
      fan.fault("file.read", "curve", "is no file name here");
    }
    return null;
  }
}
