package hemline.shared.file;

import static hemline.shared.units.QuantityKind.AREA;
import static hemline.shared.units.QuantityKind.FORCE;
import static hemline.shared.units.QuantityKind.LENGTH;
import static hemline.shared.units.QuantityKind.MASS;
import static hemline.shared.units.QuantityKind.STIFFNESS;

import hemline.shared.problem.Problem;
import hemline.shared.vehicle.OtherLeak;
import hemline.shared.vehicle.ReliefValve;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Reads what else lets air into the plenum: the relief valve and other leaks. */
final class OpeningsReader {
  /**
   * Discharge coefficient of a sharp-edged hole: 0.611 for a slot, Kirchhoff 1869, J. reine angew.
   * Math. 70, 289 (π / (π + 2)), measured 0.60 to 0.62 for round holes (handbooks, from memory).
   */
  private static final double SHARP_HOLE = 0.62;

  /** Mass of a small poppet, kg. Judged, no source. */
  private static final double VALVE_MASS = 0.01;

  /** Damping of a poppet in air over the critical one. Judged, no source. */
  private static final double VALVE_DAMPING = 0.05;

  private final JsonKeys top;
  private final List<Problem> problems;

  OpeningsReader(JsonKeys top, List<Problem> problems) {
    this.top = top;
    this.problems = problems;
  }

  /** The relief valve; null when there is none or after a problem. */
  @Nullable ReliefValve valve() {
    JsonKeys valve = top.group("valve");
    if (valve == null) {
      return null;
    }
    valve.allow(
        "seatArea",
        "springRate",
        "preload",
        "maximumLift",
        "dischargeCoefficient",
        "movingMass",
        "dampingRatio");
    int before = problems.size();
    double area = QuantityKeys.needed(valve, "seatArea", AREA, "1mm2", "1m2");
    double rate = QuantityKeys.needed(valve, "springRate", STIFFNESS, "0.1N/m", "1e4kN/m");
    double preload = QuantityKeys.needed(valve, "preload", FORCE, "0N", "100kN");
    double lift = QuantityKeys.needed(valve, "maximumLift", LENGTH, "0.01mm", "500mm");
    double discharge =
        QuantityKeys.share(
            valve, "dischargeCoefficient", 0.2, 1, "discharge coefficient", SHARP_HOLE);
    double mass = QuantityKeys.optional(valve, "movingMass", MASS, "0.01g", "100kg", VALVE_MASS);
    double damping =
        QuantityKeys.share(valve, "dampingRatio", 0, 10, "damping ratio", VALVE_DAMPING);
    return problems.size() > before
        ? null
        : new ReliefValve(area, rate, preload, lift, discharge, mass, damping);
  }

  /** The other leaks, in their order. */
  List<OtherLeak> otherLeaks() {
    List<OtherLeak> leaks = new ArrayList<>();
    List<JsonItem> items = top.list("otherLeaks");
    for (int i = 0; i < items.size(); i++) {
      JsonKeys one = top.group(items.get(i), "otherLeaks[" + i + "]");
      if (one != null) {
        one.allow("name", "area", "dischargeCoefficient");
        leaks.add(
            new OtherLeak(
                one.text("name", "cable hole"),
                QuantityKeys.needed(one, "area", AREA, "0mm2", "10m2"),
                QuantityKeys.share(
                    one, "dischargeCoefficient", 0.2, 1, "discharge coefficient", SHARP_HOLE)));
      }
    }
    return leaks;
  }
}
