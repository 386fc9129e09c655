package hemline.viewer.format;

import hemline.shared.result.Figure;

/** Short names of figures for tables. */
public final class FigureName {
  private FigureName() {}

  public static String of(Figure figure) {
    return switch (figure) {
      case LEAK_FLOW -> "leak flow";
      case DISCHARGE_COEFFICIENT -> "discharge coefficient";
      case EFFECTIVE_GAP -> "effective gap";
      case PRESSURE_RECOVERY -> "pressure recovery";
      case PRESSURE_DROP -> "pressure drop";
      case LIP_FORCE_X -> "lip force along the leak";
      case LIP_FORCE_Y -> "lip force upwards";
      case LIP_PRESSURE_FORCE_X -> "  along, by pressure";
      case LIP_PRESSURE_FORCE_Y -> "  upwards, by pressure";
      case LIP_SHEAR_FORCE_X -> "  along, by shear";
      case LIP_SHEAR_FORCE_Y -> "  upwards, by shear";
      case LIP_MOMENT -> "lip moment about the mount";
      case GROUND_DRAG -> "ground drag along the leak";
      case GROUND_DRAG_SPANWISE -> "ground drag along the seal";
      case GROUND_POWER -> "power from the ground";
      case EXPANSIBILITY -> "expansibility";
      default -> figure.meaning();
    };
  }
}
