package hemline.viewer.screen;

import hemline.viewer.model.Setting;
import java.util.List;
import java.util.function.ToDoubleFunction;

/**
 * One of the conditions that a lip works under, as the bench shows it. SI units.
 *
 * @param id for tests and styles
 * @param name beside its field
 * @param meaning told on hover
 * @param scale of its slider
 */
record Condition(
    String id,
    String name,
    String meaning,
    Measure measure,
    ToDoubleFunction<Setting> value,
    Change change,
    Scale scale) {

  /**
   * Scale of a slider.
   *
   * @param zero where it begins, such as that of degrees Celsius
   * @param low end over the zero
   * @param high end over the zero
   */
  record Scale(double zero, double low, double high) {}

  /** 0 \u00b0C, K. */
  private static final double ICE = 273.15;

  private static final double LEAST_GAP = 5e-5;

  /** Answers a setting with another value. */
  interface Change {
    Setting of(Setting setting, double value);
  }

  /** All of them, in their order at the bench. */
  static final List<Condition> ALL =
      List.of(
          new Condition(
              "gap",
              "gap",
              "clearance between the lip and the ground",
              Measure.GAP,
              Setting::gap,
              Setting::withGap,
              new Scale(0, 0.2e-3, 8e-3)),
          new Condition(
              "suction",
              "suction",
              "how far the pressure in the plenum lies below ambient",
              Measure.SUCTION,
              Setting::suction,
              Setting::withSuction,
              new Scale(0, 0, 3000)),
          new Condition(
              "ground",
              "ground",
              "speed of the ground towards the plenum",
              Measure.SPEED,
              Setting::groundSpeed,
              Setting::withGroundSpeed,
              new Scale(0, -15, 15)),
          new Condition(
              "spanwise",
              "along the seal",
              "speed of the ground along the seal",
              Measure.SPEED,
              Setting::spanwiseSpeed,
              Setting::withSpanwiseSpeed,
              new Scale(0, -15, 15)),
          new Condition(
              "temperature",
              "air",
              "temperature of the air",
              Measure.TEMPERATURE,
              Setting::temperature,
              Setting::withTemperature,
              new Scale(ICE, -20, 50)));

  /** Place on the slider. */
  double along(Setting setting) {
    return value.applyAsDouble(setting) - scale.zero();
  }

  /** The setting with a place on the slider, rounded to what a hand can mean. */
  Setting at(Setting setting, double along) {
    double step = (scale.high() - scale.low()) / 500;
    double ten = Math.pow(10, Math.floor(Math.log10(step)));
    double rounded = Math.rint(along / ten) * ten + scale.zero();
    return change.of(setting, id.equals("gap") ? Math.max(LEAST_GAP, rounded) : rounded);
  }
}
