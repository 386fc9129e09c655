package hemline.viewer.format;

import hemline.shared.result.Estimate;
import hemline.shared.vehicle.Machine;
import hemline.solver.plenum.RideHeight;
import java.util.ArrayList;
import java.util.List;

/** Sentences on how far a machine is from being drawn down to the ground. */
final class RideHeightWords {
  private RideHeightWords() {}

  /** Margin against being drawn down. */
  static List<String> of(Machine m, RideHeight r) {
    List<String> s = new ArrayList<>();
    s.add(
        "Stiffness in heave, tyres and frame: " + Digits.plain(1e-3 * r.stiffness(), 4) + " N/mm.");
    Estimate force = r.force();
    Estimate gap = r.gap();
    Estimate required = r.requiredStiffness();
    Estimate factor = r.factor();
    if (force == null || gap == null) {
      s.add(
          "The machine is drawn down to the ground"
              + (r.edge() < 0 ? "." : ", edge " + r.edge() + " first.")
              + (required == null
                  ? ""
                  : " It needs at least " + BalanceWords.figure(required, 1e-3) + " N/mm."));
      return s;
    }
    s.add(
        "It bears "
            + BalanceWords.figure(force, 1)
            + " N more at the centre of pressure"
            + elsewhere(r)
            + ", in which the smallest gap closes by "
            + BalanceWords.figure(gap, 1000)
            + " mm; then "
            + (r.ending() == RideHeight.MarginEnd.FOLD
                ? "no balance remains and it is drawn down (edge " + r.edge() + " first)."
                : "edge " + r.edge() + " touches."));
    s.add(
        required == null || factor == null
            ? "No springs are too soft for it: the fan cannot close its gaps."
            : "Least stiffness at which it stands clear: "
                + BalanceWords.figure(required, 1e-3)
                + " N/mm; it has "
                + BalanceWords.figure(factor, 1)
                + " times that.");
    return s;
  }

  /** What it bears at the centre of gravity and at its weakest corner. */
  private static String elsewhere(RideHeight r) {
    Estimate gravity = r.forceAtGravity();
    Estimate corner = r.forceAtCorner();
    return gravity == null || corner == null
        ? ""
        : " ("
            + BalanceWords.figure(gravity, 1)
            + " N at the centre of gravity, "
            + BalanceWords.figure(corner, 1)
            + " N at corner "
            + r.corner()
            + " of the floor)";
  }
}
