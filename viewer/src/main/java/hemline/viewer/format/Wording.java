package hemline.viewer.format;

import hemline.shared.fluid.Air;
import hemline.shared.fluid.FluidState;
import hemline.shared.result.SectionResult;
import hemline.shared.result.SolveStatus;
import hemline.shared.section.SectionConditions;
import hemline.solver.flow.Closure;
import hemline.solver.study.GroundSpeeds;
import hemline.solver.study.Placement;
import hemline.solver.study.Ranking;
import hemline.solver.study.Swept;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** Short phrases about a section and how its solve went. */
public final class Wording {
  /** 0 \u00b0C, K. */
  private static final double ICE = 273.15;

  private Wording() {}

  /** A length in the chosen unit: "2 mm". */
  public static String length(double metres) {
    return LengthUnit.text(metres, 4);
  }

  /** A pressure: "600 Pa", "2.5 kPa". */
  public static String pressure(double pascals) {
    return Math.abs(pascals) < 10_000
        ? Digits.plain(pascals, 4) + " Pa"
        : Digits.plain(pascals / 1000, 4) + " kPa";
  }

  /** Motion of the ground under which a section was solved. */
  public static String ground(SectionConditions conditions) {
    return ground(conditions.groundSpeed(), conditions.spanwiseSpeed());
  }

  /** Motion of the ground under the lip. */
  public static String ground(double speed, double spanwiseSpeed) {
    if (speed == 0 && spanwiseSpeed == 0) {
      return "ground still";
    }
    StringBuilder text = new StringBuilder("ground ");
    if (speed != 0) {
      text.append(Digits.plain(Math.abs(speed), 4)).append(" m/s towards ");
      text.append(speed > 0 ? "the plenum" : "ambient");
    }
    if (spanwiseSpeed != 0) {
      text.append(speed == 0 ? "" : ", ");
      text.append(Digits.plain(spanwiseSpeed, 4)).append(" m/s along the seal");
    }
    return text.toString();
  }

  /** Gap, suction and ground motion of a result. */
  public static String conditions(SectionResult result) {
    return "gap "
        + length(result.conditions().gap())
        + " \u00b7 suction "
        + pressure(result.conditions().suction())
        + " \u00b7 "
        + ground(result.conditions());
  }

  /** Air that is not standard, by its density; empty for standard air. */
  public static String air(FluidState air) {
    return air.equals(Air.STANDARD)
        ? ""
        : "air of " + Digits.plain(air.density(), 4) + " kg/m\u00b3";
  }

  /** A temperature, K, in degrees Celsius. */
  public static String temperature(double kelvin) {
    return Digits.plain(kelvin - ICE, 4) + " \u00b0C";
  }

  /** Gap or mean over the gaps, suction and ground motion of a ranking. */
  public static String conditions(Ranking ranking) {
    String lead =
        ranking.gaps().size() == 1
            ? ""
            : ranking.ground().uniform() ? "mean over " : "weighted mean over ";
    return lead + gapByGap(ranking);
  }

  /** The same over several speeds of the ground. */
  public static String conditions(Ranking ranking, GroundSpeeds speeds) {
    if (speeds.speeds().size() == 1) {
      return conditions(ranking);
    }
    String still = conditions(ranking);
    StringBuilder text = new StringBuilder(still.substring(0, still.lastIndexOf(" \u00b7 ")));
    text.append(" \u00b7 ground at ");
    for (int k = 0; k < speeds.speeds().size(); k++) {
      text.append(k == 0 ? "" : ", ")
          .append(Digits.plain(speeds.speeds().get(k), 4))
          .append(" m/s (")
          .append(Digits.plain(100 * speeds.weights().get(k), 3))
          .append(" %)");
    }
    return text.toString();
  }

  /** Heading of a group of lips beside the baseline. */
  public static String group(Placement.Group group, String baseline) {
    return switch (group) {
      case LESS -> "Leaks less than " + baseline;
      case SAME -> "Not distinguishable from " + baseline;
      case MORE -> "Leaks more than " + baseline;
      case UNCERTAIN -> "Too uncertain to place beside " + baseline;
    };
  }

