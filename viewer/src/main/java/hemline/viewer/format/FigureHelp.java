package hemline.viewer.format;

import hemline.shared.result.Figure;

/**
 * What a figure is and how to judge it.
 *
 * @param definition one sentence
 * @param unit in which it is shown; "pure number" for none
 * @param judgement what is good, or what it is for
 */
public record FigureHelp(String definition, String unit, String judgement) {

  /** Explains a figure of a lip. */
  public static FigureHelp of(Figure figure) {
    String unit = TradeUnit.of(figure).unit();
    return new FigureHelp(
        figure.symbol() + ": " + figure.meaning() + ".",
        unit.isEmpty() ? "pure number" : unit,
        judgement(figure));
  }

  /** The explanation of the leak over that of a flat lip. */
  public static FigureHelp relativeLeak() {
    return new FigureHelp(
        "Leak over that of a plain flat lip at the same gap, suction and ground motion.",
        "pure number",
        "Below 1 is better than flat. It only counts as better when the whole band lies below 1.");
  }

  /** Definition, unit and judgement on lines of their own. */
  public String text() {
    return definition + "\nUnit: " + unit + ".\n" + judgement;
  }

  private static String judgement(Figure figure) {
    return switch (figure) {
      case LEAK_FLOW ->
          "Less is better: the fan has to carry it. Times the length of the seal it is the fan's"
              + " share for this edge.";
      case DISCHARGE_COEFFICIENT ->
          "Less is better. 1 would be a loss-free jet as high as the gap; a sharp fin lies near"
              + " 0.6, a flat lip between 0.7 and 0.8, a rounded one above.";
      case EFFECTIVE_GAP ->
          "Less is better: the gap of a loss-free seal that leaks as much. Compare it with the"
              + " clearance that roughness and wear will add.";
      case PRESSURE_RECOVERY ->
          "Less is better: what is won back behind the narrowest place drives more air through it.";
      case PRESSURE_DROP -> "Given, not judged: it is what drives the leak.";
      case LIP_FORCE_X, LIP_PRESSURE_FORCE_X, LIP_SHEAR_FORCE_X ->
          "For the strength of lip and mount: positive pushes the lip towards the plenum.";
      case LIP_FORCE_Y, LIP_PRESSURE_FORCE_Y, LIP_SHEAR_FORCE_Y ->
          "For the strength of lip and mount: negative pulls the lip to the ground, which closes"
              + " the gap of a soft skirt. Low ride pinches: keep hands clear.";
      case LIP_MOMENT ->
          "For the stiffness of the mount: positive turns the lip counter-clockwise, its tip"
              + " towards the plenum when it hangs down.";
      case GROUND_DRAG, GROUND_DRAG_SPANWISE ->
          "Small beside tyre and drive losses as a rule; it grows with the area under the lip.";
      case GROUND_POWER ->
          "Small beside the fan's power as a rule; positive is power that the drive gives to the"
              + " air.";
      case EXPANSIBILITY ->
          "Near 1 the air may be taken as incompressible. The true mass flow is about this times"
              + " the leak shown.";
      default -> "See viewer/README.md, Figures.";
    };
  }
}
