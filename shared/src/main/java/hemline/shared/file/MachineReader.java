package hemline.shared.file;

import static hemline.shared.units.QuantityKind.ANGLE;
import static hemline.shared.units.QuantityKind.ANGULAR_STIFFNESS;
import static hemline.shared.units.QuantityKind.ENERGY;
import static hemline.shared.units.QuantityKind.LENGTH;
import static hemline.shared.units.QuantityKind.MASS;
import static hemline.shared.units.QuantityKind.POWER;
import static hemline.shared.units.QuantityKind.SPEED;
import static hemline.shared.units.QuantityKind.STIFFNESS;
import static hemline.shared.units.QuantityKind.TEMPERATURE;
import static hemline.shared.units.QuantityKind.VOLTAGE;

import hemline.shared.fluid.Air;
import hemline.shared.problem.Problem;
import hemline.shared.vehicle.Ambient;
import hemline.shared.vehicle.Axle;
import hemline.shared.vehicle.Duty;
import hemline.shared.vehicle.Fan;
import hemline.shared.vehicle.FloorOutline;
import hemline.shared.vehicle.GroundStep;
import hemline.shared.vehicle.HoldTerms;
import hemline.shared.vehicle.Load;
import hemline.shared.vehicle.Machine;
import hemline.shared.vehicle.Openings;
import hemline.shared.vehicle.OtherLeak;
import hemline.shared.vehicle.PowerSupply;
import hemline.shared.vehicle.ReliefValve;
import hemline.shared.vehicle.Running;
import hemline.shared.vehicle.SupportPolygon;
import hemline.shared.vehicle.WheelLoads;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.StringJoiner;
import org.jspecify.annotations.Nullable;

/** Reads the groups of a machine file; every fault becomes a problem and reading goes on. */
final class MachineReader {
  /** Slope to hold on, rad: 30°. Judged, no source. */
  private static final double STEEPEST = Math.toRadians(30);

  /** Share of a battery's energy that spares it. Common practice, no source. */
  private static final double USABLE_SHARE = 0.8;

  static final String FARTHEST = "10m";

  private final JsonKeys top;
  private final Path folder;
  private final List<Problem> problems;
  private double driveEfficiency = PowerSupply.USUAL_DRIVE;

  MachineReader(JsonKeys top, Path folder, List<Problem> problems) {
    this.top = top;
    this.folder = folder;
    this.problems = problems;
  }

  /**
   * The machine, or null after a problem.
   *
   * @param changed values that are not the file's, for the notes
   */
  @Nullable Machine read(Map<String, String> changed) {
    top.allow(
        "schema",
        "name",
        "notes",
        "invented",
        "air",
        "travelSpeed",
        "slope",
        "floor",
        "load",
        "axles",
        "frame",
        "tyres",
        "drive",
        "fan",
        "power",
        "valve",
        "otherLeaks",
        "groundStep",
        "brakes",
        "safetyFactor",
        "contactAllowance",
        "tolerances");
    String name = top.text("name", "silo-wall inspection crawler");
    if (top.item("name") instanceof JsonItem.Text && name.isBlank()) {
      top.fault("machine.name", "name", "the name is empty; give a short one");
    }
    String notes = noted(top.text("notes", "", "for dry concrete"), changed);
    boolean invented = top.truth("invented", false);
    Ambient air = air();
    double travelSpeed = QuantityKeys.optional(top, "travelSpeed", SPEED, "0m/s", "100m/s", 0);
    double slope = QuantityKeys.optional(top, "slope", ANGLE, "0deg", "180deg", STEEPEST);
    FloorOutline floor = new FloorReader(folder, problems).read(needed("floor"));
    Load load = load();
    HoldTermsReader hold = new HoldTermsReader(top);
    Running running = hold.braked(running());
    Fan fan = fan(floor == null ? 0 : floor.ceilingHeight());
    PowerSupply power = power();
    OpeningsReader openings = new OpeningsReader(top, problems);
    ReliefValve valve = openings.valve();
    List<OtherLeak> otherLeaks = openings.otherLeaks();
    GroundStep step = step();
    HoldTerms terms = hold.terms();
    if (problems.isEmpty()) {
      checkWheels(running, load);
    }
    if (!problems.isEmpty() || floor == null || fan == null) {
      return null;
    }
    return new Machine(
        new Machine.Description(name, notes, invented),
        floor,
        load,
        running,
        fan,
        power,
        new Openings(valve, otherLeaks),
        new Duty(air, travelSpeed, slope, step, terms));
  }

  private static String noted(String notes, Map<String, String> changed) {
    if (changed.isEmpty()) {
      return notes;
    }
    StringJoiner set = new StringJoiner(", ", "Changed for this: ", ".");
    changed.forEach((key, text) -> set.add(key + " " + (text.isEmpty() ? "left out" : text)));
    return notes.isEmpty() ? set.toString() : notes + " " + set;
  }

  private @Nullable JsonKeys needed(String key) {
    return top.missing(key, "a group of keys in braces { }") ? null : top.group(key);
  }

  private @Nullable Fan fan(double ceilingHeight) {
    JsonKeys keys = needed("fan");
    return keys == null ? null : new FanReader(folder, problems).read(keys, ceilingHeight);
  }

  private Ambient air() {
    JsonKeys air = top.group("air");
    if (air == null) {
      return new Ambient(Air.STANDARD_TEMPERATURE, 0);
    }
    air.allow("temperature", "altitude");
    return new Ambient(
        QuantityKeys.optional(
            air, "temperature", TEMPERATURE, "-60degC", "100degC", Air.STANDARD_TEMPERATURE),
        QuantityKeys.optional(air, "altitude", LENGTH, "-500m", "9000m", 0));
  }

