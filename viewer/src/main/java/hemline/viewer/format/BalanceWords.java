package hemline.viewer.format;

import hemline.shared.result.Estimate;
import hemline.shared.vehicle.Axle;
import hemline.shared.vehicle.FloorOutline;
import hemline.shared.vehicle.GroundStep;
import hemline.shared.vehicle.Machine;
import hemline.solver.plenum.Launch;
import hemline.solver.plenum.OperatingPoint;
import hemline.solver.plenum.RankedLip;
import hemline.solver.plenum.SettledFigures;
import hemline.solver.plenum.Trade;
import hemline.solver.plenum.ValveSetting;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Sentences about a machine's balance, the same on every face of the program. */
public final class BalanceWords {
  /** Beside fan speed and power. */
  public static final String FAN_CAUTION =
      "A fan can burst and throws what it sucks in: guard inlet and outlet, keep to the maker's speed"
          + " limit and keep people out of the plane of the wheel.";

  /** Beside electrical power and run time. */
  public static final String BATTERY_CAUTION =
      "Fuse the battery, keep within its current and temperature limits, and land the machine before"
          + " it is empty: the hold goes with the fan.";

  /** Beside ride height and suck-down. */
  public static final String PINCH_CAUTION =
      "A floor that is drawn down pinches: keep hands and feet clear, and make the fan stop when it is"
          + " let go.";

  /** Beside the holds. */
  public static final String HOLD_CAUTION =
      "Suction is lost in a moment at a ledge, a crack or a soft patch. Tether the machine, close off"
          + " the ground below and give it a second hold that needs no suction. Never carry people on"
          + " suction. Local codes and licensed practice decide, not these figures.";

  /** Distances below it are none, m. */
  private static final double LEAST_DISTANCE = 5e-5;

  private BalanceWords() {}

  /** A figure with its band; three digits where the leaks do not touch it. */
  public static String figure(Estimate e, double factor) {
    return Digits.exact(e, factor)
        ? Digits.plain(e.value() * factor, 3)
        : Digits.withBand(e, factor);
  }

  /** Floor, seal, fan and air. */
  public static String conditions(Machine m) {
    return "floor "
        + Digits.plain(1e4 * m.floor().area(), 4)
        + " cm\u00b2 \u00b7 seal "
        + Digits.plain(m.floor().perimeter(), 4)
        + " m \u00b7 mass "
        + Digits.plain(m.load().mass(), 4)
        + " kg \u00b7 fan "
        + Digits.plain(60 * m.fan().speed(), 5)
        + " rpm \u00b7 air "
        + Digits.plain(m.air().air().density(), 4)
        + " kg/m\u00b3";
  }

  /** Where an edge of the floor faces, by its chord. */
  public static String faces(Machine m, int edge) {
    double x = 0;
    double y = 0;
    for (FloorOutline.Piece p : m.floor().pieces()) {
      if (p.edge() == edge) {
        x += p.outwardX() * p.length();
        y += p.outwardY() * p.length();
      }
    }
    double size = Math.hypot(x, y);
    String along = x > 0.38 * size ? "front" : x < -0.38 * size ? "rear" : "";
    String across = y > 0.38 * size ? "left" : y < -0.38 * size ? "right" : "";
    return (along + " " + across).strip();
  }

  /** A speed: "0.2 m/s". */
  public static String speed(double metresPerSecond) {
    return Digits.plain(metresPerSecond, 3) + " m/s";
  }

  /** What kind of operating point it is. */
  public static String point(OperatingPoint p) {
    List<String> words = new ArrayList<>();
    if (p.settled()) {
      words.add("settles here");
    } else {
      words.add(p.stable() ? "stable" : "unstable");
    }
    if (p.stallSide()) {
      words.add("stall side");
    }
    if (p.touching()) {
      words.add("lip on the ground");
    }
    return String.join(", ", words);
  }