  /** What would tell lips from the baseline, one sentence for each way. */
  public static List<String> deciders(List<Ranking.Row> rows) {
    List<String> sentences = new ArrayList<>();
    for (Placement.Decider decider : Placement.Decider.values()) {
      List<String> names =
          rows.stream()
              .filter(row -> row.placement().decider() == decider)
              .map(Ranking.Row::profile)
              .toList();
      String cure = decider(decider);
      if (!names.isEmpty() && !cure.isEmpty()) {
        sentences.add(
            cure.substring(0, 1).toUpperCase(Locale.ROOT)
                + cure.substring(1)
                + ": "
                + String.join(", ", names)
                + ".");
      }
    }
    return sentences;
  }

  /** Why a lip cannot be told from the baseline, and what would tell; empty for nothing. */
  public static String decider(Placement.Decider decider) {
    return switch (decider) {
      case NONE -> "";
      case FINER_MESH -> "a finer mesh may tell";
      case MEASUREMENT -> "only measuring both would tell";
    };
  }

  /** A probability in per cent, never 0 or 100. */
  public static String probability(double p) {
    return p < 0.01 ? "< 1 %" : p > 0.99 ? "> 99 %" : Digits.fixed(100 * p, 0) + " %";
  }

  /** Gap or gaps, suction and ground motion of a ranking. */
  public static String gapByGap(Ranking ranking) {
    List<Double> gaps = ranking.gaps();
    String text =
        gaps.size() == 1
            ? "gap " + length(gaps.get(0))
            : gaps.size()
                + " gaps from "
                + length(gaps.get(0))
                + " to "
                + length(gaps.get(gaps.size() - 1));
    String ground =
        ranking.rows().stream()
            .flatMap(row -> row.results().stream())
            .findFirst()
            .map(r -> " \u00b7 " + ground(r.conditions()))
            .orElse("");
    return text + " \u00b7 suction " + pressure(ranking.suction()) + ground;
  }

  /** What a sweep held still, as told by one of its points. */
  public static String besides(Swept swept, SectionResult point) {
    List<String> parts = new ArrayList<>();
    if (swept != Swept.GAP) {
      parts.add("gap " + length(point.conditions().gap()));
    }
    if (swept != Swept.SUCTION) {
      parts.add("suction " + pressure(point.conditions().suction()));
    }
    if (swept != Swept.GROUND_SPEED) {
      parts.add(ground(point.conditions()));
    } else if (point.conditions().spanwiseSpeed() != 0) {
      parts.add(ground(0, point.conditions().spanwiseSpeed()));
    }
    return String.join(" \u00b7 ", parts);
  }

  /** Name and unit of what a sweep changed. */
  public static String axis(Swept swept) {
    return switch (swept) {
      case GAP -> "gap, " + LengthUnit.unit();
      case SUCTION -> "suction, Pa";
      case GROUND_SPEED -> "ground speed towards the plenum, m/s";
    };
  }

  /** Name of what a sweep changed. */
  public static String name(Swept swept) {
    return switch (swept) {
      case GAP -> "gap";
      case SUCTION -> "suction";
      case GROUND_SPEED -> "ground speed";
    };
  }

  /** Value of what a sweep changed, with its unit. */
  public static String value(Swept swept, double si) {
    return switch (swept) {
      case GAP -> length(si);
      case SUCTION -> pressure(si);
      case GROUND_SPEED -> Digits.plain(si, 4) + " m/s";
    };
  }

  /** How the solve ended and with which flow model. */
  public static String verdict(SectionResult result) {
    return ended(result.status())
        + " \u00b7 "
        + result.regime().key()
        + " flow"
        + model(result.closure());
  }

  /** The turbulence model, where there is one. */
  private static String model(String closure) {
    return closure.equals(Closure.LAMINAR.key()) ? "" : " \u00b7 turbulence model " + closure;
  }

  /** How a solve ended. */
  public static String ended(SolveStatus status) {
    return switch (status) {
      case CONVERGED -> "steady";
      case UNSTEADY -> "no steady flow: mean and band over the last cycles";
      case FAILED -> "failed: no usable flow";
      case CANCELLED -> "stopped on request";
    };
  }
}
