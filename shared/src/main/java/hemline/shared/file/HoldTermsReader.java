package hemline.shared.file;

import static hemline.shared.units.QuantityKind.LENGTH;
import static hemline.shared.units.QuantityKind.TORQUE;

import hemline.shared.vehicle.Axle;
import hemline.shared.vehicle.HoldTerms;
import hemline.shared.vehicle.Running;
import hemline.shared.vehicle.Tolerances;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;

/** Reads what a machine's hold must meet: brakes, safety factor, contact, tolerances. */
final class HoldTermsReader {
  private static final double MOST_TOLERANCE = 0.5;

  private final JsonKeys top;
  private boolean parked;

  HoldTermsReader(JsonKeys top) {
    this.top = top;
  }

  /** The same wheels with their brakes. */
  Running braked(Running running) {
    JsonKeys brakes = top.group("brakes");
    if (brakes == null) {
      return running;
    }
    brakes.allow("axles", "hold", "torque", "wheelRadius");
    String hold = brakes.text("hold", "powered", "parked");
    if (!hold.equals("parked") && !hold.equals("powered")) {
      brakes.fault(
          "machine.brakes",
          "hold",
          "is \""
              + hold
              + "\"; write \"parked\" for brakes that hold without power, or \"powered\"");
    }
    parked = hold.equals("parked");
    Set<String> wanted = names(brakes, running);
    double force = force(brakes);
    List<Axle> axles = new ArrayList<>();
    for (Axle a : running.axles()) {
      axles.add(wanted.contains(a.name()) ? a.withBrake(force) : a);
    }
    return running.withAxles(axles);
  }

  /** Torque over radius, N; infinite where no torque is given. */
  private static double force(JsonKeys brakes) {
    double none = Double.POSITIVE_INFINITY;
    double torque = QuantityKeys.optional(brakes, "torque", TORQUE, "0.001Nm", "100kNm", none);
    double radius = QuantityKeys.optional(brakes, "wheelRadius", LENGTH, "1mm", "2m", none);
    if (brakes.has("torque") != brakes.has("wheelRadius")) {
      brakes.fault(
          "machine.brakes",
          brakes.has("torque") ? "torque" : "wheelRadius",
          "a brake's torque and the radius of its wheels count together; give both, or none for"
              + " brakes that hold whatever friction bears");
    }
    return brakes.has("torque") ? torque / radius : none;
  }

  private static Set<String> names(JsonKeys brakes, Running running) {
    Set<String> names = new LinkedHashSet<>();
    if (brakes.missing("axles", "a list of the names of the braked axles")) {
      return names;
    }
    for (JsonItem item : brakes.list("axles")) {
      String name = item instanceof JsonItem.Text t ? t.value() : "";
      // that a machine has no axles at all is told where they are read
      if (!running.axles().isEmpty()
          && running.axles().stream().noneMatch(a -> a.name().equals(name))) {
        brakes.fault(
            "machine.brakes",
            "axles",
            (item instanceof JsonItem.Text ? "\"" + name + "\"" : item.noun())
                + " is no axle; the axles are "
                + running.axles().stream()
                    .map(a -> "\"" + a.name() + "\"")
                    .collect(Collectors.joining(", ")));
      }
      names.add(name);
    }
    return names;
  }

  HoldTerms terms() {
    double factor = QuantityKeys.share(top, "safetyFactor", 1, 20, "safety factor", 1);
    double contact =
        QuantityKeys.optional(
            top, "contactAllowance", LENGTH, "0.02mm", "5mm", HoldTerms.USUAL_ALLOWANCE);
    JsonKeys t = top.group("tolerances");
    if (t == null) {
      return new HoldTerms(parked, factor, contact, Tolerances.NONE);
    }
    t.allow("friction", "fanPressure", "mass", "gap");
    return new HoldTerms(
        parked,
        factor,
        contact,
        new Tolerances(
            share(t, "friction"),
            share(t, "fanPressure"),
            share(t, "mass"),
            QuantityKeys.optional(t, "gap", LENGTH, "0mm", "5mm", 0)));
  }

  private static double share(JsonKeys keys, String key) {
    return QuantityKeys.share(keys, key, 0, MOST_TOLERANCE, "share of the value", 0);
  }
}