  /** Where the centre of pressure lies. */
  public static String centre(Machine m, SettledFigures f) {
    double x = f.centreX().value();
    List<String> away = new ArrayList<>();
    away(away, x - m.load().x(), "ahead of", "behind");
    away(away, f.centreY().value() - m.load().y(), "left of", "right of");
    double front = Double.NEGATIVE_INFINITY;
    double rear = Double.POSITIVE_INFINITY;
    for (Axle axle : m.running().axles()) {
      front = Math.max(front, axle.x());
      rear = Math.min(rear, axle.x());
    }
    return "The centre of pressure lies "
        + (away.isEmpty() ? "at" : String.join(" and ", away))
        + " the centre of gravity, "
        + (x < front && x > rear ? "between" : "beyond")
        + " the axles.";
  }

  private static void away(List<String> words, double distance, String more, String less) {
    if (Math.abs(distance) > LEAST_DISTANCE) {
      words.add(Wording.millimetres(Math.abs(distance)) + " " + (distance > 0 ? more : less));
    }
  }

  /**
   * Setting of the relief valve.
   *
   * @param settles true when the machine settles as it is in the file
   */
  public static List<String> valve(ValveSetting v, boolean settles) {
    List<String> s = new ArrayList<>();
    String factor = Digits.plain(v.factor(), 3);
    ValveSetting.Setting set = v.setting();
    if (v.idle()) {
      s.add(
          "Not needed for a margin of "
              + factor
              + ": even with the seal closed the suction stays at "
              + figure(v.capSuction(), 1)
              + " Pa at most, which leaves it.");
      s.add(set == null ? "The machine has no relief valve." : chatter(set.chatter(), settles));
      return s;
    }
    s.add(
        v.needed()
            ? "Needed for a margin of " + factor + ": without a valve the springs fall short of it."
            : "Not needed for a margin of " + factor + "; set as below it guards that margin.");
    s.add(
        "Pin the suction at "
            + figure(v.capSuction(), 1)
            + " Pa at most; with the seal closed the valve then passes "
            + figure(v.flowAtCap(), 1000)
            + " L/s.");
    if (set == null) {
      s.add("The machine has no relief valve.");
      return s;
    }
    s.add(
        set.fits()
            ? "Set the preload to "
                + Digits.plain(set.preload(), 3)
                + " N: the valve opens at "
                + Digits.plain(set.openingSuction(), 3)
                + " Pa and lifts "
                + Digits.plain(1000 * set.liftAtCap(), 3)
                + " mm."
            : "This valve cannot do it: it passes "
                + Digits.plain(1000 * set.largestFlow(), 3)
                + " L/s fully open. A seat of "
                + Digits.plain(1e6 * set.seatAreaNeeded(), 3)
                + " mm\u00b2 and a softer spring would.");
    Estimate suction = set.suction();
    Estimate downforce = set.downforce();
    if (suction != null && downforce != null) {
      s.add(
          "With that preload the machine settles at "
              + figure(suction, 1)
              + " Pa and "
              + figure(downforce, 1)
              + " N.");
    }
    if (set.fits() && set.softSpring() > 0 && set.openingSuction() < v.capSuction().value()) {
      s.add(
          "A spring of up to "
              + Digits.plain(1e-3 * set.softSpring(), 2)
              + " N/mm would open only above the suction at which the machine settles without it.");
    }
    s.add(chatter(set.chatter(), settles));
    return s;
  }

  private static String chatter(ValveSetting.Chatter c, boolean settles) {
    if (!settles) {
      return "As set in the file it does not keep the machine off the ground.";
    }
    if (c.warns()) {
      return "Chatter: as set in the file the valve is open where the machine settles, and its damping"
          + " ratio of "
          + Digits.plain(c.damping(), 2)
          + " is below the "
          + Digits.plain(c.dampingNeeded(), 2)
          + " at which its motion (about "
          + Digits.plain(c.naturalFrequency(), 2)
          + " Hz) dies out; its flow rises "
          + Digits.plain(c.slopes(), 2)
          + " times as fast with the suction as fan and leaks give way. Damp it or take a stiffer"
          + " spring.";
    }
    return c.open()
        ? "As set in the file it is open where the machine settles and does not chatter."
        : "As set in the file it is closed where the machine settles.";
  }

