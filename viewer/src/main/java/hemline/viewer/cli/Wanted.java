package hemline.viewer.cli;

import hemline.shared.fluid.Air;
import hemline.shared.problem.InputException;
import hemline.shared.problem.Problem;
import hemline.shared.section.SectionLimits;
import hemline.shared.units.Quantities;
import hemline.shared.units.QuantityKind;
import hemline.shared.units.QuantityRange;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.DoubleFunction;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/**
 * Reads the options of one command and gathers every problem, so that a user sees all at once;
 * after a problem reading goes on with a stand-in value.
 */
final class Wanted {
  private static final double SHORTEST_COUPON = 1e-3;
  private static final double LONGEST_COUPON = 1;
  private static final int MOST_STEPS = 200;

  private final List<Problem> problems = new ArrayList<>();

  void fault(String place, String text) {
    problems.add(new Problem("option", place, text));
  }

  void addAll(InputException e) {
    problems.addAll(e.problems());
  }

  /** Ends the reading. */
  void check() throws InputException {
    if (!problems.isEmpty()) {
      throw new InputException(problems);
    }
  }

  /** A single gap, m. */
  double gap(String option, @Nullable String text) {
    List<Double> one = gaps(option, text, 0);
    return one.get(0);
  }

  /** A gap or, with steps of 2 or more, a range of gaps, m, increasing. */
  List<Double> gaps(String option, @Nullable String text, int steps) {
    return within(QuantityKind.LENGTH, option, text, steps, 2e-3, SectionLimits::gap, "is not");
  }

  /** A length, m. */
  @Nullable Double length(String option, String text) {
    double length = read(QuantityKind.LENGTH, option, text, Double.NaN);
    return Double.isNaN(length) ? null : length;
  }

  /** Length of a test coupon, m. */
  double couponLength(String option, String text) {
    double length = read(QuantityKind.LENGTH, option, text, 40e-3);
    if (!(length >= SHORTEST_COUPON) || length > LONGEST_COUPON) {
      fault(
          option, "a test coupon must be 1 mm to 1 m long, such as 40mm; \"" + text + "\" is not");
      return 40e-3;
    }
    return length;
  }

  double suction(String option, @Nullable String text) {
    return suctions(option, text, 0).get(0);
  }

  /** A suction or, with steps of 2 or more, a range of suctions, Pa, increasing. */
  List<Double> suctions(String option, @Nullable String text, int steps) {
    return within(QuantityKind.PRESSURE, option, text, steps, 600, SectionLimits::suction, "does");
  }

  /** A speed, m/s; 0 when not given. */
  double speed(String option, @Nullable String text) {
    return text == null ? 0 : speeds(option, text, 0).get(0);
  }

  /** A range of speeds, m/s, increasing. */
  List<Double> speeds(String option, @Nullable String text, int steps) {
    return within(QuantityKind.SPEED, option, text, steps, 0, SectionLimits::speed, "does not");
  }

  /** Values of which each is judged; the one to go on with where one is out of range. */
  private List<Double> within(
      QuantityKind kind,
      String option,
      @Nullable String text,
      int steps,
      double otherwise,
      DoubleFunction<String> limits,
      String found) {
    List<Double> values = values(kind, option, text, steps, otherwise);
    for (double value : values) {
      String right = limits.apply(value);
      if (!right.isEmpty()) {
        fault(option, right + "; \"" + text + "\" " + found);
        return List.of(otherwise);
      }
    }
    return values;
  }

  /** A temperature, K. */
  double temperature(String option, String text) {
    double kelvin = read(QuantityKind.TEMPERATURE, option, text, Air.STANDARD_TEMPERATURE);
    if (kelvin < Air.COLDEST || kelvin > Air.HOTTEST) {
      fault(option, "air is known here from -73degC to 227degC; \"" + text + "\" is outside");
      return Air.STANDARD_TEMPERATURE;
    }
    return kelvin;
  }

  /** Count of points in a range. */
  int steps(String option, int steps) {
    if (steps < 2 || steps > MOST_STEPS) {
      fault(option, "a range takes 2 to " + MOST_STEPS + " steps, got " + steps);
      return 2;
    }
    return steps;
  }

  /** How many times over something must hold. */
  double factor(String option, double factor) {
    if (!(factor >= 1) || factor > 100) {
      fault(option, "a factor lies between 1 and 100, such as 1.5; got " + factor);
      return 1.5;
    }
    return factor;
  }

  /** A share, from per cent. */
  double share(String option, double percent) {
    if (!(percent > 0 && percent <= 100)) {
      fault(option, "must be above 0 and at most 100 per cent, such as 10; got " + percent);
      return 0.1;
    }
    return percent / 100;
  }

  int threads(String option, int threads) {
    if (threads < 1 || threads > 1024) {
      fault(option, "at least 1 thread is needed and at most 1024, got " + threads);
      return 1;
    }
    return threads;
  }

  /** One of the given choices by its key. */
  <T> T choice(String option, String text, T[] choices, Function<T, String> key) {
    for (T choice : choices) {
      if (key.apply(choice).equals(text)) {
        return choice;
      }
    }
    List<String> keys = Arrays.stream(choices).map(key).toList();
    fault(option, "\"" + text + "\" is unknown; take one of " + String.join(", ", keys));
    return choices[0];
  }

  private List<Double> values(
      QuantityKind kind, String option, @Nullable String text, int steps, double standIn) {
    if (text == null) {
      fault(option, kind.noun() + " is needed; write it as " + option + " " + kind.example());
      return List.of(standIn);
    }
    if (!Quantities.isRange(text)) {
      return List.of(read(kind, option, text, standIn));
    }
    if (steps < 2) {
      fault(
          option,
          "one value is needed, such as " + kind.example() + ", but \"" + text + "\" is a range");
      return List.of(standIn);
    }
    try {
      QuantityRange range = Quantities.readRange(kind, option, text);
      List<Double> values = new ArrayList<>();
      for (int k = 0; k < steps; k++) {
        values.add(rounded(range.low() + (range.high() - range.low()) * k / (steps - 1)));
      }
      return values;
    } catch (InputException e) {
      addAll(e);
      return List.of(standIn);
    }
  }

  /** Twelve digits: 1 mm to 6 mm in six steps gives 0.003, not 0.0030000000000000005. */
  private static double rounded(double value) {
    return new BigDecimal(value).round(new MathContext(12)).doubleValue();
  }

  private double read(QuantityKind kind, String option, String text, double standIn) {
    try {
      return Quantities.read(kind, option, text);
    } catch (InputException e) {
      addAll(e);
      return standIn;
    }
  }
}
