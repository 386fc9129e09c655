package hemline.viewer.format;

import hemline.shared.result.Figure;

/**
 * Unit in which a figure is shown to people.
 *
 * @param factor shown number over SI value
 * @param unit short text; empty for a pure number
 */
public record TradeUnit(double factor, String unit) {

  /** Unit of a figure of a lip: millimetres, litres per second and metre. */
  public static TradeUnit of(Figure figure) {
    return switch (figure) {
      case LEAK_FLOW -> new TradeUnit(1000, "L/s per m");
      case EFFECTIVE_GAP -> new TradeUnit(1000, "mm");
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
}
