package hemline.viewer.format;

import hemline.shared.result.Estimate;
import hemline.shared.result.MachineFigure;
import hemline.shared.vehicle.Axle;
import hemline.shared.vehicle.FloorOutline;
import hemline.shared.vehicle.Machine;
import hemline.solver.plenum.Hold;
import hemline.solver.plenum.Launch;
import hemline.solver.plenum.MachineBalance;
import hemline.solver.plenum.OperatingPoint;
import hemline.solver.plenum.SettledFigures;
import hemline.solver.plenum.Trade;
import java.util.ArrayList;
import java.util.List;

/** Sentences about a machine's balance, the same on every face of the program. */
public final class BalanceWords {
  /** Beside fan speed and power. */
  public static final String FAN_CAUTION =
      "A fan can burst and throws what it sucks in: guard inlet and outlet, keep to the maker's"
          + " speed limit and keep people out of the plane of the wheel.";

  /** Beside electrical power and run time. */
  public static final String BATTERY_CAUTION =
      "Fuse the battery, keep within its current and temperature limits, and land the machine"
          + " before it is empty: the hold goes with the fan.";

  /** Beside ride height and suck-down. */
  public static final String PINCH_CAUTION =
      "A floor that is drawn down pinches: keep hands and feet clear, and make the fan stop when it"
          + " is let go.";

  /** Beside the holds. */
  public static final String HOLD_CAUTION =
      "Suction is lost in a moment at a ledge, a crack or a soft patch. Tether the machine, close"
          + " off the ground below and give it a second hold that needs no suction. Never carry"
          + " people on suction. Local codes and licensed practice decide, not these figures.";

  /** Distances below it are none, m. */
  private static final double LEAST_DISTANCE = 5e-5;

  private BalanceWords() {}

  /** A figure with its band; three digits where the leaks do not touch it. */
  public static String figure(Estimate e, double factor) {
    return Digits.exact(e, factor)
        ? Digits.plain(e.value() * factor, 3)
        : Digits.withBand(e, factor);
  }

  /** What a builder asks first: downforce, hold and least margin. */
  public static List<String> headline(MachineBalance balance) {
    List<String> lines = new ArrayList<>();
    SettledFigures rest = balance.operation().rest();
    if (rest == null) {
      return List.of("It does not settle.");
    }
    lines.add(
        "Downforce at rest %s N, suction %s Pa."
            .formatted(
                figure(rest.get(MachineFigure.DOWNFORCE), 1),
                figure(rest.get(MachineFigure.SUCTION), 1)));
    for (Hold hold : balance.holding().holds()) {
      if (hold.place().name().equals("worst")) {
        Estimate margin = hold.margins().least();
        lines.add(
            "Over all tilts and headings: %s; least margin %s (%s, tilt %s\u00b0, %s)."
                .formatted(
                    holding(hold),
                    margin == null ? "unknown" : figure(margin, 1),
                    hold.judgement().limitedBy(),
                    Digits.plain(Math.toDegrees(hold.place().angle()), 3),
                    hold.place().heading()));
      }
    }
    return lines;
  }

  private static String holding(Hold hold) {
    return switch (hold.judgement().verdict()) {
      case YES -> "it holds";
      case UNTIL_IT_SLIPS -> "it holds until it slips";
      case NOT_SHOWN -> "that it holds is not shown";
      case NO -> "it does not hold";
    };
  }

  /** Floor, seal, fan and air. */
  public static String conditions(Machine m) {
    return "floor %s \u00b7 seal %s m \u00b7 mass %s kg \u00b7 fan %s rpm \u00b7 air %s kg/m\u00b3"
        .formatted(
            floor(m.floor().area()),
            Digits.plain(m.floor().perimeter(), 4),
            Digits.plain(m.load().mass(), 4),
            Digits.plain(60 * m.fan().speed(), 5),
            Digits.plain(m.duty().air().air().density(), 4));
  }

  private static String floor(double area) {
    return LengthUnit.now() == LengthUnit.MM
        ? Digits.plain(1e4 * area, 4) + " cm\u00b2"
        : LengthUnit.area(area, 4);
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
    double x = f.get(MachineFigure.CENTRE_X).value();
    List<String> away = new ArrayList<>();
    away(away, x - m.load().x(), "ahead of", "behind");
    away(away, f.get(MachineFigure.CENTRE_Y).value() - m.load().y(), "left of", "right of");
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
      words.add(Wording.length(Math.abs(distance)) + " " + (distance > 0 ? more : less));
    }
  }

  /** Acceleration, time and distance. */
  public static String launch(Launch l, double g) {
    return "Grip carries %s m/s\u00b2 (%s g; %s g with the fan off)%s. Grip limits %s. %s after %s s and %s m."
        .formatted(
            figure(l.gripAcceleration(), 1),
            figure(l.gripAcceleration(), 1 / g),
            Digits.plain(l.withoutSuction() / g, 2),
            l.liftsFirst() ? ", limited by an axle that lifts" : "",
            l.gripUntil().low() < l.speed()
                ? "up to " + figure(l.gripUntil(), 1) + " m/s, then power"
                : "all the way",
            speed(l.speed()),
            figure(l.time(), 1),
            figure(l.distance(), 1));
  }

  /** A change in words: "fan speed × 0.9". */
  public static String change(Trade t) {
    return t.kind() == Trade.Kind.AS_IT_IS
        ? t.kind().key()
        : t.kind().key() + " \u00d7 " + Digits.plain(t.factor(), 3);
  }

  /** A case of the hold: "slope 30\u00b0", "wall". */
  public static String place(String place, double tilt) {
    return switch (place) {
      case "slope" -> "slope " + Digits.plain(Math.toDegrees(tilt), 3) + "\u00b0";
      case "worst" -> "worst of all";
      default -> place;
    };
  }
}
