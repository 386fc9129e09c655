package hemline.viewer.format;

import hemline.shared.result.Figure;
import hemline.shared.result.MachineFigure;

/**
 * Unit in which a figure is shown to people.
 *
 * @param factor shown number over SI value
 * @param unit short text; empty for a pure number
 */
public record TradeUnit(double factor, String unit) {
  /** A pure number. */
  public static final TradeUnit NONE = new TradeUnit(1, "");

  public static final TradeUnit PERCENT = new TradeUnit(100, "%");

  /** Unit of a figure of a lip: the chosen unit of lengths, litres per second and metre. */
  public static TradeUnit of(Figure figure) {
    return switch (figure) {
      case LEAK_FLOW -> new TradeUnit(1000, "L/s per m");
      case EFFECTIVE_GAP -> new TradeUnit(LengthUnit.factor(), LengthUnit.unit());
      default -> plain(figure);
    };
  }

  /** SI unit of a figure, for ducts, whose sizes may be anything. */
  public static TradeUnit plain(Figure figure) {
    return new TradeUnit(
        1,
        switch (figure.unit()) {
          case "1" -> "";
          case "m2/s" -> "m\u00b2/s";
          default -> figure.unit();
        });
  }

  /**
   * Unit of a figure of a machine: the chosen unit of lengths, litres per second, degrees, minutes.
   */
  public static TradeUnit of(MachineFigure figure) {
    return switch (figure.unit()) {
      case "m" -> new TradeUnit(LengthUnit.factor(), LengthUnit.unit());
      case "m3/s" -> new TradeUnit(1000, "L/s");
      case "rad" -> new TradeUnit(Math.toDegrees(1), "\u00b0");
      case "s" -> new TradeUnit(1.0 / 60, "min");
      default -> new TradeUnit(1, figure.unit());
    };
  }
}