  private Load load() {
    JsonKeys load = needed("load");
    if (load == null) {
      return new Load(1, 0, 0, 0);
    }
    load.allow("mass", "x", "y", "height");
    return new Load(
        QuantityKeys.needed(load, "mass", MASS, "1g", "2000kg"),
        place(load, "x"),
        place(load, "y"),
        QuantityKeys.needed(load, "height", LENGTH, "0mm", FARTHEST));
  }

  static double place(JsonKeys keys, String key) {
    return QuantityKeys.optional(keys, key, LENGTH, "-" + FARTHEST, FARTHEST, 0);
  }

  private Running running() {
    JsonKeys tyres = needed("tyres");
    double peak = 1;
    double sliding = 1;
    if (tyres != null) {
      tyres.allow("peakFriction", "slidingFriction");
      peak = QuantityKeys.share(tyres, "peakFriction", 0.05, 3, "grip before slip");
      sliding = QuantityKeys.share(tyres, "slidingFriction", 0.05, 3, "grip once the tyres slip");
      if (sliding > peak) {
        tyres.fault(
            "machine.range",
            "slidingFriction",
            "is "
                + sliding
                + ", more than the peak of "
                + peak
                + "; tyres lose grip once they slip");
      }
    }
    JsonKeys frame = top.group("frame");
    double heave = Double.POSITIVE_INFINITY;
    double pitch = Double.POSITIVE_INFINITY;
    if (frame != null) {
      frame.allow("heaveStiffness", "pitchStiffness");
      heave = QuantityKeys.optional(frame, "heaveStiffness", STIFFNESS, "10N/m", "1e6kN/m", heave);
      pitch =
          QuantityKeys.optional(
              frame, "pitchStiffness", ANGULAR_STIFFNESS, "0.01Nm/rad", "1e9Nm/rad", pitch);
    }
    JsonKeys drive = needed("drive");
    double drivePower = 1;
    double topSpeed = 1;
    if (drive != null) {
      drive.allow("power", "topSpeed", "efficiency");
      driveEfficiency =
          QuantityKeys.share(
              drive, "efficiency", 0.05, 1, "wheel over electrical power", driveEfficiency);
      drivePower = QuantityKeys.needed(drive, "power", POWER, "0.01W", "1000kW");
      topSpeed = QuantityKeys.needed(drive, "topSpeed", SPEED, "1mm/s", "150m/s");
    }
    return new Running(axles(), peak, sliding, heave, pitch, drivePower, topSpeed);
  }

  private List<Axle> axles() {
    List<Axle> axles = new ArrayList<>();
    if (top.missing("axles", "a list of axles, front to rear")) {
      return axles;
    }
    List<JsonItem> items = top.list("axles");
    if (items.isEmpty() && top.item("axles") instanceof JsonItem.Array) {
      top.fault("machine.wheels", "axles", "there is none; give a list of axles, front to rear");
    }
    for (int i = 0; i < items.size(); i++) {
      JsonKeys one = top.group(items.get(i), "axles[" + i + "]");
      if (one == null) {
        continue;
      }
      one.allow("name", "x", "track", "stiffness", "driven");
      axles.add(
          new Axle(
              one.text("name", "axle " + (i + 1), "front"),
              QuantityKeys.needed(one, "x", LENGTH, "-" + FARTHEST, FARTHEST),
              QuantityKeys.needed(one, "track", LENGTH, "0mm", FARTHEST),
              QuantityKeys.needed(one, "stiffness", STIFFNESS, "10N/m", "1e6kN/m"),
              one.truth("driven", true)));
    }
    return axles;
  }

  private void checkWheels(Running running, Load load) {
    if (!WheelLoads.stand(running.axles())) {
      top.fault(
          "machine.wheels",
          "axles",
          "the wheels stand on one line, so the machine has no fixed height; give two axles, one of"
              + " them with a track");
      return;
    }
    if (running.axles().stream().noneMatch(Axle::driven)) {
      top.fault(
          "machine.driven", "axles", "no axle is driven; leave \"driven\" true on one at least");
    }
    if (new SupportPolygon(running.axles()).restoring(1, load.x(), load.y()) < 0) {
      top.fault(
          "machine.wheels",
          "load",
          "the machine tips over at rest: its centre of gravity lies outside its wheels; check x, y"
              + " and the axles");
    }
  }

  private PowerSupply power() {
    JsonKeys power = needed("power");
    if (power == null) {
      return new PowerSupply(1, 1, 1, 1, 1);
    }
    power.allow(
        "motorEfficiency",
        "motorPower",
        "batteryEnergy",
        "usableShare",
        "batteryPower",
        "batteryVoltage");
    double none = Double.POSITIVE_INFINITY;
    return new PowerSupply(
        QuantityKeys.share(power, "motorEfficiency", 0.05, 1, "shaft over electrical power"),
        QuantityKeys.optional(power, "motorPower", POWER, "0.1W", "1000kW", none),
        QuantityKeys.needed(power, "batteryEnergy", ENERGY, "0.01Wh", "1000kWh"),
        QuantityKeys.share(power, "usableShare", 0.05, 1, "share that may be drawn", USABLE_SHARE),
        QuantityKeys.optional(power, "batteryPower", POWER, "0.1W", "1000kW", none),
        QuantityKeys.optional(power, "batteryVoltage", VOLTAGE, "0.1V", "1500V", 0),
        driveEfficiency);
  }

  private @Nullable GroundStep step() {
    JsonKeys step = top.group("groundStep");
    if (step == null) {
      return null;
    }
    step.allow("height", "length");
    return new GroundStep(
        QuantityKeys.needed(step, "height", LENGTH, "0.01mm", "500mm"),
        QuantityKeys.needed(step, "length", LENGTH, "0.1mm", "100m"));
  }
}