  /** Acceleration, time and distance. */
  public static String launch(Launch l, double g) {
    return "Grip carries "
        + figure(l.gripAcceleration(), 1)
        + " m/s\u00b2 ("
        + figure(l.gripAcceleration(), 1 / g)
        + " g; "
        + Digits.plain(l.withoutSuction() / g, 2)
        + " g with the fan off)"
        + (l.liftsFirst() ? ", limited by an axle that lifts" : "")
        + (l.gripUntil().low() < l.speed()
            ? ". Grip limits up to " + figure(l.gripUntil(), 1) + " m/s, then power. "
            : ". Grip limits all the way. ")
        + speed(l.speed())
        + " after "
        + figure(l.time(), 1)
        + " s and "
        + figure(l.distance(), 1)
        + " m.";
  }

  /** Heading of the table of the ground step. */
  public static String stepTitle(Machine m) {
    GroundStep step = m.step();
    return step == null
        ? ""
        : "A dip or a ledge of "
            + Wording.millimetres(step.height())
            + ", "
            + Wording.millimetres(step.length())
            + " of it under the seal at once";
  }

  /** The change of about a tenth that gives the most downforce per watt. */
  public static Optional<String> best(List<Trade> trades) {
    Trade best = null;
    double most = 0;
    for (Trade t : trades) {
      Estimate perWatt = t.perWatt();
      boolean tenth = t.factor() > 0.84 && t.factor() < 1.16;
      if (perWatt != null && tenth && perWatt.value() > most) {
        most = perWatt.value();
        best = t;
      }
    }
    if (best == null) {
      return Optional.empty();
    }
    Estimate top = best.perWatt();
    List<String> near = new ArrayList<>();
    for (Trade t : trades) {
      Estimate perWatt = t.perWatt();
      boolean tenth = t.factor() > 0.84 && t.factor() < 1.16;
      if (t != best && tenth && perWatt != null && top != null && perWatt.high() >= top.low()) {
        near.add(change(t));
      }
    }
    String said =
        best.kind() == Trade.Kind.AS_IT_IS
            ? "No change of a tenth gives more downforce per watt than the machine as it is"
            : "Of the changes of about a tenth, "
                + change(best)
                + " gives the most downforce per watt";
    return Optional.of(
        near.isEmpty()
            ? said + "."
            : said + "; the bands do not tell it from " + String.join(", ", near) + ".");
  }

  /** A change in words: "fan speed × 0.9". */
  public static String change(Trade t) {
    return t.kind() == Trade.Kind.AS_IT_IS
        ? t.kind().key()
        : t.kind().key() + " \u00d7 " + Digits.plain(t.factor(), 3);
  }

  /** The lip that ties with one; their number where they are more. */
  public static String ties(RankedLip lip, List<RankedLip> all) {
    int n = lip.tiedWith().size();
    return n == 0
        ? "-"
        : n == 1 ? lip.tiedWith().get(0) : n == all.size() - 1 ? "all others" : n + " lips";
  }

  /** What the ranking of lips tells. */
  public static List<String> lipRanks(List<RankedLip> lips) {
    RankedLip first = lips.get(0);
    if (first.trade().downforce() == null) {
      return List.of("With none of them the machine settles.");
    }
    List<String> s = new ArrayList<>();
    s.add(
        "Over as it is: downforce over that of the machine with its own lips. Two lips are compared by"
            + " such a ratio, which has its own band, because errors common to both cancel; they tie"
            + " as long as it holds 1.");
    if (!first.tiedWith().isEmpty()) {
      s.add(
          first.name()
              + " gives most, but is not told from "
              + String.join(", ", first.tiedWith())
              + ".");
    }
    return s;
  }
}
