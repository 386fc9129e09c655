package hemline.viewer.page;

import static hemline.viewer.format.BalanceWords.figure;

import hemline.shared.result.Estimate;
import hemline.solver.plenum.RideHeight;
import hemline.solver.plenum.ValveSetting;
import hemline.viewer.format.Digits;
import hemline.viewer.format.LengthUnit;
import java.util.ArrayList;
import java.util.List;

/** Sentences on how far a machine is from being drawn down, and on the valve that keeps it so. */
final class HeightWords {
  private HeightWords() {}

  /** Margin against being drawn down. */
  static List<String> rideHeight(RideHeight r) {
    List<String> s = new ArrayList<>();
    s.add(
        "Stiffness in heave, tyres and frame: %s N/mm."
            .formatted(Digits.plain(1e-3 * r.heave().stiffness(), 4)));
    Estimate force = r.bears().force();
    Estimate gap = r.gap();
    Estimate required = r.heave().required();
    Estimate factor = r.heave().factor();
    if (force == null || gap == null) {
      s.add(
          "The machine is drawn down to the ground%s.%s"
              .formatted(
                  r.edge() < 0 ? "" : ", edge " + r.edge() + " first",
                  required == null
                      ? ""
                      : " It needs at least " + figure(required, 1e-3) + " N/mm."));
      return s;
    }
    String end =
        r.ending() == RideHeight.MarginEnd.FOLD
            ? "no balance remains and it is drawn down (edge %d first)."
            : "edge %d touches.";
    s.add(
        "It bears %s N more at the centre of pressure%s, in which the smallest gap closes by %s; then "
                .formatted(
                    figure(force, 1),
                    elsewhere(r),
                    figure(gap, LengthUnit.factor()) + " " + LengthUnit.unit())
            + end.formatted(r.edge()));
    s.add(
        required == null || factor == null
            ? "No springs are too soft for it: the fan cannot close its gaps."
            : "Least stiffness at which it stands clear: %s N/mm; it has %s times that."
                .formatted(figure(required, 1e-3), figure(factor, 1)));
    return s;
  }

  /** What it bears at the centre of gravity and at its weakest corner. */
  private static String elsewhere(RideHeight r) {
    Estimate gravity = r.bears().atGravity();
    Estimate corner = r.bears().atCorner();
    return gravity == null || corner == null
        ? ""
        : " (%s N at the centre of gravity, %s N at corner %d of the floor)"
            .formatted(figure(gravity, 1), figure(corner, 1), r.bears().corner());
  }

  /**
   * Setting of the relief valve.
   *
   * @param settles true when the machine settles as it is in the file
   */
  static List<String> valve(ValveSetting v, boolean settles) {
    List<String> s = new ArrayList<>();
    String factor = Digits.plain(v.factor(), 3);
    String cap = figure(v.capSuction(), 1);
    ValveSetting.Setting set = v.setting();
    if (v.idle()) {
      s.add(
          "Not needed for a margin of %s: even with the seal closed the suction stays at %s Pa at most, which leaves it."
              .formatted(factor, cap));
    } else {
      s.add(
          (v.needed()
                  ? "Needed for a stiffness safety factor of %s: without a valve the springs fall"
                      + " short of it."
                  : "Not needed for a margin of %s; set as below it guards that margin.")
              .formatted(factor));
      s.add(
          "Pin the suction at %s Pa at most; with the seal closed the valve then passes %s L/s."
              .formatted(cap, figure(v.flowAtCap(), 1000)));
    }
    if (set == null) {
      s.add("The machine has no relief valve.");
      return s;
    }
    if (!v.idle()) {
      setting(s, v, set);
    }
    s.add(chatter(set.chatter(), settles));
    return s;
  }

  private static void setting(List<String> s, ValveSetting v, ValveSetting.Setting set) {
    s.add(
        set.seat().fits()
            ? "Set the preload to %s N: the valve opens at %s Pa and lifts %s."
                .formatted(
                    Digits.plain(set.spring().preload(), 3),
                    Digits.plain(set.spring().openingSuction(), 3),
                    LengthUnit.text(set.seat().lift(), 3))
            : "This valve cannot do it: it passes %s L/s fully open. A seat of %s and a softer spring would."
                .formatted(
                    Digits.plain(1000 * set.seat().largestFlow(), 3),
                    LengthUnit.area(set.seat().areaNeeded(), 3)));
    Estimate suction = set.settled().suction();
    Estimate downforce = set.settled().downforce();
    if (suction != null && downforce != null) {
      s.add(
          "With that preload the machine settles at %s Pa and %s N."
              .formatted(figure(suction, 1), figure(downforce, 1)));
    }
    if (set.seat().fits()
        && set.spring().softRate() > 0
        && set.spring().openingSuction() < v.capSuction().value()) {
      s.add(
          "A spring of up to %s N/mm would open only above the suction at which the machine settles without it."
              .formatted(Digits.plain(1e-3 * set.spring().softRate(), 2)));
    }
  }

  private static String chatter(ValveSetting.Chatter c, boolean settles) {
    if (!settles) {
      return "As set in the file it does not keep the machine off the ground.";
    }
    if (c.warns()) {
      return """
      Chatter: as set in the file the valve is open where the machine settles, and its damping \
      ratio of %s is below the %s at which its motion (about %s Hz) dies out; its flow rises %s \
      times as fast with the suction as fan and leaks give way. Damp it or take a stiffer spring.\
      """
          .formatted(
              Digits.plain(c.damping(), 2),
              Digits.plain(c.dampingNeeded(), 2),
              Digits.plain(c.naturalFrequency(), 2),
              Digits.plain(c.slopes(), 2));
    }
    return c.open()
        ? "As set in the file it is open where the machine settles and does not chatter."
        : "As set in the file it is closed where the machine settles.";
  }
}
